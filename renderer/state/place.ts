import type { DocumentId } from "../../shared-model/host-api.ts";

/** The pages of the book. */
export const PAGES = [
  "first",
  "organ",
  "texture",
  "registration",
  "by-hand",
  "piece",
  "cards",
  "survey",
  "carry",
  "visit",
  "about",
] as const;
export type Page = (typeof PAGES)[number];

/** Where a person stands and what lies open: enough to come back to after a reload. */
export interface Place {
  readonly page: Page;
  readonly organ: DocumentId | null;
  readonly piece: DocumentId | null;
  /** Number of the section, from 0. */
  readonly at: number;
}

/** The first page with nothing open. */
export const START: Place = { page: "first", organ: null, piece: null, at: 0 };

/** A place as the part of an address behind `#`. */
export function placeText({ page, organ, piece, at }: Place): string {
  const query = new URLSearchParams();
  if (organ !== null) query.set("organ", organ);
  if (piece !== null) query.set("piece", piece);
  if (at > 0) query.set("section", String(at + 1));
  const text = query.toString();
  return `/${page}${text === "" ? "" : `?${text}`}`;
}

/** Reads what stands behind `#`; whatever is not understood is the first page. */
export function placeFromText(text: string): Place {
  const [path = "", query = ""] = text.replace(/^#?\/?/, "").split("?");
  const page = PAGES.find((each) => each === path);
  if (!page) return START;
  const said = new URLSearchParams(query);
  const section = Number(said.get("section") ?? "1");
  const at = Number.isInteger(section) && section > 0 && section < 10_000 ? section - 1 : 0;
  return { page, organ: said.get("organ"), piece: said.get("piece"), at };
}
