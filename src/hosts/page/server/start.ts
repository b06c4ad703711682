import path from "node:path";
import { spawn } from "node:child_process";
import type { Server } from "node:http";
import { HOST, pageServer, portOf } from "./page-server";
import { startWords } from "./words";

const EXIT = { done: 0, failed: 1, badRequest: 2 } as const;

/** The command behind `npm start`: serves until it is told to stop. */
export function start(words: readonly string[], folder: string): void {
  const asked = startWords(words);
  if ("message" in asked) return fail(asked.message, EXIT.badRequest);
  const server = served(folder);
  if (!server) return fail(`There is no built page in ${folder}: run npm run build first.`, EXIT.failed);
  server.on("error", (error: NodeJS.ErrnoException) => fail(reasonOf(error, asked.port), EXIT.failed));
  server.listen(asked.port, HOST, () => {
    const address = `http://${HOST}:${portOf(server)}/`;
    process.stdout.write(`Windowline is at ${address}\nOnly this machine can open it. Stop with Ctrl+C.\n`);
    if (asked.open) openBrowser(address);
  });
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop(server));
  stopWithNpm(server);
}

function served(folder: string): Server | null {
  try {
    return pageServer(path.resolve(folder));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return null;
    throw error;
  }
}

function stop(server: Server): void {
  process.stdout.write("Stopped.\n");
  server.close(() => process.exit(EXIT.done));
  server.closeAllConnections();
}

const LOOK_EVERY_MS = 300;

/** A signal sent to npm ends the shell between it and this process, and never comes here. */
function stopWithNpm(server: Server): void {
  if (process.env["npm_lifecycle_event"] === undefined) return;
  const shell = process.ppid;
  const look = setInterval(() => {
    if (process.ppid === shell) return;
    clearInterval(look);
    stop(server);
  }, LOOK_EVERY_MS);
  look.unref();
}

function reasonOf(error: NodeJS.ErrnoException, port: number): string {
  if (error.code === "EADDRINUSE") {
    return `Port ${port} is taken, perhaps by this page in another window: open http://${HOST}:${port}/, or choose another port with npm start -- --port ${port + 1}.`;
  }
  if (error.code === "EACCES") return `This account may not use port ${port}: choose one above 1023 with --port.`;
  return `The page could not be served (${error.code ?? error.name}).`;
}

function fail(message: string, code: number): void {
  process.stderr.write(`${message}\n`);
  process.exitCode = code;
}

const OPENERS: Readonly<Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>>> = {
  darwin: ["open"],
  win32: ["cmd", "/c", "start", ""],
};

/** Opens the page in the usual browser. Where there is none, the printed address is enough: no failure. */
function openBrowser(address: string): void {
  const [program, ...words] = OPENERS[process.platform] ?? ["xdg-open"];
  const child = spawn(program, [...words, address], { stdio: "ignore", detached: true });
  child.on("error", () => undefined);
  child.unref();
}
