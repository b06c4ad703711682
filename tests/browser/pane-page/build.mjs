/**
 * Builds the page of the pane's browser tests into a folder: the pane in production form over a workbook in memory, under
 * the very policy of taskpane.html, less the tag of Microsoft's script. Usage: node build.mjs FOLDER
 */
import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { bundle } from "../../support/bundle.mjs";

const folder = path.resolve(process.argv[2]);
mkdirSync(folder, { recursive: true });
await bundle("./tests/browser/pane-page/start.ts", "start", folder);
const html = readFileSync("taskpane/taskpane.html", "utf8")
  .replace(/\s*<script src="https:[^>]*><\/script>/, "")
  .replace(/href="icons\/[^"]*"/, 'href="data:,"')
  .replace("</body>", '<script src="start.js"></script></body>');
writeFileSync(path.join(folder, "pane.html"), html);
cpSync("taskpane/pane.css", path.join(folder, "pane.css"));
