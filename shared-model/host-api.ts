import type { PrintMark } from "./cards/print-marks.ts";
import type { OrganFacts } from "./stoplist/organ-facts.ts";

/**
 * What the app asks of the machine it runs on, and nothing else: files, dialogs, printing. All that concerns music is
 * reckoned in the renderer from the texts this hands over. Two hosts keep this contract, the desktop shell and the
 * browser host, and one suite of tests runs against both.
 *
 * Every promise may be rejected with a {@link HostTrouble} only: words for an organist, never a stack.
 */
export interface Host {
  facts(): Promise<HostFacts>;
  /** Every document of the library and every demo organ, by kind and then by name. Unreadable files are listed too. */
  list(): Promise<readonly LibraryEntry[]>;
  read(id: DocumentId): Promise<StoredDocument>;
  /** Writes a whole document at once: afterwards the file is the old one or the new one, whatever happens meanwhile. */
  save(request: SaveRequest): Promise<SaveResult>;
  /** A new document under a file name made from `name`; never replaces one. Demo organs are copied in this way. */
  create(request: CreateRequest): Promise<StoredDocument>;
  /** The version before the last save; `null` when there is none. */
  previous(id: DocumentId): Promise<StoredDocument | null>;
  /** What was noted when cards of this piece were last printed; empty when nothing was. */
  printed(id: DocumentId): Promise<readonly PrintMark[]>;
  /** Keeps what was printed of a piece, in the place of what was noted before. The piece's own file is not touched. */
  notePrinted(request: PrintedRequest): Promise<void>;
  /** Moves a document into the library's bin, from where a person can fetch it back by hand. */
  discard(id: DocumentId): Promise<void>;
  /** Says that the person has opened a document, which is more than reading it: a host that lists recent organs takes note. */
  opened(id: DocumentId): Promise<void>;
  /**
   * Tells of documents that changed, came or went by other hands than this window's; none at all where something may have
   * changed unheard, so that whoever listens looks anew. Returns what ends it.
   */
  watch(listener: (changes: readonly LibraryChange[]) => void): () => void;
  /** Asks the person for the library's folder; `null` when they think better of it or the host cannot ask. */
  chooseLibrary(): Promise<HostFacts | null>;
  /** Asks the person for a text file to read in; `null` when they think better of it. At most 5 MB. */
  chooseText(): Promise<PickedText | null>;
  /** Hands a finished file to the person (a save dialog, a download); `null` when they think better of it. */
  exportFile(request: ExportRequest): Promise<ExportedFile | null>;
  /** Opens a finished PDF where it can be looked at and printed. */
  showPdf(request: ExportRequest): Promise<void>;
  /**
   * Commands chosen in the window's own menu; a host without one never calls. `open-document` names the document, all others
   * hand over `null`. Returns what ends it.
   */
  onMenu(listener: MenuListener): () => void;
}

/** Longest document and longest text read in, in bytes of UTF-8. */
export const DOCUMENT_BYTES = 5_000_000;
/** Longest finished file that is handed out, in bytes. */
export const EXPORT_BYTES = 50_000_000;

/** The methods that ask once and are answered once; what goes over the bridge. */
export const HOST_METHODS = [
  "facts",
  "list",
  "read",
  "save",
  "create",
  "previous",
  "printed",
  "notePrinted",
  "discard",
  "opened",
  "chooseLibrary",
  "chooseText",
  "exportFile",
  "showPdf",
] as const satisfies readonly (keyof Host)[];
/** One of {@link HOST_METHODS}. */
export type HostMethod = (typeof HOST_METHODS)[number];

/** Name of the object under which the desktop shell hands the host to the renderer. */
export const HOST_GLOBAL = "registrantHost";

/** What the app is told of the machine. */
export interface HostFacts {
  readonly host: "desktop" | "browser";
  readonly version: string;
  readonly platform: "linux" | "mac" | "windows";
  /** Folder of the library, as the person knows it. */
  readonly library: string;
}

