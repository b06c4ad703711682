import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { createServer, request, type Server } from "node:http";
import { tmpdir } from "node:os";
import path from "node:path";
import { pageServer, portOf } from "../../../src/hosts/page/server/page-server";
import { start } from "../../../src/hosts/page/server/start";

const root = mkdtempSync(path.join(tmpdir(), "windowline-page-"));
const folder = path.join(root, "page");
let server: Server;

beforeAll(async () => {
  mkdirSync(path.join(folder, "sample"), { recursive: true });
  writeFileSync(path.join(folder, "index.html"), "<!doctype html><title>page</title>");
  writeFileSync(path.join(folder, "page.js"), "1");
  writeFileSync(path.join(folder, "sample/book.xlsx"), "PK");
  writeFileSync(path.join(folder, "page.js.map"), "{}");
  writeFileSync(path.join(root, "secret.txt"), "not served");
  server = pageServer(folder);
  await listening(server);
});

afterAll(() => {
  server.close();
  rmSync(root, { recursive: true, force: true });
});

describe("what the server of the page gives", () => {
  test.each([
    ["/", "text/html; charset=utf-8"],
    ["/index.html?x=1", "text/html; charset=utf-8"],
    ["/page.js", "text/javascript; charset=utf-8"],
    ["/sample/book.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"],
  ])("%s", async (address, type) => {
    const { status, headers } = await ask(address);
    expect([status, headers["content-type"]]).toEqual([200, type]);
  });

  test.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/sample/..\\..\\secret.txt",
    "//etc/passwd",
    "/sample",
    "/sample/",
    "/page.js.map",
    "/page.js%00",
    "/__proto__",
  ])("nothing at %s", async (address) => {
    expect((await ask(address)).status).toBe(404);
  });

  test("only reading", async () => {
    expect((await ask("/", { method: "POST" })).status).toBe(405);
    const head = await ask("/page.js", { method: "HEAD" });
    expect([head.status, head.body]).toEqual([200, ""]);
  });
});

describe("a page from elsewhere cannot read it", () => {
  test.each(["evil.example", "evil.example:80", "127.0.0.1", "127.0.0.1:1", "127.0.0.1.evil.example"])(
    "Host: %s is refused",
    async (host) => {
      expect((await ask("/", { host })).status).toBe(421);
    },
  );

  test("localhost by name is this machine", async () => {
    expect((await ask("/", { host: `localhost:${portOf(server)}` })).status).toBe(200);
  });
});

/** W3C, Content Security Policy Level 3; WHATWG Fetch ("nosniff"); W3C, Referrer Policy. */
test.each(["/", "/nothing", "/page.js"])("strict headers at %s", async (address) => {
  const { headers } = await ask(address);
  const policy = String(headers["content-security-policy"]);
  expect(policy.startsWith("default-src 'none';")).toBe(true);
  expect(/script-src ([^;]*)/.exec(policy)?.[1]).toBe("'self' 'wasm-unsafe-eval'");
  expect(/connect-src ([^;]*)/.exec(policy)?.[1]).toBe("'self'");
  expect(policy).not.toMatch(/https?:|\*|'unsafe-eval'/);
  expect(headers["x-content-type-options"]).toBe("nosniff");
  expect(headers["referrer-policy"]).toBe("no-referrer");
  expect(headers["access-control-allow-origin"]).toBeUndefined();
});

test("only this machine is listened to", () => {
  expect((server.address() as { address: string }).address).toBe("127.0.0.1");
});

describe("the command", () => {
  const said: string[] = [];
  beforeEach(() => {
    said.length = 0;
    process.exitCode = undefined;
    jest.spyOn(process.stderr, "write").mockImplementation((text) => said.push(String(text)) > 0);
  });
  afterEach(() => {
    jest.restoreAllMocks();
    process.exitCode = undefined;
  });

  test("says that the port is taken, and what to do", async () => {
    const other = createServer();
    await listening(other);
    start(["--port", String(portOf(other)), "--no-open"], folder);
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(said.join("")).toMatch(new RegExp(`^Port ${portOf(other)} is taken.*--port ${portOf(other) + 1}`));
    expect(process.exitCode).toBe(1);
    other.close();
  });

  test("says when there is no built page", () => {
    start(["--no-open"], path.join(root, "nowhere"));
    expect(said.join("")).toMatch(/npm run build/);
    expect(process.exitCode).toBe(1);
  });

  test("does not understand other words", () => {
    start(["--host", "0.0.0.0"], folder);
    expect(said.join("")).toMatch(/^--host is not an option here/);
    expect(process.exitCode).toBe(2);
  });
});

async function listening(one: Server): Promise<void> {
  await new Promise<void>((resolve) => one.listen(0, "127.0.0.1", resolve));
}

function ask(address: string, { host, method = "GET" }: { host?: string; method?: string } = {}) {
  const port = portOf(server);
  return new Promise<{ status: number; headers: NodeJS.Dict<string | string[]>; body: string }>((resolve, reject) => {
    const asked = request(
      { host: "127.0.0.1", port, path: address, method, headers: { Host: host ?? `127.0.0.1:${port}` } },
      (response) => {
        let body = "";
        response.on("data", (piece) => (body += piece));
        response.on("end", () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
      },
    );
    asked.on("error", reject);
    asked.end();
  });
}
