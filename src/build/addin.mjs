import { Resvg } from "@resvg/resvg-js";
import CopyPlugin from "copy-webpack-plugin";
import CustomFunctionsMetadataPlugin from "custom-functions-metadata-plugin";
import HtmlWebpackPlugin from "html-webpack-plugin";
import { LicenseWebpackPlugin } from "license-webpack-plugin";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import webpack from "webpack";
import { manifestAt } from "./address.mjs";

const ICON_SIZES = [16, 20, 24, 32, 40, 48, 64, 80];

/**
 * What Excel loads, in dist/: the pane with the functions in one shared runtime, functions.json, icons and the manifest with
 * its addresses filled in.
 *
 * @param {{ root: string, base: string, module: object }} options
 */
export function addinConfig({ root, base, module }) {
  return {
    name: "addin",
    target: ["web", "es2022"],
    mode: "production",
    entry: {
      functions: "./functions/index.ts",
      taskpane: { import: "./taskpane/start-excel.ts", dependOn: "functions" },
    },
    output: {
      path: path.join(root, "dist"),
      filename: "[name].js",
      chunkFilename: "[name].[contenthash:8].js",
      publicPath: "auto",
      clean: { keep: /^(bench|cli|page|page-server|pane)\// },
    },
    resolve: webResolve,
    module,
    plugins: [
      new CustomFunctionsMetadataPlugin({ output: "functions.json", input: functionFiles(root) }),
      // The metadata plugin has every function call the runtime's own, which a worker has not.
      new webpack.ProvidePlugin({
        "CustomFunctions.associate": [path.join(root, "functions/associate.ts"), "associate"],
      }),
      new HtmlWebpackPlugin({
        template: "taskpane/taskpane.html",
        filename: "taskpane.html",
        chunks: ["functions", "taskpane"],
      }),
      new CopyPlugin({
        patterns: [
          { from: "manifest.xml", transform: (content) => manifestAt(String(content), base) },
          { from: "taskpane/pane.css" },
          { from: "taskpane/help.html" },
        ],
      }),
      withoutNode(),
      new LicenseWebpackPlugin({ outputFilename: "THIRD-PARTY-NOTICES.txt", perChunkOutput: false }),
      new Icons(path.join(root, "taskpane/icons/icon.svg")),
    ],
    optimization: { splitChunks: { chunks: "all", cacheGroups: { default: false, defaultVendors: false, shared } } },
    performance: { hints: false },
    stats: "errors-warnings",
  };
}

/** The solver's script asks for Node's own modules where it runs in Node; a browser has none. */
export const webResolve = {
  extensions: [".ts", ".tsx", ".js"],
  fallback: { crypto: false, fs: false, module: false, path: false, url: false },
};

export function withoutNode() {
  return new webpack.NormalModuleReplacementPlugin(/^node:/, (resource) => {
    resource.request = resource.request.slice("node:".length);
  });
}

/**
 * What the functions and the pane's worker both need is one file, loaded once. Reports and releases are made in the worker
 * alone: there they are loaded with it, or once they are asked for, and the pane opens sooner. Libraries have folders named
 * src too: those that draw charts are not wanted before a chart is.
 */
const shared = {
  name: "shared",
  test: /[\\/]node_modules[\\/](@date-fns|date-fns|zod|@stdlib|simple-statistics|@noble|pure-rand)[\\/]|^(?!.*[\\/]node_modules[\\/]).*[\\/]src[\\/](?!hosts|report|release)/,
  chunks: "all",
  enforce: true,
};

/** The files whose doc comments Excel shows. */
function functionFiles(root) {
  const folder = path.join(root, "functions");
  return readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .map((name) => path.join(folder, name))
    .filter((file) => readFileSync(file, "utf8").includes("@customfunction"));
}

/** Draws the one icon in every size that Excel asks for. */
class Icons {
  constructor(file) {
    this.file = file;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("Icons", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tap({ name: "Icons", stage }, () => {
        const svg = readFileSync(this.file);
        for (const size of ICON_SIZES) {
          const png = new Resvg(svg, { fitTo: { mode: "width", value: size } }).render().asPng();
          compilation.emitAsset(`icons/icon-${size}.png`, new webpack.sources.RawSource(png));
        }
      });
    });
  }
}
