/** Builds the page of the Chromium test into the folder named: our bundle, then office.js of npm, unmodified. */
import { cpSync, mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { bundle } from "../../support/bundle.mjs";

const folder = path.resolve(process.argv[2]);
const dist = "node_modules/@microsoft/office-js/dist";

mkdirSync(path.join(folder, "officejs/en-us"), { recursive: true });
for (const file of ["office.js", "excel-win32-16.01.js", "en-us/office_strings.js"]) {
  cpSync(path.join(dist, file), path.join(folder, "officejs", file));
}
const scripts = ["in-page.js", "officejs/office.js"].map((src) => `<script src="${src}"></script>`).join("");
writeFileSync(
  path.join(folder, "index.html"),
  `<!doctype html><link rel="icon" href="data:,"><title>Excel adapter</title>${scripts}`,
);

await bundle("./tests/office/in-page.ts", "in-page", folder);
