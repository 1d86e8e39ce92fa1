import * as z from "zod";
import {
  DOCUMENT_BYTES,
  DOCUMENT_KINDS,
  EXPORT_BYTES,
  type ExportRequest,
  type HostMethod,
  type HostTrouble,
  type LibraryChange,
  type PrintedRequest,
} from "./host-api.ts";

const TROUBLES = ["gone", "not-allowed", "too-large", "no-room", "not-text", "unreachable", "failed"] as const;

/** No text may be longer in UTF-16 units than the bytes it would become; a lone surrogate would not come back as it went. */
const text = z
  .string()
  .max(DOCUMENT_BYTES)
  .refine((value) => !/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/.test(value));
const documentId = z.string().min(1).max(1024);
const version = z.string().min(1).max(100);

/**
 * The name of a file to hand out: one component, no path, nothing that a disk of any system refuses. Its ending says what
 * programs may make of it, so only those are let through that the app writes.
 */
const exportName = z
  .string()
  .max(150)
  .regex(/^[^\s.\\/:*?"<>|\u0000-\u001F\u007F][^\\/:*?"<>|\u0000-\u001F\u007F]*\.(?:pdf|yaml|txt|json|csv|svg|png)$/i);

const exportRequest: z.ZodType<ExportRequest> = z.strictObject({
  name: exportName,
  bytes: z.instanceof(Uint8Array).refine((bytes) => bytes.byteLength <= EXPORT_BYTES),
});

/** A PDF by its name and by its first bytes. */
const pdfRequest = exportRequest.refine(
  ({ name, bytes }) =>
    /\.pdf$/i.test(name) && [0x25, 0x50, 0x44, 0x46, 0x2d].every((byte, index) => bytes[index] === byte),
);

/** What was printed, as it is kept and as it comes over a bridge. */
export const PRINT_NOTES: z.ZodType<PrintedRequest["printed"]> = z
  .array(z.strictObject({ what: z.string().min(1).max(20), mark: z.string().min(1).max(40), when: z.number().min(0) }))
  .max(20_000);

/** The arguments of every method as they must come over a bridge; whatever else comes is refused unread. */
export const HOST_ARGUMENTS = {
  facts: z.tuple([]),
  list: z.tuple([]),
  read: z.tuple([documentId]),
  save: z.tuple([z.strictObject({ id: documentId, text, seen: version })]),
  create: z.tuple([z.strictObject({ kind: z.enum(DOCUMENT_KINDS), name: z.string().max(500), text })]),
  previous: z.tuple([documentId]),
  printed: z.tuple([documentId]),
  notePrinted: z.tuple([z.strictObject({ id: documentId, printed: PRINT_NOTES })]),
  discard: z.tuple([documentId]),
  opened: z.tuple([documentId]),
  chooseLibrary: z.tuple([]),
  chooseText: z.tuple([]),
  exportFile: z.tuple([exportRequest]),
  showPdf: z.tuple([pdfRequest]),
} as const satisfies Record<HostMethod, z.ZodType>;

const troubleSchema: z.ZodType<HostTrouble> = z.strictObject({
  trouble: z.enum(TROUBLES),
  words: z.string().min(1),
});

/** What comes back over a bridge for one call. */
export const REPLY = z.discriminatedUnion("ok", [
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), trouble: troubleSchema }),
]);
/** The value of a method, or the trouble that kept it. */
export type Reply = z.infer<typeof REPLY>;

/** Changes as they are told to a window. */
export const CHANGES: z.ZodType<readonly LibraryChange[]> = z.array(
  z.strictObject({ id: documentId, what: z.enum(["added", "changed", "removed"]) }),
);
