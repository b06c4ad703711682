/** `npm run bench`: installs what only the benchmark needs, bundles it, runs it. Words given are names of parts to run. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "..");
process.chdir(root);

const npm = process.platform === "win32" ? "npm.cmd" : "npm";
const installed = run(npm, ["ci", "--prefix", "bench", "--no-audit", "--no-fund", "--loglevel", "error"]);
if (installed !== 0) console.error("bench/ could not be installed: the rows that need it will say so.");

const bundled = run(process.execPath, ["node_modules/webpack-cli/bin/cli.js", "--config", "bench/webpack.config.mjs"]);
process.exitCode =
  bundled || run(process.execPath, ["node_modules/.cache/windowline-bench/bench.cjs", ...process.argv.slice(2)]);

function run(program, words) {
  return (
    spawnSync(program, words, { stdio: "inherit", shell: process.platform === "win32" && program === npm }).status ?? 1
  );
}
