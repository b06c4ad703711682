/** `npm start`: builds the page where it has not been built yet, then serves it to this machine. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.join(path.dirname(fileURLToPath(import.meta.url)), "../../..");
const server = path.join(root, "dist/page-server/page-server.cjs");

if (!existsSync(server) || !existsSync(path.join(root, "dist/page/index.html"))) {
  console.error("Building the page, once. This takes a minute or two.");
  const words = ["src/build/build.mjs", "--only", "page,page-server"];
  const { status } = spawnSync(process.execPath, words, { cwd: root, stdio: ["ignore", 2, 2] });
  if (status !== 0) process.exit(status ?? 1);
}

await import(server);
