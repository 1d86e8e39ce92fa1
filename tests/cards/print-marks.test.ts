import { describe, expect, test } from "vitest";
import type { ChangeCard, PieceCards } from "../../shared-model/cards/piece-card.ts";
import { printedNow, printedSince, printMarks, sinceWords } from "../../shared-model/cards/print-marks.ts";
import { LANTERN } from "./piece-example.ts";

const ALL = ["overview", "pistons", "changes", "assistant"] as const;
const first = printedNow([], LANTERN, ALL, null, 1000);
const withChange = (at: number, change: Partial<ChangeCard>): PieceCards => ({
  ...LANTERN,
  changes: LANTERN.changes.map((card, index) => (index === at ? { ...card, ...change } : card)),
});
const since = (cards: PieceCards) => printedSince(first, cards);

describe("what changed since the cards were printed", () => {
  test("nothing, of the same cards; nothing is said where none were printed", () => {
    expect(since(LANTERN)).toEqual({ when: 1000, changed: [], fresh: [], gone: [], parts: [] });
    expect(printedSince([], LANTERN)).toBeNull();
    expect(printedSince(printedNow([], LANTERN, ["overview"], null, 1), LANTERN)).toBeNull();
  });

  test("what a card says of itself, and what the card before it says of the next", () => {
    expect(since(withChange(2, { stays: ["Principal 4 (Great)"] }))).toMatchObject({ changed: [3], parts: [] });
    expect(since(withChange(2, { where: "bar 50" }))?.changed).toEqual([2, 3]);
    expect(since(withChange(2, { where: "bar 50" }))?.parts).toContain("overview");
  });

  test("cards that are new, and such as are wanted no more", () => {
    const [one] = LANTERN.changes as [ChangeCard];
    const longer = { ...LANTERN, changes: [...LANTERN.changes, { ...one, number: 6 }] };
    expect(since(longer)).toMatchObject({ changed: [5], fresh: [6], gone: [] });
    expect(since({ ...LANTERN, changes: LANTERN.changes.slice(0, 4) })).toMatchObject({ changed: [4], gone: [5] });
  });

  test("printed anew, as much as is printed holds again", () => {
    const now = withChange(2, { where: "bar 50" });
    const part = printedNow(first, now, ["changes"], [3], 2000);
    expect(printedSince(part, now)).toMatchObject({ when: 2000, changed: [2] });
    const rest = printedNow(part, now, ["overview", "changes"], [2], 3000);
    expect(printedSince(rest, now)?.changed).toEqual([]);
    expect(printedSince(rest, now)?.parts).not.toContain("overview");
  });

  test("every field of a card counts", () => {
    const marks = printMarks(LANTERN);
    const [, second] = LANTERN.changes as [ChangeCard, ChangeCard];
    for (const key of Object.keys(second) as (keyof ChangeCard)[]) {
      if (key === "number") continue;
      const other = key === "stays" || key === "tasks" || key === "whenTime" || key === "presses" ? [] : null;
      const value = JSON.stringify(second[key]) === JSON.stringify(other) ? "something" : other;
      const changed = withChange(1, { [key]: value } as Partial<ChangeCard>);
      if (key === "state") continue;
      expect(printMarks(changed).get("2"), key).not.toBe(marks.get("2"));
    }
  });

  test.each([
    [
      { changed: [3, 7], fresh: [8], gone: [], parts: ["overview"] },
      "Since you printed on 3 May: cards 3 and 7 have changed, card 8 is new, the overview has changed.",
    ],
    [
      { changed: [3], fresh: [], gone: [8, 9], parts: [] },
      "Since you printed on 3 May: card 3 has changed, cards 8 and 9 are no longer wanted.",
    ],
    [{ changed: [], fresh: [], gone: [], parts: [] }, "What you printed on 3 May still holds."],
  ] as const)("in words: %j", (what, words) => expect(sinceWords({ when: 0, ...what }, "3 May")).toBe(words));
});
