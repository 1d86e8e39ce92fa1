import type { Problem } from "../judging/problem.ts";
import type { Link, Piece, PieceSection, Registration } from "../music/piece.ts";
import { isLadder } from "../propose/ladder.ts";
import type { Points } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import {
  type Alternative,
  CandidateLists,
  type Candidates,
  candidatesOf,
  copiesOf,
  distinct,
  NOTHING_SERVES,
  type NoChoice,
} from "./candidates.ts";
import { ChangeCosts, type ChangeSetting, pistonsOn } from "./change-costs.ts";
import { type ConsoleLayout, layoutOf } from "./console-layout.ts";
import type { Crew } from "./crew.ts";
import { linkHolds } from "./links.ts";
import { PACE_FACTORS } from "./motion-values.ts";
import { bestRow, type Row, type RowLink, type RowProblem } from "./row.ts";
import { type TimeLeft, timeLeft } from "./time-left.ts";
import { type PlanWeights, TIERS, USUAL_WEIGHTS } from "./weights.ts";
import { registrationOf } from "./written.ts";

/** How many of the best proposals of each section a plan chooses from where nobody says otherwise. */
export const USUAL_CHOICE = 8;

export interface PlanOptions {
  /** How many of the best proposals of each section are looked at, default {@link USUAL_CHOICE}. */
  readonly count?: number;
  readonly weights?: Partial<PlanWeights>;
  readonly leaning?: Leaning;
}

/** What counts besides points and work, where a row is to stay near to something that was there before. */
export interface Leaning {
  /** Registrations that are looked at before the proposals of a section. */
  besides(section: number, lists: CandidateLists, problem: Problem): readonly Alternative[];
  /** Points against an alternative of a section, 0 or more. */
  off(section: number, one: Alternative): Points;
  /** Points against going from one alternative to one of the next section `section`, 0 or more. */
  step(section: number, earlier: Alternative, later: Alternative): Points;
}

const NO_LEANING: Leaning = { besides: () => [], off: () => 0, step: () => 0 };

/** A row of registrations chosen for a piece, and all that it was chosen from. */
export interface ChosenRow {
  readonly piece: Piece;
  readonly instrument: Instrument;
  readonly layout: ConsoleLayout;
  readonly crew: Crew;
  readonly weights: PlanWeights;
  /** How many of each section's list were looked at: as asked, fewer where very many links are open at once. */
  readonly count: number;
  readonly candidates: readonly Candidates[];
  /** By section; `null` for the first. */
  readonly times: readonly (TimeLeft | null)[];
  /** What was to be chosen, in numbers alone. */
  readonly problem: RowProblem;
  readonly row: Row;
  readonly chosen: readonly Alternative[];
  readonly costs: ChangeCosts;
  readonly links: readonly PlacedLink[];
}

/** What stands in the way of a plan: in which section, from 0, and what. */
export interface PlanTrouble extends NoChoice {
  readonly section: number | null;
}

/** A link with the section that it stands in. */
export interface PlacedLink extends Link {
  readonly from: number;
}

const crewOf = (piece: Piece): Crew => ({
  assistant: piece.assistant,
  reads: !piece.practised,
  pace: PACE_FACTORS[piece.pace],
});

const linksIn = (piece: Piece): readonly PlacedLink[] =>
  piece.sections.flatMap((section, from) =>
    section.links.filter((link) => link.kind !== "same-as").map((link) => ({ ...link, from })),
  );

/** Whether some pair of the two lists keeps the link. */
const canHold = (link: PlacedLink, lists: readonly Candidates[]): boolean =>
  (lists[link.from]?.list ?? []).some((mine) =>
    (lists[link.to]?.list ?? []).some((other) => linkHolds(link.kind, mine.sound, other.sound).holds),
  );

/** The lists with further alternatives: echoes behind boxes, and others where a link could not be kept without; pins stay alone. */
function withShades(
  piece: Piece,
  lists: CandidateLists,
  candidates: readonly Candidates[],
  copies: readonly (number | null)[],
): readonly Candidates[] {
  const all = [...candidates];
  const widen = (place: number, more: (own: Candidates) => readonly Alternative[]): void => {
    const own = all[place] as Candidates;
    if (own.list.length === 0 || own.list.some((each) => each.origin === "pinned")) return;
    all[place] = { ...own, list: distinct([...own.list, ...more(own)]) };
  };
  for (const link of linksIn(piece)) {
    const placed = { ...link, from: copies[link.from] ?? link.from, to: copies[link.to] ?? link.to };
    const softer = link.kind !== "louder-than";
    const call = all[placed.to] as Candidates;
    if (softer && link.kind !== "contrast-with" && (link.kind === "echo-of" || !canHold(placed, all))) {
      // An echo answers in the colour of its call: what the call may be, further away.
      widen(placed.from, ({ problem, list }) =>
        lists.behindBoxes(problem, problem === call.problem ? call.list : list),
      );
    }
    if (canHold(placed, all) || link.kind === "contrast-with") continue;
    widen(placed.from, ({ problem }) => lists.shaded(problem, softer ? "softer" : "louder"));
    if (!canHold(placed, all)) widen(placed.to, ({ problem }) => lists.shaded(problem, softer ? "louder" : "softer"));
  }
  return all;
}

