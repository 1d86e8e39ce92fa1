/** The kinds of files that this tool reads, by the word before the stroke in their `registrant:` line. */
export const FILE_KINDS = ["instrument", "section", "registration", "piece"] as const;
/** One of {@link FILE_KINDS}. */
export type FileKind = (typeof FILE_KINDS)[number];

/** The version of every kind that is read and written. */
export const FILE_VERSION = 1;

/** What must stand behind `registrant:` for a kind: `instrument/1`. */
export const versionLine = (kind: FileKind): string => `${kind}/${FILE_VERSION}`;

/** A kind with its article, for sentences: `an instrument file`. */
export const kindInWords = (kind: FileKind): string => `${kind === "instrument" ? "an" : "a"} ${kind} file`;

/**
 * What kind of file a text says it is, from its `registrant:` line and whatever the version; `null` when it says nothing.
 * Looks at the lines only, so that a file with errors can still be told.
 */
export function fileKindOf(text: string): FileKind | null {
  const line = /^[\uFEFF]?registrant[ \t]*:[ \t]*["']?([a-z]+)\//m.exec(text);
  return FILE_KINDS.find((kind) => kind === line?.[1]) ?? null;
}
