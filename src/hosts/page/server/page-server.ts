import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { type ServedFile, servedFiles } from "./served-files";

export const HOST = "127.0.0.1";

/**
 * Serves the built page to this machine alone. A request that names another host is refused: a page from elsewhere whose
 * name was made to point here (DNS rebinding) would otherwise read what is served.
 */
export function pageServer(folder: string): Server {
  const files = servedFiles(folder);
  const server = createServer((request, response) => answer(request, response, files, portOf(server)));
  return server;
}

function answer(
  request: IncomingMessage,
  response: ServerResponse,
  files: ReadonlyMap<string, () => ServedFile>,
  port: number,
): void {
  const { method } = request;
  if (!isOurHost(request.headers.host, port)) return refuse(response, 421, "This address is not served here.");
  if (method !== "GET" && method !== "HEAD") return refuse(response, 405, "Only GET and HEAD.", { Allow: "GET, HEAD" });
  const found = files.get((request.url ?? "").split(/[?#]/, 1)[0] as string);
  if (!found) return refuse(response, 404, "There is no such file here.");
  send(response, found(), method === "HEAD");
}

function send(response: ServerResponse, { bytes, type }: ServedFile, headersOnly: boolean): void {
  response.writeHead(200, { ...SAFE_HEADERS, "Content-Type": type, "Content-Length": bytes.length });
  response.end(headersOnly ? undefined : bytes);
}

function refuse(response: ServerResponse, status: number, message: string, more: Record<string, string> = {}): void {
  response.writeHead(status, { ...SAFE_HEADERS, ...more, "Content-Type": "text/plain; charset=utf-8" });
  response.end(`${message}\n`);
}

function isOurHost(host: string | undefined, port: number): boolean {
  return host === `${HOST}:${port}` || host === `localhost:${port}`;
}

export function portOf(server: Server): number {
  const address = server.address();
  return typeof address === "object" && address !== null ? address.port : 0;
}

/**
 * What the page may do: load its own files, and nothing from anywhere else. Styles may stand in the page itself, since the
 * controls of the pane and the grid make theirs as they run; scripts may not. 'wasm-unsafe-eval' lets the xlsx writer and
 * the solver run, which are WebAssembly.
 */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "connect-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

const SAFE_HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": CONTENT_SECURITY_POLICY,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
  "Cache-Control": "no-cache",
};
