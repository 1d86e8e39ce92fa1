import { differenceOf } from "../plan/changes.ts";
import { VERDICT_WORDS, VERDICTS, type Verdict } from "../plan/feasibility.ts";
import type { PlannedPiece, PlannedSection } from "../plan/planned.ts";
import { movesWords, shiftWords } from "../plan/words.ts";
import { joined, type Points } from "../rules/rule.ts";
import { labelOf } from "./label.ts";

/** The work of some changes. */
export interface ComparedWork {
  /** How many changes go how. */
  readonly verdicts: Readonly<Record<Verdict, number>>;
  /** Knobs moved by hand, foot or helper, those at leisure among them; pistons pressed. */
  readonly knobs: number;
  readonly presses: number;
  /** Seconds that hands, feet and helpers are away for it, all together. */
  readonly seconds: number;
}

/** A section on one side of a comparison. */
export interface ComparedSide {
  /** Its place on that side, from 0. */
  readonly section: number;
  readonly label: string;
  readonly points: Points;
  /** The change into it, and those inside it. */
  readonly work: ComparedWork;
}

/** A section of either plan. */
export interface ComparedSection {
  readonly name: string;
  /** `null` where the plan has no such section. */
  readonly one: ComparedSide | null;
  readonly other: ComparedSide | null;
  /** What to move to come from the one to the other, and who plays elsewhere; empty where they are registered alike. */
  readonly moves: readonly string[];
  readonly isSame: boolean;
}

/** Two plans of a piece on one organ side by side. */
export interface PlanComparison {
  readonly sections: readonly ComparedSection[];
  readonly one: ComparedWork & { readonly points: Points };
  readonly other: ComparedWork & { readonly points: Points };
}

function workOf({ changes }: PlannedPiece, isMeant: (section: number) => boolean): ComparedWork {
  const own = changes.filter((change) => isMeant(change.section));
  const count = (verdict: Verdict): number => own.filter((change) => change.verdict === verdict).length;
  const sum = (value: (change: (typeof own)[number]) => number): number =>
    own.reduce((total, change) => total + value(change), 0);
  return {
    verdicts: Object.fromEntries(VERDICTS.map((verdict) => [verdict, count(verdict)])) as Record<Verdict, number>,
    knobs: sum(({ means, handling, later }) => {
      // With a general the hands have the boxes alone, which tasks name; what a divisional moves is in nobody's task.
      const moved = handling.tasks.reduce((total, task) => total + task.moves.length, 0);
      return moved + (means.by === "general" && !means.near ? 0 : later.length);
    }),
    presses: sum(({ means }) => (means.by === "general" ? 1 : means.by === "divisionals" ? means.pistons.length : 0)),
    seconds:
      Math.round(sum(({ handling }) => handling.tasks.reduce((total, task) => total + task.seconds, 0)) * 10) / 10,
  };
}

const nameOf = ({ music }: PlannedSection, at: number): string => music.section.name ?? `Section ${at + 1}`;

/** Names of sections; of those that bear one name the first, the second ... are each other's. */
function keysOf({ sections }: PlannedPiece): readonly string[] {
  const seen = new Map<string, number>();
  return sections.map((section, at) => {
    const name = nameOf(section, at).trim().toLowerCase();
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return `${name}\n${count}`;
  });
}

function sideOf(plan: PlannedPiece, at: number | undefined): ComparedSide | null {
  const section = at === undefined ? undefined : plan.sections[at];
  if (!section || at === undefined) return null;
  const { candidates, chosen } = section;
  return {
    section: at,
    label: labelOf(candidates.problem, chosen.judgement.parts),
    points: chosen.score,
    work: workOf(plan, (each) => each === at),
  };
}

/** What differs between two registrations of a section, step by step where it grows. */
function movesBetween(one: PlannedPiece, at: number, other: PlannedPiece, there: number): readonly string[] {
  const [mine, theirs] = [one.sections[at]?.chosen, other.sections[there]?.chosen];
  if (!mine || !theirs) return [];
  const stands = [mine, theirs].map((each) => [each.entry, ...each.steps.map((step) => step.stand)]);
  const [from = [], to = []] = stands;
  const between = to.map((stand, step) => {
    const before = from[step];
    if (!before) return [];
    const { needed, later, shifts } = differenceOf(one.instrument, one.row.layout, before, stand);
    return [...movesWords([...needed, ...later]), ...shiftWords(shifts)];
  });
  const [entry = [], ...steps] = between;
  const changed = steps.filter((each) => each.length > 0).length;
  return [
    ...entry,
    ...(changed > 0 ? [`${changed} of its further steps otherwise`] : []),
    ...(from.length === to.length ? [] : [`${to.length - 1} further steps instead of ${from.length - 1}`]),
  ];
}

