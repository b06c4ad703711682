import { SaxesParser } from "saxes";
import { SOURCE_BASE } from "./address.mjs";

/**
 * What keeps Excel from loading the add-in: a manifest that is no XML, or that names a file which was not built.
 *
 * @param {string} manifest
 * @param {(file: string) => boolean} isBuilt - true, or an error, for a path below dist/
 * @returns {string[]} one sentence each
 */
export function manifestFaults(manifest, isBuilt) {
  const addresses = new Set();
  const parser = new SaxesParser();
  parser.on("opentag", ({ attributes }) => addresses.add(attributes.DefaultValue));
  try {
    parser.write(manifest).close();
  } catch {
    return ["dist/manifest.xml is not well formed: build again."];
  }
  const files = [...addresses].filter((each) => each?.startsWith(SOURCE_BASE)).map((each) => fileAsked(each));
  if (files.length === 0)
    return [`dist/manifest.xml was built for another address than ${SOURCE_BASE}: build without --base.`];
  return files.filter((file) => !safely(() => isBuilt(file))).map((file) => `dist/${file} is missing: build again.`);
}

/** The path below dist/ that an address asks for; nothing above it can be asked for. */
export function fileAsked(address) {
  const { pathname } = new URL(address, SOURCE_BASE);
  return decodeURIComponent(pathname).replace(/^\/+/, "");
}

/**
 * Where Excel looks for add-ins that are being tried out. Microsoft Learn, "Sideload Office Add-ins on Mac for testing" (the
 * folder wef); the key of Windows is that of Microsoft's own tool office-addin-dev-settings, from memory.
 */
export function registrationOf(platform, home, manifest, file) {
  const id = /<Id>([^<]+)<\/Id>/.exec(manifest)?.[1] ?? "windowline";
  if (platform === "darwin") {
    const folder = `${home}/Library/Containers/com.microsoft.Excel/Data/Documents/wef`;
    return { kind: "file", file: `${folder}/${id}.manifest.xml` };
  }
  if (platform === "win32") {
    const key = ["HKCU\\Software\\Microsoft\\Office\\16.0\\Wef\\Developer", "/v", id];
    return {
      kind: "registry",
      add: ["add", ...key, "/t", "REG_SZ", "/d", file, "/f"],
      remove: ["delete", ...key, "/f"],
    };
  }
  return {
    kind: "by hand",
    say: "Excel does not run on this system. In Excel on the web: Home, Add-ins, More add-ins, Upload my add-in, and choose dist/manifest.xml.",
  };
}

/** What a browser is told of each file of dist/. */
export const TYPES = {
  ".css": "text/css",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".xml": "application/xml",
};

function safely(ask) {
  try {
    return ask();
  } catch {
    return false;
  }
}
