import { lstat, readFile, realpath } from "node:fs/promises";
import { extname, join, sep } from "node:path";

/** Kinds of files that a built renderer consists of; any other is not handed out. */
const KINDS: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".ttf": "font/ttf",
  ".txt": "text/plain; charset=utf-8",
};

/**
 * What a page may load: its own files and nothing from anywhere else. Small fonts and pictures may stand in the style sheet
 * itself (`data:`), what the page has made itself is a picture too (`blob:`). No code but the built one runs.
 */
const CONTENT_POLICY: string = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self' data:",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/** Headers of everything that goes to a window. */
export const STRICT_HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": CONTENT_POLICY,
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Cross-Origin-Embedder-Policy": "require-corp",
  "Permissions-Policy": "camera=(), microphone=(), geolocation=(), midi=(), usb=(), serial=(), payment=()",
  "Cache-Control": "no-store",
};

/** A file of the renderer. */
export interface RendererFile {
  readonly bytes: Buffer;
  readonly kind: string;
}

/** The names of the path asked for; `null` when one of them could lead anywhere but down. */
function namesIn(path: string): readonly string[] | null {
  try {
    const names = decodeURIComponent(path).split("/");
    const asked = names.at(-1) === "" ? [...names.slice(0, -1), "index.html"] : names;
    return asked.every((name) => /^[^.\\:\u0000-\u001F][^\\:\u0000-\u001F]*$/.test(name)) ? asked : null;
  } catch {
    return null;
  }
}

/**
 * A file of the built renderer.
 *
 * @param folder where the renderer was built to.
 * @param path as the window asks, without its leading stroke and without a query; "" is the page itself.
 * @returns `null` for all that is not a plain file inside the folder, links included.
 */
export async function rendererFile(folder: string, path: string): Promise<RendererFile | null> {
  const names = namesIn(path);
  const kind = names ? KINDS[extname(names.at(-1) ?? "").toLowerCase()] : undefined;
  if (!names || kind === undefined) return null;
  try {
    const root = await realpath(folder);
    const file = join(root, ...names);
    if (!(await lstat(file)).isFile() || !(await realpath(file)).startsWith(root + sep)) return null;
    return { bytes: await readFile(file), kind };
  } catch {
    return null;
  }
}
