/** The text of a printed list. */
export interface ListText {
  readonly text: string;
  /** Its bytes were in the old Western European code (Windows-1252). */
  readonly isOldCode: boolean;
}

/** The text of bytes in UTF-8, UTF-16 with its mark, or Windows-1252; `null` when they are no text. */
export function listText(bytes: Uint8Array): ListText | null {
  const mark = (bytes[0] ?? 0) * 256 + (bytes[1] ?? 0);
  if (mark === 0xfffe) return { text: new TextDecoder("utf-16le").decode(bytes), isOldCode: false };
  if (mark === 0xfeff) return { text: new TextDecoder("utf-16be").decode(bytes), isOldCode: false };
  if (bytes.some((byte) => byte < 9 || (byte > 13 && byte < 32 && byte !== 27))) return null;
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), isOldCode: false };
  } catch {
    return { text: new TextDecoder("windows-1252").decode(bytes), isOldCode: true };
  }
}