/** Sets two plans of a piece side by side, section by section; sections are each other's by their names. */
export function comparePlans(one: PlannedPiece, other: PlannedPiece): PlanComparison {
  const [keys, others] = [keysOf(one), keysOf(other)];
  const rows: { readonly at: number | undefined; readonly there: number | undefined }[] = keys.map((key, at) => {
    const there = others.indexOf(key);
    return { at, there: there < 0 ? undefined : there };
  });
  for (const [there, key] of others.entries()) if (!keys.includes(key)) rows.push({ at: undefined, there });
  const whole = (plan: PlannedPiece): PlanComparison["one"] => ({
    ...workOf(plan, () => true),
    points: plan.sections.reduce((sum, section) => sum + section.chosen.score, 0),
  });
  return {
    sections: rows.map(({ at, there }): ComparedSection => {
      const moves = at === undefined || there === undefined ? [] : movesBetween(one, at, other, there);
      const [mine, theirs] = [sideOf(one, at), sideOf(other, there)];
      const named = at === undefined ? other.sections[there as number] : one.sections[at];
      return {
        name: nameOf(named as PlannedSection, at ?? (there as number)),
        one: mine,
        other: theirs,
        moves,
        isSame: mine !== null && theirs !== null && moves.length === 0,
      };
    }),
    one: whole(one),
    other: whole(other),
  };
}

/** How some changes go: `2 easy, 1 needs the assistant`; `no change` for none. */
export function verdictsWords({ verdicts }: ComparedWork): string {
  const said = VERDICTS.filter((verdict) => verdicts[verdict] > 0).map((verdict) => {
    const words = VERDICT_WORDS[verdict];
    return `${verdicts[verdict]} ${verdicts[verdict] > 1 ? words.replace(/^needs/, "need") : words}`;
  });
  return said.length === 0 ? "no change" : said.join(", ");
}

/** `14 knobs, 3 pistons, 21.4 s`. */
export function workWords({ knobs, presses, seconds }: ComparedWork): string {
  const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;
  return [counted(knobs, "knob"), ...(presses > 0 ? [counted(presses, "piston")] : []), `${seconds.toFixed(1)} s`].join(
    ", ",
  );
}

/** What the other plan is against the one, in a sentence: quality, work, and what the player cannot do alone. */
export function comparisonWords({ sections, one, other }: PlanComparison): string {
  if (sections.every((section) => section.isSame) && one.knobs === other.knobs && one.presses === other.presses)
    return "Both are registered alike, with the same work.";
  const more = (difference: number, what: string, few = what): string | null =>
    difference === 0
      ? null
      : `${Math.abs(difference)} ${Math.abs(difference) === 1 ? what : few} ${difference > 0 ? "more" : "fewer"}`;
  const points = other.points - one.points;
  const hard = (side: ComparedWork): number => side.verdicts["needs-assistant"] + side.verdicts.impossible;
  const asked = [
    more(other.knobs - one.knobs, "knob", "knobs"),
    more(other.presses - one.presses, "piston", "pistons"),
  ].filter((each) => each !== null);
  const alike = sections.filter((section) => section.isSame).length;
  const sound =
    points === 0
      ? "By the points of its registrations it is as good"
      : `By the points of its registrations it is ${Math.abs(points) / 100} ${points > 0 ? "better" : "worse"}`;
  const work = asked.length === 0 ? "with as many knobs and pistons" : `with ${joined(asked)}`;
  const help = more(hard(other) - hard(one), "change", "changes");
  return `${sound}, ${work}${help === null ? "" : `; ${help} cannot be made by the player alone`}. ${
    alike === 0 ? "No section is" : `${alike} of ${sections.length} sections ${alike === 1 ? "is" : "are"}`
  } registered alike.`;
}
