import type { HostTrouble, PickedText } from "../../shared-model/host-api.ts";
import { DOCUMENT_BYTES } from "../../shared-model/host-api.ts";

/** The text of bytes in UTF-8, UTF-16 with its mark, or the old Western European code; `null` when they are no text. */
function decoded(bytes: Uint8Array): string | null {
  const mark = (bytes[0] ?? 0) * 256 + (bytes[1] ?? 0);
  if (mark === 0xfffe) return new TextDecoder("utf-16le").decode(bytes);
  if (mark === 0xfeff) return new TextDecoder("utf-16be").decode(bytes);
  if (bytes.some((byte) => byte < 9 || (byte > 13 && byte < 32 && byte !== 27))) return null;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/**
 * The text of a file that the person picked or dropped on the page, at most 5 MB.
 *
 * @throws HostTrouble, in a rejected promise, when it is too long, no text or cannot be read.
 */
export async function pickedText(file: File): Promise<PickedText> {
  const refuse = (trouble: HostTrouble["trouble"], words: string): Promise<never> =>
    Promise.reject({ trouble, words: `${file.name}: ${words}` } satisfies HostTrouble);
  if (file.size > DOCUMENT_BYTES) return refuse("too-large", "It is longer than 5 MB. Is it the right file?");
  const bytes = await file.arrayBuffer().catch(() => null);
  if (!bytes) return refuse("gone", "It cannot be read. Was it moved or taken away?");
  const text = decoded(new Uint8Array(bytes));
  if (text === null) return refuse("not-text", "This is not a text file. Save the list as plain text first.");
  return { name: file.name, text };
}
