import { listen } from "../judging/listening.ts";
import { prepare } from "../judging/prepare.ts";
import type { Problem } from "../judging/problem.ts";
import type { Piece, PieceSection, Registration } from "../music/piece.ts";
import { type Alternative, type CandidateLists, copiesOf } from "../plan/candidates.ts";
import { type ChosenRow, chooseRow, type Leaning } from "../plan/plan.ts";
import { type PlannedPiece, type PlannedSection, workOut } from "../plan/planned.ts";
import { TIERS } from "../plan/weights.ts";
import { missingMeans } from "../propose/missing.ts";
import type { Points } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type Drawn, setDirectly } from "./carry-direct.ts";
import { nearestTo, withVoice } from "./carry-near.ts";
import { changedStops } from "./carry-words.ts";
import {
  type Aim,
  distanceOf,
  loudestOf,
  type MeaningDifference,
  meaningDifferences,
  soundsAlike,
  stepDifference,
} from "./meaning.ts";
import { changeDifference, isChange, otherKeyboards, practiceKeyboards } from "./practice.ts";

/** A section that the player pinned keeps its meaning at so many times the price. */
const PINNED = 10;
/** Direct ways that are looked at for each section. */
const DIRECT_WAYS = 2;

const UNSHARED: MeaningDifference = {
  part: null,
  text: "cannot share the registration of another section here",
  points: 0,
  about: "console",
};

/** Another registration that a section could have on the other organ. */
export interface CarriedOther {
  readonly alternative: Alternative;
  /** Points by which it is worth less there than the one that was chosen, for its own sake; below 0 where the others are why it was not. */
  readonly behind: Points;
  readonly stops: CarriedSection["stops"];
  readonly differences: readonly MeaningDifference[];
  /** What it costs beside the sections around it, in words. */
  readonly remarks: readonly string[];
}

/** A section carried to another organ. */
export interface CarriedSection {
  readonly before: PlannedSection;
  /** `null` where the other organ has no means for it. */
  readonly after: PlannedSection | null;
  /** Whether it could be set as it was: every stop has its like there, and every part sounds the same. */
  readonly asItWas: boolean;
  /** Why there are no means; empty where there are. */
  readonly missing: readonly string[];
  /** What stops became, part by part, in words. */
  readonly stops: readonly { readonly part: string; readonly text: string }[];
  /** What is meant otherwise, and what that counts against it. */
  readonly differences: readonly MeaningDifference[];
  /** How it stands otherwise to other sections, likewise. */
  readonly between: readonly MeaningDifference[];
  /** The next best, what is worth most first; none where it could be set as it was. */
  readonly others: readonly CarriedOther[];
}

/** A piece carried from one organ to another. */
export interface CarriedPiece {
  readonly from: Instrument;
  readonly to: Instrument;
  readonly piece: Piece;
  readonly sections: readonly CarriedSection[];
  /** The plan on the other organ, of the sections that it has means for; `null` where it has none for any. */
  readonly plan: PlannedPiece | null;
  readonly aim: Aim;
  /** On which keyboard each one of home is practised; empty where it is carried to be played. */
  readonly keyboards: ReadonlyMap<string, string>;
  /** What it was made from. */
  readonly made: {
    readonly before: PlannedPiece;
    readonly kept: readonly number[];
    readonly unshared: readonly number[];
  };
}

const standsOf = ({ entry, steps }: Alternative) => [entry, ...steps.map((each) => each.stand)];
const judgementsOf = ({ judgement, steps }: Alternative) => [judgement, ...steps.map((each) => each.judgement)];
const partsAtEnd = (one: Alternative) => (judgementsOf(one).at(-1) ?? one.judgement).parts;

/** What a piece is carried for, and where each keyboard of home is practised. */
interface Purpose {
  readonly aim: Aim;
  readonly keyboards: ReadonlyMap<string, string>;
}