/** After a section that grows, what stands at its end may simply stay: one more alternative. */
function carriedOn(lists: CandidateLists, candidates: readonly Candidates[]): readonly Candidates[] {
  return candidates.map((own, at) => {
    const grown = candidates[at - 1]?.list.find((each) => each.steps.length > 0);
    if (!grown || own.list.length === 0 || own.list.some((each) => each.origin === "pinned" || each.steps.length > 0))
      return own;
    const registration = { keyboards: null, octaves: {}, state: grown.exit.state };
    const written = lists.written(own.problem, registration, [], "carried-on");
    if ("trouble" in written || written.judgement.forbidden) return own;
    return { ...own, list: distinct([...own.list, written]) };
  });
}

/** A registration judged for other music: played where it is there and in the same octaves, else where that music can be played on it. */
function asCopy(lists: CandidateLists, problem: Problem, one: Alternative): Alternative | null {
  const rows = [one.entry, ...(isLadder(problem) ? one.steps.map(({ stand }) => stand) : [])];
  const ids = new Set(problem.section.parts.map((part) => part.id));
  const fits = rows.every(({ placings }) => placings.every((placing) => ids.has(placing.part)));
  const asThere = rows.map(registrationOf);
  const anywhere = rows.map(({ state }): Registration => ({ keyboards: null, octaves: {}, state }));
  for (const [first, ...steps] of fits ? [asThere, anywhere] : [anywhere]) {
    const written = first && lists.written(problem, first, steps, one.origin);
    if (written && !("trouble" in written)) return written;
  }
  return null;
}

/** Lists of sections that copy an earlier one: the same registrations, judged for their own music, in the same order. */
function withCopies(
  lists: CandidateLists,
  candidates: readonly Candidates[],
  copies: readonly (number | null)[],
): { readonly candidates: readonly Candidates[]; readonly troubles: readonly PlanTrouble[] } {
  const all = [...candidates];
  const troubles: PlanTrouble[] = [];
  for (const leader of new Set(copies.filter((each) => each !== null))) {
    const members = copies.flatMap((each, at) => (each === leader ? [at] : []));
    // A pin anywhere among them holds for all.
    const pinned = [leader, ...members].find((at) => all[at]?.list[0]?.origin === "pinned");
    const source = (all[pinned ?? leader] as Candidates).list;
    const rows = source.map((one) =>
      [leader, ...members].map((at): Alternative | null => {
        const { problem } = all[at] as Candidates;
        if (at === (pinned ?? leader)) return one;
        if (problem === (all[pinned ?? leader] as Candidates).problem) return one;
        const written = asCopy(lists, problem, one);
        return written && { ...written, place: one.place };
      }),
    );
    const playable = rows.filter((row) => row.every((each) => each !== null));
    if (playable.length === 0 && source.length > 0) {
      troubles.push({
        section: members[0] ?? leader,
        text: "It cannot be played on the registration that it is to share.",
        impossible: false,
      });
    }
    for (const [index, at] of [leader, ...members].entries()) {
      const own = all[at] as Candidates;
      all[at] = {
        ...own,
        list: playable.map((row) => row[index] as Alternative),
        trouble: playable.length > 0 ? null : own.trouble,
      };
    }
  }
  return { candidates: all, troubles };
}

