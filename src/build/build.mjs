/**
 * Builds dist/. `npm run build` builds all; `-- --base https://your.address/` writes that address into the manifest;
 * `-- --only cli` builds one part; `-- --missing` leaves parts alone that are there.
 */
import { existsSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import webpack from "webpack";
import { BAD_ADDRESS, baseAddress, SOURCE_BASE } from "./address.mjs";

const { values } = parseArgs({
  options: {
    base: { type: "string", default: SOURCE_BASE },
    only: { type: "string" },
    missing: { type: "boolean", default: false },
  },
});

const base = baseAddress(values.base);
if (base === null) {
  console.error(BAD_ADDRESS);
  process.exit(2);
}

// Only now, so that a refusal does not wait for all that a build needs.
const { configs } = await import("./configs.mjs");
const wanted = values.only?.split(",");
const chosen = (await configs({ base })).filter(
  ({ name, output }) => (!wanted || wanted.includes(name)) && !(values.missing && existsSync(output.path)),
);

// One after another: all at once would need the memory of all.
for (const config of chosen) await build(config);

function build(config) {
  return new Promise((resolve, reject) => {
    webpack(config, (error, stats) => {
      if (error) return reject(error);
      if (stats.hasErrors() || stats.hasWarnings()) console.error(stats.toString("errors-warnings"));
      if (stats.hasErrors()) process.exitCode = 1;
      console.error(`built ${path.relative(process.cwd(), config.output.path)}`);
      resolve();
    });
  });
}