/** The kinds of files, as `registrant:` names them. */
export const DOCUMENT_KINDS = ["instrument", "piece", "registration", "section"] as const;
/** One of {@link DOCUMENT_KINDS}. */
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];

/** `library:organs/st-maren.yaml`, `demo:sallowby.yaml`: where a document lies. Opaque to the renderer. */
export type DocumentId = string;

/** Fingerprint of a document's bytes: two texts with the same version are the same. */
export type Version = string;

/** One line of the library's list. */
export interface LibraryEntry {
  readonly id: DocumentId;
  /** `null` for a file that is none of ours; `trouble` then says why. */
  readonly kind: DocumentKind | null;
  /** What the document calls itself, else its file's name. */
  readonly name: string;
  /** Path inside the library, for people who keep their files themselves. */
  readonly file: string;
  /** Demo organs can be read, not saved. */
  readonly demo: boolean;
  /** Milliseconds since 1970; 0 for demo organs. */
  readonly changed: number;
  readonly trouble: string | null;
  /** What is in it, so that a list need not read every document; `null` when it has errors or is of another kind. */
  readonly facts: DocumentFacts | null;
  /** Its place among the documents that the person opened last, from 0; `null` when it was not opened lately. */
  readonly opened: number | null;
}

/** What a document holds, in a few figures. */
export type DocumentFacts =
  | ({ readonly of: "instrument" } & OrganFacts)
  /** `organ`: the organ it was registered on, as the file names it. */
  | { readonly of: "piece"; readonly sections: number; readonly organ: string | null };

/** A whole document as it stands on the disk, its byte order mark included. */
export interface StoredDocument {
  readonly id: DocumentId;
  readonly text: string;
  readonly version: Version;
}

/** A text that is to take the place of another. */
export interface SaveRequest {
  readonly id: DocumentId;
  readonly text: string;
  /** The version that this text was made from. */
  readonly seen: Version;
}

/** `changed-underneath`: somebody else wrote the file meanwhile; nothing is written, and `now` is what stands there. */
export type SaveResult =
  | { readonly done: "saved"; readonly version: Version }
  | { readonly done: "changed-underneath"; readonly now: StoredDocument | null };

/** A text that is to become a new document. `name` is for people, such as `St. Maren`. */
export interface CreateRequest {
  readonly kind: DocumentKind;
  readonly name: string;
  readonly text: string;
}

/** What was printed of a piece. */
export interface PrintedRequest {
  readonly id: DocumentId;
  readonly printed: readonly PrintMark[];
}

/** What became of one document. */
export interface LibraryChange {
  readonly id: DocumentId;
  readonly what: "added" | "changed" | "removed";
}

/** A text file that the person picked; its bytes were UTF-8, UTF-16 with its mark, or Windows-1252. */
export interface PickedText {
  readonly name: string;
  readonly text: string;
}

/** A finished file, at most 50 MB. */
export interface ExportRequest {
  /** Proposed file name, with its ending. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What became of a finished file. */
export interface ExportedFile {
  /** Where it lies; `null` when the host does not learn it (a download). */
  readonly where: string | null;
}

/** What the window's own menu can ask of the app. `open-document` comes from the list of recent organs. */
export const MENU_COMMANDS = [
  "new-organ",
  "open-document",
  "open-folder",
  "undo",
  "redo",
  "find",
  "print-cards",
  "zoom-in",
  "zoom-out",
  "zoom-usual",
  "theme",
  "about",
] as const;
/** One of {@link MENU_COMMANDS}. */
export type MenuCommand = (typeof MENU_COMMANDS)[number];
/** Called with the command and, for `open-document` alone, the document. */
export type MenuListener = (command: MenuCommand, document: DocumentId | null) => void;

/** Why the host could not do what it was asked. */
export interface HostTrouble {
  readonly trouble: "gone" | "not-allowed" | "too-large" | "no-room" | "not-text" | "unreachable" | "failed";
  /** One or two sentences for an organist: what is wrong and what to do. */
  readonly words: string;
}
