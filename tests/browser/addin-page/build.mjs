/** Builds the script that stands in the add-in's page before office.js. Usage: node build.mjs FOLDER */
import path from "node:path";
import { bundle } from "../../support/bundle.mjs";

await bundle("./tests/browser/addin-page/start.ts", "excel", path.resolve(process.argv[2]));
