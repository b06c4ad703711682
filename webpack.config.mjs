import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.dirname(fileURLToPath(import.meta.url));

/** The command line: one file for Node, with the WebAssembly it needs beside it. */
const commandLine = {
  name: "cli",
  target: "node20",
  mode: "production",
  entry: { windowline: "./src/cli/windowline.ts" },
  output: { path: path.join(root, "dist/cli"), filename: "[name].cjs", assetModuleFilename: "[name][ext]", clean: true },
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  module: {
    rules: [
      {
        test: /\.tsx?$/,
        exclude: /node_modules/,
        loader: "swc-loader",
        options: { jsc: { target: "es2022", parser: { syntax: "typescript", tsx: true } } },
      },
    ],
  },
  devtool: "source-map",
  optimization: { minimize: false },
  performance: { hints: false },
  stats: "errors-warnings",
};

export default [commandLine];
