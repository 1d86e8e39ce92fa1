import type { Entry } from "./work.ts";

const KEY = "registrant-entry";

/** What of a list that is being entered survives a reload. */
export interface KeptEntry {
  readonly entry: Entry;
  /** Where its organ is looked at meanwhile: the text of the piece begun on it, empty while there is none. Else `null`. */
  readonly piece: string | null;
}

/** Keeps a list that is being entered for as long as the window is open: it is in no file before it has become an organ. */
export function keepEntry(kept: KeptEntry | null): void {
  try {
    if (kept) sessionStorage.setItem(KEY, JSON.stringify({ ...kept.entry, piece: kept.piece }));
    else sessionStorage.removeItem(KEY);
  } catch {
    // A window without a store of its own: the list is lost by a reload then, as everywhere on the web.
  }
}

/** The list that was being entered before the window was loaded anew. */
export function keptEntry(): KeptEntry | null {
  try {
    const said: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
    if (typeof said !== "object" || said === null || !("text" in said) || !("answers" in said)) return null;
    const { text, answers } = said;
    if (typeof text !== "string" || typeof answers !== "object" || answers === null) return null;
    const rows = Object.entries(answers).filter((row): row is [string, string] => typeof row[1] === "string");
    const piece = "piece" in said && typeof said.piece === "string" ? said.piece : null;
    return { entry: { text, answers: Object.fromEntries(rows) }, piece };
  } catch {
    return null;
  }
}
