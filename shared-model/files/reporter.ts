import { severityOf, type Trouble, type TroubleFacts } from "./trouble.ts";

/** Errors shown before reading gives up: no one mends more at once, and each may cost a search for near names. */
const ERROR_LIMIT = 200;

/** Collects the troubles of one file, each at an offset of its text. */
export interface Reporter {
  readonly report: (facts: TroubleFacts, offset: number) => void;
  /** Line of an offset, from 1. */
  readonly lineOf: (offset: number) => number;
  /** Whether so many errors stand that further reading is idle. */
  readonly full: () => boolean;
  readonly hasErrors: () => boolean;
  /** In the order of the file. */
  readonly troubles: () => readonly Trouble[];
}

/** A reporter for the file; `place` turns an offset into line and column, both from 1. */
export function reporterFor(fileName: string, place: (offset: number) => { line: number; column: number }): Reporter {
  const found: { trouble: Trouble; offset: number }[] = [];
  let errors = 0;
  const add = (facts: TroubleFacts, offset: number): void => {
    found.push({ trouble: { ...facts, severity: severityOf(facts.code), file: fileName, ...place(offset) }, offset });
  };
  return {
    report(facts, offset) {
      const isError = severityOf(facts.code) === "error";
      if (isError) errors += 1;
      if (errors < ERROR_LIMIT || (errors === ERROR_LIMIT && isError)) add(facts, offset);
      if (isError && errors === ERROR_LIMIT) add({ code: "too-many-troubles", limit: ERROR_LIMIT }, offset);
    },
    lineOf: (offset) => place(offset).line,
    full: () => errors >= ERROR_LIMIT,
    hasErrors: () => errors > 0,
    troubles: () => found.toSorted((a, b) => a.offset - b.offset).map((entry) => entry.trouble),
  };
}
