/** Bundles a simulation and runs it; its words are passed on: `run.mjs 2000 100` the scan, `run.mjs leaks 300` the releases. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";
import webpack from "webpack";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const swc = { jsc: { target: "es2022", parser: { syntax: "typescript" } } };

const [first = "", ...rest] = process.argv.slice(2);
const [name, words] = /^[a-z]/.test(first) ? [first, rest] : ["scan-level", process.argv.slice(2)];

webpack(
  {
    context: root,
    target: "node20",
    mode: "production",
    entry: { [name]: `./tests/simulation/${name}.ts` },
    output: { path: path.join(root, "dist/simulation"), filename: "[name].cjs", clean: false },
    resolve: { extensions: [".ts", ".js"] },
    module: { rules: [{ test: /\.ts$/, exclude: /node_modules/, loader: "swc-loader", options: swc }] },
    optimization: { minimize: false },
    performance: { hints: false },
  },
  (error, stats) => {
    if (error || stats?.hasErrors()) {
      console.error(error ?? stats?.toString());
      process.exitCode = 2;
      return;
    }
    const script = path.join(root, `dist/simulation/${name}.cjs`);
    const { status } = spawnSync(process.execPath, [script, ...words], { cwd: root, stdio: "inherit" });
    process.exitCode = status ?? 1;
  },
);
