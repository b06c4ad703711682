import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "..");

/** The benchmark for Node, from the same sources as the program; apart from dist/, which a build in between would empty. */
export default {
  name: "bench",
  context: root,
  target: "node20",
  mode: "production",
  entry: { bench: "./bench/bench.ts" },
  output: {
    path: path.join(root, "node_modules/.cache/windowline-bench"),
    filename: "[name].cjs",
    assetModuleFilename: "[name][ext]",
    clean: true,
  },
  resolve: { extensions: [".ts", ".js"] },
  externals: { exceljs: "commonjs exceljs", "playwright-core": "commonjs playwright-core" },
  module: {
    rules: [
      {
        test: /\.ts$/,
        exclude: /node_modules/,
        loader: "swc-loader",
        options: { jsc: { target: "es2022", parser: { syntax: "typescript" } } },
      },
    ],
  },
  optimization: { minimize: false },
  performance: { hints: false },
  stats: "errors-warnings",
};
