import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";
import { builtScreens } from "./built-screens.ts";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".woff2": "font/woff2",
  ".svg": "image/svg+xml",
};

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; connect-src 'self'; worker-src 'self'";

/** Serves the built screens under a strict content policy; ends with `stop`. */
export async function served(): Promise<{ readonly address: string; stop(): void }> {
  const folder = await builtScreens();
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://localhost");
    const path = join(folder, normalize(pathname === "/" ? "/index.html" : pathname));
    readFile(path).then(
      (bytes) => {
        const type = TYPES[extname(path)] ?? "application/octet-stream";
        response.writeHead(200, { "Content-Type": type, "Content-Security-Policy": POLICY }).end(bytes);
      },
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  const { port } = server.address() as AddressInfo;
  return { address: `http://127.0.0.1:${port}/`, stop: () => server.close() };
}
