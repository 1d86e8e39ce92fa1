import { createHash, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";

/** Why a request is not answered: status of HTTP and a sentence. */
export interface Refused {
  readonly status: 400 | 403 | 404 | 405 | 413 | 415;
  readonly words: string;
  /** Methods allowed instead, for 405. */
  readonly allow?: string;
}

const digest = (text: string): Buffer => createHash("sha256").update(text).digest();

/** Compares without telling by its time how much was right. */
export const isSameWord = (given: string, word: string): boolean => timingSafeEqual(digest(given), digest(word));

/** A header that must stand once; a list of values is none of ours. */
const single = (value: string | readonly string[] | undefined): string | undefined =>
  typeof value === "string" ? value : value?.join(", ");

/**
 * Whether a request can come from a page of ours or from the person's own address line: to this very address (a name that
 * someone else lets point here is refused), from this very origin, and not sent off by a page of another site.
 *
 * @param address `127.0.0.1:41234`.
 */
export function foreign(request: IncomingMessage, address: string): Refused | null {
  const hosts = request.rawHeaders.filter((name, index) => index % 2 === 0 && name.toLowerCase() === "host");
  if (hosts.length !== 1 || request.headers.host !== address) {
    return { status: 403, words: "This address is answered only under its own number." };
  }
  const origin = single(request.headers.origin);
  if (origin !== undefined && origin !== `http://${address}`) {
    return { status: 403, words: "Pages of other sites get no answer." };
  }
  const site = single(request.headers["sec-fetch-site"]);
  const typed = site === "none" && request.method === "GET";
  if (site !== undefined && site !== "same-origin" && !typed) {
    return { status: 403, words: "Pages of other sites get no answer." };
  }
  return null;
}