/** How far one registration is from what another meant; of a row that grows, the mean of its beginning and its end. */
function farFrom(before: Alternative, after: Alternative, { aim, keyboards }: Purpose): Points {
  const elsewhere = aim === "practice" ? otherKeyboards(keyboards, before, after) : [];
  const entry = elsewhere.reduce(
    (sum, { points }) => sum + points,
    distanceOf(before.judgement.parts, after.judgement.parts, aim),
  );
  if (before.steps.length + after.steps.length === 0) return entry;
  return Math.round((entry + distanceOf(partsAtEnd(before), partsAtEnd(after), aim)) / 2);
}

/** All the steps of a registration set again as directly as can be; the most fitting way by its first step leads. */
function directRows(
  from: Instrument,
  before: Alternative,
  problem: Problem,
  { aim, keyboards }: Purpose,
): readonly (readonly Drawn[])[] {
  const to = problem.instrument;
  const set = (stand: Drawn, ways: number): readonly Drawn[] => {
    const direct = setDirectly(from, stand, to, ways, keyboards);
    // On three flutes little is found again: what matters for practice is that each hand has a voice where it plays.
    return aim === "practice" ? direct.map((one) => withVoice(problem, one)) : direct;
  };
  if (before.steps.length === 0) return set(before.entry, DIRECT_WAYS).map((one) => [one]);
  const row = standsOf(before).flatMap((stand) => set(stand, 1));
  return row.length === before.steps.length + 1 ? [row] : [];
}

/** The registration set as it was, where the other organ has the like of everything in it; else `null`. */
function sameAgain(from: Instrument, before: Alternative, problem: Problem): readonly Drawn[] | null {
  const row = standsOf(before).flatMap((stand) =>
    setDirectly(from, stand, problem.instrument, 1).filter((one) => one.whole),
  );
  const judged = judgementsOf(before);
  if (row.length < judged.length) return null;
  const alike = row.every((one, at) => {
    const parts = listen(problem, one.state, one.placings);
    return parts !== null && soundsAlike(judged[at]?.parts ?? [], parts);
  });
  return alike ? row : null;
}

/** As a file would keep it. */
const registered = ({ state, placings }: Drawn): Registration => ({
  keyboards: Object.fromEntries(placings.map((each) => [each.part, each.keyboard])),
  octaves: Object.fromEntries(placings.filter((each) => each.octave !== 0).map((each) => [each.part, each.octave])),
  state,
});

/** The piece without what was drawn on the old organ: pinned where it can be set as it was, else open. */
function openedFor(before: PlannedPiece, to: Instrument): readonly PieceSection[] {
  return before.sections.map(({ music, chosen }) => {
    const row = sameAgain(before.instrument, chosen, prepare(to, music.section));
    const [first, ...steps] = row?.map(registered) ?? [];
    return { ...music, registration: first ?? null, steps, pinned: first !== undefined };
  });
}

/** The sections that are kept, their links pointing at their new places. */
function remaining(sections: readonly PieceSection[], kept: readonly number[]): readonly PieceSection[] {
  return kept.map((at) => {
    const section = sections[at] as PieceSection;
    const links = section.links
      .filter(({ to }) => kept.includes(to))
      .map((link) => ({ ...link, to: kept.indexOf(link.to) }));
    return { ...section, links };
  });
}

/** What was, set again directly, and what lies near that; only what no rule forbids there. */
function nearTo(
  from: Instrument,
  old: Alternative,
  lists: CandidateLists,
  problem: Problem,
  weight: number,
  purpose: Purpose,
): readonly Alternative[] {
  const rows = directRows(from, old, problem, purpose);
  const near =
    old.steps.length > 0
      ? []
      : rows.flat().map((one) => [nearestTo(problem, one, old.judgement.parts, weight, purpose.aim)]);
  return [...rows, ...near].flatMap((row): readonly Alternative[] => {
    const [first, ...steps] = row.map(registered);
    const written = first ? lists.written(problem, first, steps, "carried-over") : null;
    return !written || "trouble" in written || written.judgement.forbidden ? [] : [written];
  });
}

