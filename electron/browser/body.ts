import type { IncomingMessage } from "node:http";

/**
 * What was sent with a request, whole.
 *
 * @returns `null` as soon as it is longer than `most` bytes, or its sender says that it will be. The rest is let go by
 * unread: a sender who is cut off does not listen to the answer.
 * @throws when the sender stops halfway.
 */
export function bodyOf(request: IncomingMessage, most: number): Promise<Buffer | null> {
  return new Promise((done, failed) => {
    let parts: Buffer[] = [];
    let length = Number(request.headers["content-length"] ?? 0) > most ? Number.POSITIVE_INFINITY : 0;
    const take = (part: Buffer): void => {
      length += part.length;
      if (length <= most) parts.push(part);
      else letGo();
    };
    const letGo = (): void => {
      parts = [];
      request.off("data", take);
      request.resume();
      done(null);
    };
    request.on("error", failed);
    request.on("close", () => failed(new Error("the sender stopped halfway")));
    if (length > most) return letGo();
    request.on("data", take);
    request.on("end", () => done(Buffer.concat(parts)));
  });
}