function rowProblem(
  piece: Piece,
  candidates: readonly Candidates[],
  copies: readonly (number | null)[],
  times: readonly (TimeLeft | null)[],
  costs: ChangeCosts,
  setting: ChangeSetting,
  leaning: Leaning,
): RowProblem {
  const { instrument, weights } = setting;
  const list = (at: number): readonly Alternative[] => (candidates[at] as Candidates).list;
  const most = candidates.map(({ list: all }) => Math.max(...all.map((each) => each.score)));
  const kept = piece.sections.map(
    (section, at) => !section.pinned && list(at).some((each) => isAsWritten(section, each)),
  );
  const pistons = pistonsOn(instrument, piece);
  const room = pistons.generals.length * pistons.levels.length;
  const changes = new Map<string, ReturnType<RowProblem["change"]>>();
  return {
    counts: candidates.map((each) => each.list.length),
    own: (at, choice) => {
      const one = list(at)[choice] as Alternative;
      const disturbed = kept[at] && !isAsWritten(piece.sections[at] as PieceSection, one) ? weights.disturbed : 0;
      return (most[at] as Points) - one.score + disturbed + leaning.off(at, one);
    },
    change: (at, before, choice) => {
      const key = `${at} ${before} ${choice}`;
      const known = changes.get(key);
      if (known) return known;
      const [earlier, later] = [list(at - 1)[before] as Alternative, list(at)[choice] as Alternative];
      const difference = costs.difference(earlier, later);
      const cost = costs.cost(difference, times[at] as TimeLeft, at, room > 0);
      const conventions = costs.ofRow(candidates[at - 1] as Candidates, earlier, candidates[at] as Candidates, later);
      const row = conventions + leaning.step(at, earlier, later);
      const whole = { hand: cost.hand + row, press: cost.press === null ? null : cost.press + row };
      changes.set(key, whole);
      return whole;
    },
    links: linksIn(piece).map((link): RowLink => {
      const [earlier, later] = [Math.min(link.from, link.to), Math.max(link.from, link.to)];
      return {
        earlier,
        later,
        cost: (one, other) => {
          const [mine, theirs] = link.from === later ? [other, one] : [one, other];
          const [from, to] = [list(link.from)[mine] as Alternative, list(link.to)[theirs] as Alternative];
          const { holds, cost } = linkHolds(link.kind, from.sound, to.sound);
          return cost + (holds ? 0 : TIERS.link);
        },
      };
    }),
    presses: room >= piece.sections.length ? Number.POSITIVE_INFINITY : room,
    copies,
  };
}

/** Whether an alternative is what the piece has for the section already. */
const isAsWritten = ({ registration }: PieceSection, { entry }: Alternative): boolean =>
  registration !== null &&
  sameSet(registration.state.drawn, entry.state.drawn) &&
  sameSet(registration.state.couplers, entry.state.couplers) &&
  sameSet(registration.state.tremulants, entry.state.tremulants) &&
  entry.placings.every(
    (each) =>
      (registration.keyboards?.[each.part] ?? each.keyboard) === each.keyboard &&
      (registration.octaves[each.part] ?? 0) === each.octave,
  );

const sameSet = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean =>
  one.size === other.size && [...one].every((each) => other.has(each));

/**
 * The row of registrations that is worth most: over the best proposals of each section, quality less the cost of changes,
 * with every pin kept and every link that can be. Exact over these lists: no other row of them costs less. Troubles where a
 * section has nothing to choose from.
 */
export function chooseRow(
  instrument: Instrument,
  piece: Piece,
  options: PlanOptions = {},
): ChosenRow | { readonly troubles: readonly PlanTrouble[] } {
  if (piece.sections.length === 0)
    return {
      troubles: [{ section: null, text: "The piece has no sections yet. Add one under sections:.", impossible: false }],
    };
  const weights = { ...USUAL_WEIGHTS, ...options.weights };
  const leaning = options.leaning ?? NO_LEANING;
  const layout = layoutOf(instrument);
  const crew = crewOf(piece);
  const setting: ChangeSetting = { instrument, layout, crew, weights };
  const count = Math.max(1, options.count ?? USUAL_CHOICE);
  const lists = new CandidateLists(instrument, count);
  const copies = copiesOf(piece);
  const alone = carriedOn(
    lists,
    piece.sections.map((section, at) => candidatesOf(lists, section, (problem) => leaning.besides(at, lists, problem))),
  );
  const copied = withCopies(lists, withShades(piece, lists, alone, copies), copies);
  const empty = copied.candidates.flatMap((each, section) =>
    each.list.length === 0 && !copied.troubles.some((trouble) => trouble.section === section)
      ? [{ section, ...(each.trouble ?? NOTHING_SERVES) }]
      : [],
  );
  if (copied.troubles.length + empty.length > 0) return { troubles: [...copied.troubles, ...empty] };
  const times = piece.sections.map((section, at) =>
    at === 0 ? null : timeLeft(piece.sections[at - 1] as PieceSection, section),
  );
  const costs = new ChangeCosts(setting);
  for (let most = Math.max(...copied.candidates.map((each) => each.list.length)); ; most = Math.ceil(most / 2)) {
    const candidates = copied.candidates.map((each) => ({ ...each, list: each.list.slice(0, most) }));
    const problem = rowProblem(piece, candidates, copies, times, costs, setting, leaning);
    const row = bestRow(problem);
    if (!row) continue;
    const chosen = candidates.map((each, at) => each.list[row.choices[at] as number] as Alternative);
    const looked = Math.min(count, most);
    const links = linksIn(piece);
    return {
      piece,
      instrument,
      layout,
      crew,
      weights,
      count: looked,
      candidates,
      times,
      problem,
      row,
      chosen,
      costs,
      links,
    };
  }
}