/** What draws a plan towards the registrations that were. `kept` gives each of its sections its place in the old plan. */
function leaningTo(
  before: PlannedPiece,
  pinned: readonly boolean[],
  kept: readonly number[],
  purpose: Purpose,
): Leaning {
  const chosen = kept.map((at) => (before.sections[at] as PlannedSection).chosen);
  const weight = (at: number): number => (pinned[kept[at] as number] ? PINNED : 1);
  const known = chosen.map(() => new Map<Alternative, Points>());
  const found = new Map<Problem, Map<string, readonly Alternative[]>>();
  return {
    besides: (at, lists, problem) => {
      const old = chosen[at] as Alternative;
      // Verses of one kind come back with the registration that they had: what was found for one serves the next.
      const key = `${weight(at)} ${old.signature} ${old.steps.length}`;
      const table = found.get(problem) ?? new Map<string, readonly Alternative[]>();
      found.set(problem, table);
      const list = old.steps.length === 0 ? table.get(key) : undefined;
      if (list) return list;
      const fresh = nearTo(before.instrument, old, lists, problem, weight(at), purpose);
      table.set(key, fresh);
      return fresh;
    },
    off: (at, one) => {
      const table = known[at] as Map<Alternative, Points>;
      const points = table.get(one) ?? weight(at) * farFrom(chosen[at] as Alternative, one, purpose);
      table.set(one, points);
      return points;
    },
    step: (at, earlier, later) =>
      stepsInto(chosen[at - 1] as Alternative, chosen[at] as Alternative, earlier, later, purpose.aim).reduce(
        (sum, { points }) => sum + points,
        0,
      ),
  };
}

/** By how much the beginning of one section is louder than the end of the one before, in hundredths of a phon. */
const stepBetween = (earlier: Alternative, later: Alternative): number =>
  loudestOf(later.judgement.parts) - loudestOf(partsAtEnd(earlier));

/** How going from one section to the next is otherwise than it was: in level, and for practice whether there is a change at all. */
function stepsInto(
  oldEarlier: Alternative,
  old: Alternative,
  earlier: Alternative,
  now: Alternative,
  aim: Aim,
): readonly MeaningDifference[] {
  const level = stepDifference(stepBetween(oldEarlier, old), stepBetween(earlier, now), aim);
  const change = aim === "practice" ? changeDifference(isChange(earlier, now), isChange(oldEarlier, old)) : null;
  return [level, change].filter((each) => each !== null);
}

/**
 * The piece as it is planned on the other organ: pistons and levels that were given to the player on one organ are none of
 * another's, so all that the other one has are reckoned with until its keeper says which may be used.
 */
const pieceFor = ({ instrument, row: { piece } }: PlannedPiece, to: Instrument): Piece =>
  instrument.name === to.name ? piece : { ...piece, pistons: { generals: null, divisionals: null, levels: null } };

/** The plan of the sections that the organ has means for, their places, and what stood against the others. */
function planOf(
  before: PlannedPiece,
  pinned: readonly boolean[],
  to: Instrument,
  count: number,
  purpose: Purpose,
): { readonly row: ChosenRow | null; readonly kept: readonly number[]; readonly unshared: readonly number[] } {
  let sections = openedFor(before, to);
  let kept = sections.map((_, at) => at);
  const unshared: number[] = [];
  for (;;) {
    if (kept.length === 0) return { row: null, kept, unshared };
    const piece = { ...pieceFor(before, to), sections: remaining(sections, kept) };
    const row = chooseRow(to, piece, { count, leaning: leaningTo(before, pinned, kept, purpose) });
    if (!("troubles" in row)) return { row, kept, unshared };
    const lost = new Set(row.troubles.flatMap(({ section }) => (section === null ? [] : [kept[section] as number])));
    if (lost.size === 0) return { row: null, kept: [], unshared };
    // What cannot share another section's registration here may still have one of its own.
    const copies = copiesOf({ ...before.row.piece, sections });
    const sharing = [...lost].filter((at) => copies[at] !== null || copies.includes(at));
    if (sharing.length > 0) {
      unshared.push(...sharing);
      const isFreed = (at: number): boolean => sharing.includes(at);
      sections = sections.map((section, at) => ({
        ...section,
        links: section.links.filter((link) => link.kind !== "same-as" || !(isFreed(at) || isFreed(link.to))),
      }));
    } else kept = kept.filter((at) => !lost.has(at));
  }
}

