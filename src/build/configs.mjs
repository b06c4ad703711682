import path from "node:path";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import HtmlWebpackPlugin from "html-webpack-plugin";
import webpack from "webpack";
import { addinConfig, webResolve, withoutNode } from "./addin.mjs";
import { SOURCE_BASE } from "./address.mjs";
import { webModule } from "./rules.mjs";
import { helpOfFunctions } from "../hosts/page/functions/help-of-functions.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** They bring libraries for each kind of machine, cannot be bundled, and are loaded where an extract or a database is read. */
const EXTRACT_READERS = {
  "@duckdb/node-api": "commonjs @duckdb/node-api",
  "better-sqlite3": "commonjs better-sqlite3",
  pg: "commonjs pg",
};

/** The command line: one file for Node, with the WebAssembly it needs beside it. */
const commandLine = {
  name: "cli",
  target: "node20",
  mode: "production",
  entry: { windowline: "./src/cli/windowline.ts" },
  output: {
    path: path.join(root, "dist/cli"),
    filename: "[name].cjs",
    assetModuleFilename: "[name][ext]",
    clean: true,
  },
  resolve: {
    extensions: [".ts", ".tsx", ".js"],
    // The other form asks for a canvas of the machine, on which pictures would hang.
    alias: { "vega-canvas$": path.join(root, "node_modules/vega-canvas/build/vega-canvas.browser.js") },
  },
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
  // A library for each kind of machine, which cannot be bundled; it is loaded where pictures are asked for as PNG.
  externals: { "@resvg/resvg-js": "commonjs @resvg/resvg-js", ...EXTRACT_READERS },
  plugins: [
    new CopyPlugin({ patterns: [{ from: "node_modules/source-sans/LICENSE.md", to: "SourceSans3-LICENSE.md" }] }),
  ],
  devtool: "source-map",
  optimization: { minimize: false },
  performance: { hints: false },
  stats: "errors-warnings",
};

const gridStyles = path.join(root, "node_modules/@univerjs/preset-sheets-core/lib/index.css");

/** The embedded page: grid, functions and pane, with the sample beside them. */
const page = {
  name: "page",
  target: ["web", "es2022"],
  mode: "production",
  entry: { page: "./taskpane/start-page.tsx" },
  output: {
    path: path.join(root, "dist/page"),
    filename: "[name].[contenthash:8].js",
    publicPath: "auto",
    clean: true,
  },
  resolve: webResolve,
  module: webModule,
  plugins: [
    withoutNode(),
    new HtmlWebpackPlugin({ template: "src/hosts/page/index.html" }),
    new webpack.DefinePlugin({ FUNCTION_HELP: JSON.stringify(await helpOfFunctions(path.join(root, "functions"))) }),
    // Hyphenation of sixty languages, for a text editor that the page does not use.
    new webpack.IgnorePlugin({
      resourceRegExp: /^\.\/(?!en-)[a-z0-9-]+-[\w-]{8}\.js$/,
      contextRegExp: /engine-render[\\/]lib[\\/]es$/,
    }),
    new CopyPlugin({
      patterns: [
        { from: gridStyles, to: "grid.css" },
        { from: "src/hosts/page/page.css" },
        { from: "src/hosts/page/icon.svg" },
        { from: "sample-workbooks/alder-fork.xlsx", to: "sample/" },
      ],
    }),
  ],
  performance: { hints: false },
  stats: "errors-warnings",
};

/** The local server of the page, behind `npm start`. */
const pageServer = {
  name: "page-server",
  target: "node20",
  mode: "production",
  node: { __dirname: false },
  entry: { "page-server": "./src/hosts/page/server.ts" },
  output: { path: path.join(root, "dist/page-server"), filename: "[name].cjs", clean: true },
  resolve: commandLine.resolve,
  module: commandLine.module,
  optimization: { minimize: false },
  performance: { hints: false },
  stats: "errors-warnings",
};

/** Every part of dist/; the add-in first, since it clears what is left over in dist/ itself. */
export function configs({ base }) {
  return [addinConfig({ root, base, module: webModule }), commandLine, page, pageServer];
}

export default configs({ base: SOURCE_BASE });
