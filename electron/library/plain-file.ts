import { createHash } from "node:crypto";
import { constants } from "node:fs";
import type { DocumentId, StoredDocument, Version } from "../../shared-model/host-api.ts";
import { DOCUMENT_BYTES } from "../../shared-model/host-api.ts";
import type { Disk } from "./disk.ts";
import { HostFault } from "./fault.ts";

/** A link is refused by the system itself, and a pipe does not keep us waiting. Windows has neither. */
const READ = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

/** Fingerprint of bytes. */
export const versionOf = (bytes: Uint8Array): Version => createHash("sha256").update(bytes).digest("base64url");

/**
 * The bytes of a plain file.
 *
 * @param file its name for people.
 * @param most most bytes that are read.
 * @throws HostFault when it is no plain file or too long; an error of the file system otherwise.
 */
export async function readBytes(path: string, file: string, disk: Disk, most = DOCUMENT_BYTES): Promise<Buffer> {
  const handle = await disk.open(path, READ);
  try {
    const status = await handle.stat();
    if (!status.isFile()) throw new HostFault("not-text", `${file}: It is no plain file.`);
    // A file may grow between its measuring and its reading: one byte beyond the limit is asked for.
    const bytes = Buffer.alloc(Math.min(status.size, most) + 1);
    let length = 0;
    for (;;) {
      const { bytesRead } = await handle.read(bytes, length, bytes.length - length, null);
      length += bytesRead;
      if (bytesRead === 0 || length === bytes.length) break;
    }
    if (status.size > most || length > most) {
      throw new HostFault("too-large", `${file}: It is longer than ${most / 1_000_000} MB. Is it the right file?`);
    }
    return bytes.subarray(0, length);
  } finally {
    await handle.close();
  }
}

/** The text of bytes, byte order mark included, so that saving it gives the same bytes again; `null` when it is no UTF-8. */
export function utf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

/**
 * A document from the disk.
 *
 * @throws as {@link readBytes}, and HostFault `not-text` when it is no UTF-8.
 */
export async function readDocument(id: DocumentId, path: string, file: string, disk: Disk): Promise<StoredDocument> {
  const bytes = await readBytes(path, file, disk);
  const text = utf8(bytes);
  if (text === null) {
    throw new HostFault(
      "not-text",
      `${file}: It is not written in UTF-8. Open it in a text editor and save it as UTF-8.`,
    );
  }
  return { id, text, version: versionOf(bytes) };
}
