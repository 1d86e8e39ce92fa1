import type { Entry } from "./work.ts";

const KEY = "registrant-entry";

/** Keeps a list that is being entered for as long as the window is open: it is in no file before it has become an organ. */
export function keepEntry(entry: Entry | null): void {
  try {
    if (entry) sessionStorage.setItem(KEY, JSON.stringify(entry));
    else sessionStorage.removeItem(KEY);
  } catch {
    // A window without a store of its own: the list is lost by a reload then, as everywhere on the web.
  }
}

/** The list that was being entered before the window was loaded anew. */
export function keptEntry(): Entry | null {
  try {
    const said: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
    if (typeof said !== "object" || said === null || !("text" in said) || !("answers" in said)) return null;
    const { text, answers } = said;
    if (typeof text !== "string" || typeof answers !== "object" || answers === null) return null;
    const rows = Object.entries(answers).filter((row): row is [string, string] => typeof row[1] === "string");
    return { text, answers: Object.fromEntries(rows) };
  } catch {
    return null;
  }
}
