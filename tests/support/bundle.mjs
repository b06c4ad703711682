import webpack from "webpack";
import { webResolve, withoutNode } from "../../src/build/addin.mjs";
import { webModule } from "../../src/build/rules.mjs";

/**
 * Bundles a script of the tests as dist/ is bundled.
 *
 * @param {string} entry - the script
 * @param {string} name - of the bundle, without its ending
 * @param {string} folder - takes the bundle; an absolute path
 * @returns {Promise<void>}
 */
export function bundle(entry, name, folder) {
  const config = {
    mode: "production",
    target: ["web", "es2022"],
    entry: { [name]: entry },
    output: { path: folder, filename: "[name].js", publicPath: "auto" },
    resolve: webResolve,
    module: webModule,
    plugins: [withoutNode()],
    performance: { hints: false },
  };
  return new Promise((resolve, reject) => {
    webpack(config, (error, stats) => {
      if (error || stats.hasErrors()) reject(error ?? new Error(stats.toString("errors-only")));
      else resolve();
    });
  });
}
