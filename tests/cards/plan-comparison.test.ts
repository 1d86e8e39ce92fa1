import { describe, expect, test } from "vitest";
import { comparePlans, comparisonWords, workWords } from "../../shared-model/cards/plan-comparison.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, workOut } from "../../shared-model/plan/planned.ts";
import {
  asRegistered,
  type PlanBasis,
  VARIANT_WORDS,
  type Variant,
  variantOf,
  variantsFor,
} from "../../shared-model/plan/variants.ts";
import { USUAL_WEIGHTS } from "../../shared-model/plan/weights.ts";
import { registrationsOf } from "../../shared-model/plan/written.ts";
import { demoOrgan, demoText } from "../instruments/demo-organs.ts";

const ORGAN = demoOrgan("sallowby");
const HYMN = readPieceFile(demoText("pieces/hymn.yaml"), "hymn.yaml", ORGAN).piece as Piece;

function planOf({ instrument, piece, weights }: PlanBasis): PlannedPiece {
  const row = chooseRow(instrument, piece, { weights });
  if ("troubles" in row) throw new Error(row.troubles.map((each) => each.text).join("\n"));
  return workOut(row);
}
const variant = (each: Variant, piece = HYMN): PlannedPiece => planOf(variantOf(ORGAN, piece, each));
const USUAL = variant("planned");

/** The piece with what a plan chose, pinned or not. */
const filled = (plan: PlannedPiece, pinned: boolean): Piece => ({
  ...HYMN,
  sections: HYMN.sections.map((section, at) => {
    const [registration = null, ...steps] = registrationsOf(plan.sections[at] as PlannedPiece["sections"][number]);
    return { ...section, registration, steps, pinned };
  }),
});

describe("two plans of a hymn side by side", () => {
  test("a plan and itself are alike", () => {
    const comparison = comparePlans(
      USUAL,
      planOf({ instrument: ORGAN, piece: asRegistered(filled(USUAL, false)), weights: USUAL_WEIGHTS }),
    );
    expect(comparison.sections.every((each) => each.isSame && each.moves.length === 0)).toBe(true);
    expect(comparisonWords(comparison)).toBe("Both are registered alike, with the same work.");
  });

  test("the best sound is worth more and never less work than the least work", () => {
    const [best, least] = [variant("best-sound"), variant("least-work")];
    const { one, other, sections } = comparePlans(least, best);
    expect(other.points).toBeGreaterThanOrEqual(comparePlans(least, USUAL).other.points);
    expect(other.points).toBeGreaterThan(one.points);
    expect(other.knobs).toBeGreaterThan(one.knobs);
    expect(sections.some((each) => !each.isSame)).toBe(true);
    const words = comparisonWords({ sections, one, other });
    expect(words).toMatch(/^By the points of its registrations it is [\d.]+ better, with \d+ knobs? more/);
    expect(words).toContain(`${sections.filter((each) => each.isSame).length} of 6 sections`);
  });

  test("what is told to move leads from the one console to the other, and nothing else", () => {
    const best = variant("best-sound");
    for (const { one, other, moves } of comparePlans(USUAL, best).sections) {
      const [mine, theirs] = [one, other].map((side, at) => {
        const plan = at === 0 ? USUAL : best;
        return plan.sections[side?.section ?? -1]?.chosen.entry.state.drawn ?? new Set<string>();
      }) as [ReadonlySet<string>, ReadonlySet<string>];
      const differs =
        [...theirs].filter((id) => !mine.has(id)).length + [...mine].filter((id) => !theirs.has(id)).length;
      const told =
        moves
          .filter((each) => /: [+-]/.test(each))
          .join(", ")
          .match(/[+-](?=\p{Lu})/gu) ?? [];
      expect(told).toHaveLength(differs);
    }
  });

  test("sections are each other's by their names, wherever they stand; one that is missing is told", () => {
    const shorter = {
      ...HYMN,
      sections: HYMN.sections.filter((_, at) => at !== 1).map((each) => ({ ...each, links: [] })),
    };
    const { sections } = comparePlans(USUAL, variant("planned", shorter));
    expect(sections.map(({ name, other }) => [name, other?.section ?? null])).toEqual([
      ["Introduction", 0],
      ["Verse 1", null],
      ["Verse 2", 1],
      ["Verse 3", 2],
      ["Verse 4", 3],
      ["Verse 5", 4],
    ]);
  });

  test("the work of a whole plan is that of its sections", () => {
    const { sections, one } = comparePlans(USUAL, USUAL);
    const sum = sections.reduce((total, each) => total + (each.one?.work.knobs ?? 0), 0);
    expect(sum).toBe(one.knobs);
    expect(workWords({ ...one, knobs: 1, presses: 2, seconds: 3 })).toBe("1 knob, 2 pistons, 3.0 s");
  });
});

describe("other ways to plan", () => {
  test("only those that are something else than the piece as it is", () => {
    expect(variantsFor(ORGAN, HYMN, false)).not.toContain("unpinned");
    expect(variantsFor(ORGAN, HYMN, true)).toContain("unpinned");
    expect(variantsFor(ORGAN, { ...HYMN, assistant: "left" }, false)).toContain("alone");
    expect(variantsFor(ORGAN, HYMN, false)).not.toContain("by-hand");
    expect(variantsFor(demoOrgan("hawsermouth"), HYMN, false)).toContain("by-hand");
    for (const words of Object.values(VARIANT_WORDS)) expect(words).toMatch(/^planned /);
  });

  test("pins stay but where they are left out; eight generals are pressed where they help", () => {
    const odd = filled(variant("least-work"), true);
    const pinned = comparePlans(
      planOf({ instrument: ORGAN, piece: odd, weights: USUAL_WEIGHTS }),
      variant("best-sound", odd),
    );
    expect(pinned.sections.every((each) => each.isSame)).toBe(true);
    const free = comparePlans(variant("least-work"), variant("unpinned", odd));
    expect(free.sections.every((each) => each.isSame)).toBe(false);
    expect(comparePlans(USUAL, variant("eight-generals")).other.presses).toBeGreaterThan(0);
    expect(comparePlans(USUAL, USUAL).one.presses).toBe(0);
  });
});
