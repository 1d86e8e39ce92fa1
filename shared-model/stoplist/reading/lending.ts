import { foldedSpelling } from "../glossary/spelling.ts";
import { type Coupled, divisionsMeant } from "./couplers.ts";
import { headingIn } from "./headings.ts";
import type { ReadDivision, ReadStop } from "./reading.ts";
import { lenderIn } from "./remarks.ts";

/** A stop of the list and the division it stands in. */
export interface StopInDivision {
  readonly stop: ReadStop;
  readonly division: ReadDivision;
}

const sameName = (one: string, other: string): boolean => foldedSpelling(one) === foldedSpelling(other);

/** Whether pipes of the stop can serve another as they are: one row over the whole keyboard. */
const isPlain = ({ half, composition, ranks, pitch }: ReadStop): boolean =>
  half === null && composition === null && (ranks ?? 1) === 1 && pitch !== null;

/** The stop itself where one of the candidates fits alone: the pitch decides between several. */
function theOne(candidates: readonly StopInDivision[], stop: ReadStop): StopInDivision | null {
  const own = candidates.filter((one) => one.stop.borrowed === null);
  const among = own.length > 0 ? own : candidates;
  const alike = among.filter((one) => one.stop.pitch === stop.pitch);
  const fits = alike.length > 0 ? alike : among;
  return fits.length === 1 ? (fits[0] ?? null) : null;
}

/**
 * The stop whose pipes a printed stop uses, where the list says so and leaves no doubt (`Gedackt 8 (Sw)`, `Bass Flute 8
 * (ext. Bourdon)`, `from Sw Bourdon`); `null` where it says nothing, or less.
 */
function lenderOf(stop: ReadStop, own: ReadDivision, divisions: readonly ReadDivision[]): StopInDivision | null {
  if (stop.borrowed === null || !isPlain(stop)) return null;
  const stops = divisions.flatMap((division) =>
    division.stops.filter((one) => one !== stop && isPlain(one)).map((one) => ({ stop: one, division })),
  );
  const named = (within: readonly StopInDivision[], name: string): StopInDivision | null =>
    theOne(
      within.filter((one) => sameName(one.stop.name, name)),
      stop,
    );
  const coupled = divisions.map(
    ({ name, kind, keyboard }): Coupled => ({
      name: name ?? "",
      role: headingIn(name ?? "")?.role ?? (kind === "pedal" ? "pedal" : "other"),
      kind,
      keyboard,
    }),
  );
  const within = (words: string): readonly StopInDivision[] | null => {
    const meant = words === "" ? [] : divisionsMeant(words, coupled);
    const division = meant.length === 1 ? divisions[coupled.indexOf(meant[0] as Coupled)] : undefined;
    return division ? stops.filter((one) => one.division === division) : null;
  };
  // "Sw., ext. Gedackt"
  const words = stop.borrowed
    .split(/,\s*/)
    .map(lenderIn)
    .filter((one) => one !== "")
    .join(" ")
    .replace(/\.$/, "")
    .split(/\s+/)
    .filter((one) => one !== "");
  const mine = stops.filter((one) => one.division === own);
  if (words.length === 0) return named(mine, stop.name);
  for (let count = words.length; count >= 1; count--) {
    const there = within(words.slice(0, count).join(" "));
    const name = words.slice(count).join(" ");
    const found = there === null ? null : named(there, name === "" ? stop.name : name);
    if (found) return found;
  }
  const name = words.join(" ");
  return named(mine, name) ?? named(stops, name);
}

/** Stops that sound from one row of pipes: the one that owns it, and those that it lends to. */
export interface SharedRow {
  readonly owner: StopInDivision;
  readonly borrowers: readonly StopInDivision[];
}

/** Every row of pipes that the list says several stops share. A stop that borrows from a borrower borrows from its owner. */
export function sharedRows(divisions: readonly ReadDivision[]): readonly SharedRow[] {
  const lenders = new Map<ReadStop, StopInDivision>();
  const first = new Map<string, StopInDivision>();
  for (const division of divisions)
    for (const stop of division.stops) {
      if (stop.row === null || !isPlain(stop)) continue;
      const owner = first.get(stop.row);
      if (owner) lenders.set(stop, owner);
      else first.set(stop.row, { stop, division });
    }
  for (const division of divisions)
    for (const stop of division.stops) {
      const lender = lenderOf(stop, division, divisions);
      if (lender) lenders.set(stop, lender);
    }
  const rows = new Map<ReadStop, { owner: StopInDivision; borrowers: StopInDivision[] }>();
  for (const division of divisions)
    for (const stop of division.stops) {
      let owner = lenders.get(stop);
      const passed = new Set<ReadStop>([stop]);
      while (owner && lenders.has(owner.stop) && !passed.has(owner.stop)) {
        passed.add(owner.stop);
        owner = lenders.get(owner.stop);
      }
      // Two that name each other name no owner.
      if (!owner || passed.has(owner.stop)) continue;
      const row = rows.get(owner.stop) ?? { owner, borrowers: [] };
      row.borrowers.push({ stop, division });
      rows.set(owner.stop, row);
    }
  return [...rows.values()];
}
