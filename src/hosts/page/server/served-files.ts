import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

export interface ServedFile {
  readonly bytes: Buffer;
  readonly type: string;
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".md": "text/markdown; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".wasm": "application/wasm",
  ".woff2": "font/woff2",
  ".ttf": "font/ttf",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/**
 * The files of the built page by the path of their address. The list is made once, from the folder: an address is only
 * ever looked up in it, so that none can lead out of the folder.
 */
export function servedFiles(folder: string): ReadonlyMap<string, () => ServedFile> {
  const files = new Map<string, () => ServedFile>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const file = path.join(entry.parentPath, entry.name);
    const type = TYPES[path.extname(entry.name)];
    if (!entry.isFile() || type === undefined) continue;
    const address = `/${path.relative(folder, file).split(path.sep).join("/")}`;
    files.set(address, () => ({ bytes: readFileSync(file), type }));
  }
  const page = files.get("/index.html");
  if (page) files.set("/", page);
  return files;
}
