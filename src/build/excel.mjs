/**
 * Puts the add-in of dist/ into the Excel of this machine, for trying it out: `npm run excel`. It checks the manifest against
 * what was built, makes a certificate for localhost where there is none (the system asks), registers the manifest where
 * Excel looks for add-ins that are being tried out, and serves dist/ over https until it is stopped.
 * `-- --check` only checks; `-- --remove` takes the registration away again; `-- --port 3000` says where the build's address is.
 */
import { spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:https";
import os from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { logErrorMessage, parseNumber } from "office-addin-cli";
import { getHttpsServerOptions } from "office-addin-dev-certs";
import { fileAsked, manifestFaults, registrationOf, TYPES } from "./registration.mjs";

const dist = path.resolve("dist");
const manifest = path.join(dist, "manifest.xml");
const { values } = parseArgs({
  options: {
    check: { type: "boolean", default: false },
    remove: { type: "boolean", default: false },
    port: { type: "string", default: "3000" },
  },
});

try {
  const faults = manifestFaults(
    readFileSync(manifest, "utf8"),
    (file) => readFileSync(path.join(dist, file)).length > 0,
  );
  if (faults.length > 0) throw new Error(faults.join("\n"));
  if (values.check) console.log("dist/manifest.xml is well formed, and every file that it names is in dist/.");
  else if (values.remove) register(true);
  else await serve(parseNumber(values.port, "--port takes a number, such as 3000.") ?? 3000);
} catch (error) {
  logErrorMessage(error.code === "ENOENT" ? `${error.path} is missing. Run npm run build first.` : error);
  process.exitCode = 1;
}

async function serve(port) {
  const options = await getHttpsServerOptions();
  register(false);
  createServer(options, (request, response) => {
    const file = fileAsked(request.url);
    try {
      const bytes = readFileSync(path.join(dist, file));
      response.writeHead(200, { "content-type": TYPES[path.extname(file)] ?? "application/octet-stream" }).end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  }).listen(port, "localhost", () =>
    console.log(`Serving dist/ on https://localhost:${port}/. Restart Excel; end with Ctrl+C.`),
  );
}

function register(isRemoving) {
  const where = registrationOf(process.platform, os.homedir(), readFileSync(manifest, "utf8"), manifest);
  if (where.kind === "file") {
    mkdirSync(path.dirname(where.file), { recursive: true });
    if (isRemoving) rmSync(where.file, { force: true });
    else copyFileSync(manifest, where.file);
  }
  if (where.kind === "registry") spawnSync("reg", isRemoving ? where.remove : where.add, { stdio: "inherit" });
  console.log(where.kind === "by hand" ? where.say : isRemoving ? "Removed." : "Registered.");
}
