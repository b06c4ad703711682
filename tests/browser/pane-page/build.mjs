/**
 * Builds the page of the pane's browser tests into a folder: the pane in production form over a workbook in memory, under
 * the very policy of taskpane.html, less the tag of Microsoft's script. Usage: node build.mjs FOLDER
 */
import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import webpack from "webpack";

const folder = path.resolve(process.argv[2]);
mkdirSync(folder, { recursive: true });
await bundle();
const html = readFileSync("taskpane/taskpane.html", "utf8")
  .replace(/\s*<script src="https:[^>]*><\/script>/, "")
  .replace(/href="icons\/[^"]*"/, 'href="data:,"')
  .replace("</body>", '<script src="start.js"></script></body>');
writeFileSync(path.join(folder, "pane.html"), html);
cpSync("taskpane/pane.css", path.join(folder, "pane.css"));

function bundle() {
  const config = {
    mode: "production",
    target: ["web", "es2022"],
    entry: { start: "./tests/browser/pane-page/start.ts" },
    output: { path: folder, filename: "[name].js", publicPath: "auto" },
    resolve: { extensions: [".ts", ".tsx", ".js"] },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          exclude: /node_modules/,
          loader: "swc-loader",
          options: {
            jsc: {
              target: "es2022",
              parser: { syntax: "typescript", tsx: true },
              transform: { react: { runtime: "automatic" } },
            },
          },
        },
      ],
    },
    performance: { hints: false },
  };
  return new Promise((resolve, reject) => {
    webpack(config, (error, stats) => {
      if (error || stats.hasErrors()) reject(error ?? new Error(stats.toString("errors-only")));
      else resolve();
    });
  });
}
