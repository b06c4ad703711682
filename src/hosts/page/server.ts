import path from "node:path";
import { start } from "./server/start";

declare const __dirname: string;

start(process.argv.slice(2), path.join(__dirname, "../page"));
