/** Bundles scan-level.ts and runs it; its words are passed on. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";
import webpack from "webpack";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const swc = { jsc: { target: "es2022", parser: { syntax: "typescript" } } };

webpack(
  {
    context: root,
    target: "node20",
    mode: "production",
    entry: { "scan-level": "./tests/simulation/scan-level.ts" },
    output: { path: path.join(root, "dist/simulation"), filename: "[name].cjs", clean: true },
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
    const script = path.join(root, "dist/simulation/scan-level.cjs");
    const { status } = spawnSync(process.execPath, [script, ...process.argv.slice(2)], { cwd: root, stdio: "inherit" });
    process.exitCode = status ?? 1;
  },
);
