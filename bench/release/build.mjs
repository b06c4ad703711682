/** Builds the page of the release benchmark into a folder. Usage: node build.mjs FOLDER */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { bundle } from "../../tests/support/bundle.mjs";

const folder = path.resolve(process.argv[2]);
mkdirSync(folder, { recursive: true });
await bundle("./bench/release/start-page.ts", "start", folder);
writeFileSync(
  path.join(folder, "release.html"),
  '<!doctype html><title>Release</title><script src="start.js"></script>\n',
);