/**
 * Carries a planned piece to another organ: for every section the registration there that is worth most by the same rules,
 * less what it means otherwise than the one that was (pitches, families, compounds, balance, steps in level), and less the
 * work of changing on that console. What can be set as it was is kept as it was, whatever else would earn more.
 *
 * To be practised, what it means is where the hands play, on which pitch they stand, and where something is changed.
 *
 * @param before the plan on the organ it comes from.
 * @param pinned by section, whether the player pinned it there: then its meaning counts most.
 * @param count how many of the best proposals of each section are looked at.
 */
export function carry(
  before: PlannedPiece,
  pinned: readonly boolean[],
  to: Instrument,
  count: number,
  aim: Aim = "playing",
): CarriedPiece {
  const keyboards = aim === "practice" ? practiceKeyboards(before, to) : new Map<string, string>();
  const { row, kept, unshared } = planOf(before, pinned, to, count, { aim, keyboards });
  return told({ before, kept, unshared }, row, to, { aim, keyboards });
}

/** The same with another registration for one section, and for those that share its own; the changes are worked out anew. */
export function withOther(carried: CarriedPiece, section: number, other: Alternative): CarriedPiece {
  const { plan, made, to } = carried;
  const here = made.kept.indexOf(section);
  const choice = plan?.row.candidates[here]?.list.indexOf(other) ?? -1;
  if (!plan || choice < 0) return carried;
  return told(made, rowWith(plan.row, here, choice), to, carried);
}

/** A row in which one section, and those that share its registration, have another choice. */
function rowWith(row: ChosenRow, here: number, choice: number): ChosenRow {
  const { copies } = row.problem;
  const leader = copies[here] ?? here;
  const isMember = (at: number): boolean => (copies[at] ?? at) === leader;
  const choices = row.row.choices.map((each, at) => (isMember(at) ? choice : each));
  const chosen = row.chosen.map((each, at) =>
    isMember(at) ? (row.candidates[at]?.list[choice] as Alternative) : each,
  );
  return { ...row, row: { ...row.row, choices }, chosen };
}

function told(made: CarriedPiece["made"], row: ChosenRow | null, to: Instrument, purpose: Purpose): CarriedPiece {
  const { before, kept, unshared } = made;
  const { aim, keyboards } = purpose;
  const plan = row && workOut(row);
  const from = before.instrument;
  const sections = before.sections.map((old, at): CarriedSection => {
    const here = kept.indexOf(at);
    const after = plan?.sections[here] ?? null;
    if (!plan || !after) {
      const missing = missingMeans(prepare(to, old.music.section)).map(({ text }) => text);
      return { before: old, after: null, asItWas: false, missing, stops: [], differences: [], between: [], others: [] };
    }
    return {
      before: old,
      after,
      asItWas: after.chosen.origin === "pinned",
      missing: [],
      stops: changedStops(old, after),
      differences: differencesOf(old.chosen, after.chosen, to, purpose),
      between: [...stepInto(before, plan, kept, here, aim), ...(unshared.includes(at) ? [UNSHARED] : [])],
      others: othersFor(plan, old, here, to, purpose),
    };
  });
  return { from, to, piece: before.row.piece, sections, plan, aim, keyboards, made };
}

/** What a section means otherwise by itself; of one that grows, at its beginning and at its end, each for half. */
function differencesOf(
  old: Alternative,
  now: Alternative,
  to: Instrument,
  { aim, keyboards }: Purpose,
): readonly MeaningDifference[] {
  const shakes = to.tremulants.length > 0;
  const own = [
    ...(aim === "practice" ? otherKeyboards(keyboards, old, now) : []),
    ...meaningDifferences(old.judgement.parts, now.judgement.parts, shakes, aim),
  ];
  if (old.steps.length + now.steps.length === 0) return own;
  const half = (where: string, each: MeaningDifference): MeaningDifference => ({
    ...each,
    text: `${where} ${each.text}`,
    points: Math.round(each.points / 2),
  });
  return [
    ...own.map((each) => half("at its beginning", each)),
    ...meaningDifferences(partsAtEnd(old), partsAtEnd(now), shakes, aim).map((each) => half("at its end", each)),
  ];
}

/** How a section stands otherwise to the one before it that is carried too. */
function stepInto(
  before: PlannedPiece,
  plan: PlannedPiece,
  kept: readonly number[],
  here: number,
  aim: Aim,
): readonly MeaningDifference[] {
  const [oldEarlier, old] = [before.sections[kept[here - 1] ?? -1]?.chosen, before.sections[kept[here] ?? -1]?.chosen];
  const [earlier, now] = [plan.sections[here - 1]?.chosen, plan.sections[here]?.chosen];
  return oldEarlier && old && earlier && now ? stepsInto(oldEarlier, old, earlier, now, aim) : [];
}

/** As many other registrations as are shown, none further behind than so many points. Our own setting. */
const OTHERS = 3;
const WINDOW: Points = 4000;
/** Work of changing by which another registration is said to be harder, in points. Our own setting. */
const HARDER: Points = 100;

/** What choices of a row cost beside one another: the changes into a section and out of it, and links that are not kept. */
function besideCost(
  { problem }: ChosenRow,
  choices: readonly number[],
): { readonly work: number; readonly broken: number } {
  const changes = choices.slice(1).map((choice, at) => {
    const { hand, press } = problem.change(at + 1, choices[at] as number, choice);
    return Math.min(hand, press ?? hand);
  });
  const links = problem.links.map((link) => link.cost(choices[link.earlier] as number, choices[link.later] as number));
  return {
    work: changes.reduce((sum, each) => sum + each, 0),
    broken: links.filter((each) => each >= TIERS.link).length,
  };
}

/** The next best registrations of a section while the others keep theirs; unlike ones before near twins. */
function othersFor(
  plan: PlannedPiece,
  old: PlannedSection,
  here: number,
  to: Instrument,
  purpose: Purpose,
): readonly CarriedOther[] {
  const { row } = plan;
  const list = row.candidates[here]?.list ?? [];
  const now = besideCost(row, row.row.choices);
  const ownOf = (choices: readonly number[]): number =>
    choices.reduce((sum, choice, at) => sum + row.problem.own(at, choice), 0);
  const own = ownOf(row.row.choices);
  const ranked = list
    .map((alternative, choice) => {
      const { choices } = rowWith(row, here, choice).row;
      const beside = besideCost(row, choices);
      const behind = ownOf(choices) - own;
      return { alternative, choice, behind, beside, all: behind + beside.work + beside.broken * TIERS.link };
    })
    .filter(({ choice, behind }) => choice !== row.row.choices[here] && behind <= WINDOW)
    .toSorted((a, b) => a.all - b.all);
  const lead = ({ sound }: Alternative): string =>
    JSON.stringify([sound.colour, sound.families, sound.pitches, sound.keyboard]);
  const seen = new Set([lead(row.chosen[here] as Alternative)]);
  const unlike = ranked.filter(({ alternative }) => !seen.has(lead(alternative)) && seen.add(lead(alternative)));
  const shown = [...unlike, ...ranked.filter((each) => !unlike.includes(each))].slice(0, OTHERS);
  return shown
    .toSorted((a, b) => a.all - b.all)
    .map(({ alternative, behind, beside }) => {
      const after = { ...(plan.sections[here] as PlannedSection), chosen: alternative };
      return {
        alternative,
        behind,
        stops: changedStops(old, after),
        differences: differencesOf(old.chosen, alternative, to, purpose),
        remarks: [
          ...(beside.broken > now.broken ? ["it stands otherwise to another section than the piece asks"] : []),
          ...(beside.work >= now.work + TIERS.absent
            ? ["a change around it cannot be made in its time"]
            : beside.work >= now.work + HARDER
              ? ["the changes around it are harder"]
              : []),
        ],
      };
    });
}
