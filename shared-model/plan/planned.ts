import type { Reason } from "../judging/reason.ts";
import { stepReasons } from "../judging/steps.ts";
import { LIMBS, type Limb, type PieceSection } from "../music/piece.ts";
import type { Points } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { adviceFor } from "./advice.ts";
import type { Alternative, Candidates } from "./candidates.ts";
import { pistonsOn } from "./change-costs.ts";
import { type Difference, differenceOf, type Move, type Shift } from "./changes.ts";
import type { Jamb } from "./console-layout.ts";
import type { Handling, Task } from "./crew.ts";
import { type Feasibility, VERDICTS, type Verdict, verdictOf } from "./feasibility.ts";
import { type GivenUp, givenUpIn } from "./given-up.ts";
import { pressing } from "./hands.ts";
import { linkHolds } from "./links.ts";
import { type MemoryChange, numbered, storeBest } from "./memory.ts";
import { MUSIC_VALUES } from "./motion-values.ts";
import { differenceInto, type Station, stationsOf } from "./path.ts";
import type { ChosenRow, PlacedLink } from "./plan.ts";
import type { TimeLeft } from "./time-left.ts";
import { TIERS } from "./weights.ts";

/** How a change is made. */
export type Means =
  | { readonly by: "nothing" }
  | { readonly by: "hands" }
  /** `near`: it holds another console than this one, and hands move what differs once it is pressed. */
  | {
      readonly by: "general";
      readonly level: number;
      readonly number: number;
      readonly newLevel: boolean;
      readonly near: boolean;
    }
  | {
      readonly by: "divisionals";
      readonly pistons: readonly { readonly division: string; readonly number: number }[];
    };

/** A change on the way through the piece. */
export interface PlannedChange {
  /** The section that it leads into (or the step inside it), from 0. */
  readonly section: number;
  readonly step: number;
  readonly time: TimeLeft;
  readonly means: Means;
  /**
   * What has to be moved before it sounds; with a piston, what the piston moves (and the boxes, which it does not), but what
   * hands move after it where it holds only what is near.
   */
  readonly moves: readonly Move[];
  /** To be cancelled when there is time: silent from here on. */
  readonly later: readonly Move[];
  /** Silent from here on and left drawn, since they are wanted again. */
  readonly left: readonly Move[];
  readonly shifts: readonly Shift[];
  readonly verdict: Verdict;
  readonly handling: Handling;
  /** How it goes for the player alone. */
  readonly alone: Handling;
  /** Where the assistant stands whom it takes; `null` where it takes none. */
  readonly assistant: Jamb | null;
  /** What the conventions of rows say against it. */
  readonly reasons: readonly Reason[];
  /** Other ways, where it needs an assistant who is not there or cannot be made as written. */
  readonly advice: readonly string[];
}

/** A section with what was chosen for it. */
export interface PlannedSection {
  readonly music: PieceSection;
  readonly candidates: Candidates;
  readonly chosen: Alternative;
  /** Its links, and whether they are kept. */
  readonly links: readonly { readonly link: PlacedLink; readonly holds: boolean }[];
  /** `null` where the best of the list was taken, or a pin. */
  readonly givenUp: GivenUp | null;
}

/** What to set on one piston. */
export interface StoredPiston {
  /** `null` for a general piston. */
  readonly division: string | null;
  readonly level: number;
  readonly number: number;
  /** The console it brings: all of it, or the division's stops. */
  readonly station: number;
  /** The changes that use it, by their place in `changes`. */
  readonly uses: readonly number[];
}

/** A piece planned on an organ. */
export interface PlannedPiece {
  readonly row: ChosenRow;
  readonly instrument: Instrument;
  readonly sections: readonly PlannedSection[];
  readonly stations: readonly Station[];
  /** One for each station but the first, in playing order. */
  readonly changes: readonly PlannedChange[];
  readonly pistons: readonly StoredPiston[];
  /** Whether the pistons are proven to save most. */
  readonly memoryExact: boolean;
  /** What is taken to be so, since nothing was said. */
  readonly assumed: readonly string[];
}

interface Leg {
  readonly at: number;
  readonly station: Station;
  readonly difference: Difference;
  readonly time: TimeLeft;
}

/** What a piston stores: everything but the boxes. */
function contentOf({ stand: { state } }: Station): string {
  const list = (set: ReadonlySet<string>): string => [...set].sort().join(",");
  return [state.drawn, state.couplers, state.tremulants, state.unisonOff].map(list).join("|");
}

const divisionContent = (instrument: Instrument, station: Station, name: string): string =>
  (instrument.divisions.find((division) => division.name === name)?.stops ?? [])
    .filter((stop) => station.stand.state.drawn.has(stop.id))
    .map((stop) => stop.id)
    .join(",");

/** What the verdict costs, and the work in hundredths of a second: what fails outweighs all work, haste and help some. */
const costOf = (row: ChosenRow, { verdict, handling }: Feasibility): number => {
  const work = handling.tasks.reduce((sum, task) => sum + task.seconds, 0);
  return row.costs.ofVerdict(verdict) + Math.round(work * 100);
};

const moved = ({ needed, later }: Difference): boolean => needed.length + later.length > 0;

/** The difference as it is left when some divisions are set by pistons of their own. */
const without = (difference: Difference, divisions: ReadonlySet<string>): Difference => ({
  ...difference,
  needed: difference.needed.filter((move) => move.what !== "stop" || !divisions.has(move.division)),
  later: difference.later.filter((move) => move.what !== "stop" || !divisions.has(move.division)),
});

/** Time that one further piston takes, in hundredths of a second. */
const ONE_MORE_PRESS = 66;
/** Going to another level: two presses more. */
const SWITCH_PRESSES = 2;

/** What going to another level costs right before a change; where there is no time for it, as much as a change that fails. */
function switchCost(row: ChosenRow, time: TimeLeft): number {
  const { need, available } = pressing(time, row.layout, row.crew);
  const fits = available >= need * (1 + SWITCH_PRESSES) * MUSIC_VALUES.brisk.value;
  return SWITCH_PRESSES * ONE_MORE_PRESS + (fits ? 0 : TIERS.absent);
}

/** Less time, for what comes after a piston: at the change itself, since the piston would undo what was made ready. */
function timeAfter(time: TimeLeft, seconds: number): TimeLeft {
  const less = (each: number): number => Math.max(0, each - seconds);
  const { left, right, feet } = time.limbs;
  return {
    ...time,
    gap: less(time.gap),
    limbs: { left: less(left), right: less(right), feet: less(feet) },
    rests: [],
  };
}

const EVERY_LIMB: ReadonlySet<Limb> = new Set(LIMBS);

/** What hands still have to move on a console that a general has set to something near, and how that goes with the press before it. */
function afterNear(
  row: ChosenRow,
  { at, station, time }: Leg,
  before: Station,
  stored: Station,
  place: number,
): { readonly difference: Difference; readonly found: Feasibility } {
  const { instrument, layout, crew, costs } = row;
  const state = { ...stored.stand.state, boxes: before.stand.state.boxes };
  const plain = differenceOf(instrument, layout, { ...before.stand, state }, station.stand);
  const difference = { ...plain, needed: plain.needed.map((move) => ({ ...move, heldBy: EVERY_LIMB })) };
  const press = pressing(time, layout, crew);
  const rest = costs.byHand(difference, timeAfter(time, press.need), place + at);
  const whole = (handling: Handling): Handling => ({
    ...(press.slack < handling.slack ? press : handling),
    tasks: [...press.tasks, ...handling.tasks],
  });
  const pressed = verdictOf(press.slack, press.slack);
  const verdict = VERDICTS.indexOf(pressed) > VERDICTS.indexOf(rest.verdict) ? pressed : rest.verdict;
  return { difference, found: { ...rest, handling: whole(rest.handling), alone: whole(rest.alone), verdict } };
}

/** The first station of each content. */
const byContent = (legs: readonly Leg[]): ReadonlyMap<string, Station> =>
  new Map(legs.toReversed().map(({ station }) => [contentOf(station), station]));

function memoryChange(row: ChosenRow, leg: Leg, before: Station, stations: ReadonlyMap<string, Station>): MemoryChange {
  const { at, station, difference, time } = leg;
  const press = costOf(row, row.costs.byPress(difference, time, 10_000 + at));
  const known = new Map<string, number>();
  const divisions = new Map<string, string>();
  for (const move of difference.needed) {
    if (move.what === "stop") divisions.set(move.division, divisionContent(row.instrument, station, move.division));
  }
  return {
    content: contentOf(station),
    press: moved(difference) ? press : 0,
    divisions,
    levelSwitch: switchCost(row, time),
    near: (content) => {
      const stored = stations.get(content);
      if (!stored || !moved(difference)) return Number.POSITIVE_INFINITY;
      const near = afterNear(row, leg, before, stored, 40_000);
      return costOf(row, near.found);
    },
    byHand: (pressed) => {
      const key = [...pressed].sort().join(",");
      let cost = known.get(key);
      if (cost === undefined) {
        const left = without(difference, pressed);
        cost = moved(difference)
          ? costOf(row, row.costs.byHand(left, time, 10_000 + at)) + pressed.size * ONE_MORE_PRESS
          : 0;
        known.set(key, cost);
      }
      return cost;
    },
  };
}

interface Stored {
  readonly means: readonly Means[];
  readonly pistons: readonly StoredPiston[];
  readonly exact: boolean;
}

/** Chooses what goes on which piston, and gives the pistons their numbers. */
function stored(row: ChosenRow, first: Station, legs: readonly Leg[]): Stored {
  const { generals, levels, divisionals } = pistonsOn(row.instrument, row.piece);
  const contents = byContent(legs);
  const changes = legs.map((leg, at) =>
    memoryChange(row, leg, at === 0 ? first : (legs[at - 1] as Leg).station, contents),
  );
  const choice = storeBest(changes, {
    generals: generals.length,
    levels: levels.length,
    divisionals: new Map([...divisionals].map(([name, numbers]) => [name, numbers.length])),
  });
  const pistons: StoredPiston[] = [];
  const means = changes.map(
    (_, at): Means => (moved((legs[at] as Leg).difference) ? { by: "hands" } : { by: "nothing" }),
  );
  const stations = [first, ...legs.map((leg) => leg.station)];
  const note = (division: string | null, level: number, number: number, leg: number, holds?: Station): void => {
    const there = pistons.find((each) => each.division === division && each.level === level && each.number === number);
    if (there) (there.uses as number[]).push(leg);
    else pistons.push({ division, level, number, station: holds ? stations.indexOf(holds) : leg + 1, uses: [leg] });
  };
  let before: number | null = null;
  for (const [index, level] of levels.entries()) {
    const used = changes.flatMap((each, at) =>
      choice.levelOf[at] === index ? [{ at, content: choice.nearOf[at] ?? each.content }] : [],
    );
    const numbers = numbered(
      used.map((each) => each.content),
      generals,
    );
    for (const { at, content } of used) {
      const number = numbers.get(content) as number;
      means[at] = {
        by: "general",
        level,
        number,
        newLevel: before !== null && before !== level,
        near: choice.nearOf[at] !== null,
      };
      before = level;
      note(null, level, number, at, contents.get(content));
    }
  }
  for (const [division, numbers] of divisionals) {
    const used = changes.flatMap((each, at) =>
      choice.divisionsOf[at]?.has(division) ? [{ at, content: each.divisions.get(division) ?? "" }] : [],
    );
    const given = numbered(
      used.map((each) => each.content),
      numbers,
    );
    for (const { at, content } of used) {
      const number = given.get(content) as number;
      const there = means[at];
      const others = there?.by === "divisionals" ? there.pistons : [];
      means[at] = { by: "divisionals", pistons: [...others, { division, number }] };
      note(division, levels[0] ?? 1, number, at);
    }
  }
  return { means, pistons, exact: choice.exact };
}

/** Whether a stop that falls silent is wanted again where its division next sounds, with nothing but hands on the way. */
function isWantedAgain(move: Move, from: number, legs: readonly Leg[], means: readonly Means[]): boolean {
  if (move.what !== "stop" || move.act !== "cancel") return false;
  for (let at = from + 1; at < legs.length; at++) {
    const { station } = legs[at] as Leg;
    if (means[at]?.by === "general") return false;
    if (station.stand.soundedBy.has(move.division)) return station.stand.state.drawn.has(move.id);
  }
  return false;
}

const inTime = (task: Task): Task => ({ ...task, ahead: null });

function changesOf(
  row: ChosenRow,
  first: Station,
  legs: readonly Leg[],
  { means, pistons }: Stored,
): readonly PlannedChange[] {
  let standing = new Set<string>();
  const stations = [first, ...legs.map((leg) => leg.station)];
  return legs.map((leg, at): PlannedChange => {
    const { station, difference, time } = leg;
    const how = means[at] as Means;
    const pressed = how.by === "general";
    if (pressed) standing = new Set();
    if (how.by === "general" && how.near) {
      const holder = pistons.find(
        (each) => each.division === null && each.level === how.level && each.number === how.number,
      );
      const held = stations[holder?.station ?? 0] as Station;
      const near = afterNear(row, leg, stations[at] as Station, held, 50_000);
      return {
        section: station.section,
        step: station.step,
        time,
        means: how,
        moves: near.difference.needed,
        later: near.difference.later,
        left: [],
        shifts: difference.shifts,
        ...near.found,
        reasons: station.step === 0 ? rowReasons(row, station.section) : [],
        advice: adviceFor(row, station, near.difference, near.found, time),
      };
    }
    const divisions = new Set(how.by === "divisionals" ? how.pistons.map((each) => each.division) : []);
    const needed = difference.needed.filter((move) => !(move.act === "draw" && standing.has(move.id)));
    for (const move of difference.needed) standing.delete(move.id);
    const left = pressed ? [] : difference.later.filter((move) => isWantedAgain(move, at, legs, means));
    for (const move of left) standing.add(move.id);
    const later = pressed ? [] : difference.later.filter((move) => !left.includes(move));
    const hand = without({ ...difference, needed }, divisions);
    const place = 20_000 + at;
    const found = pressed ? row.costs.byPress(difference, time, place) : row.costs.byHand(hand, time, place);
    // What joins in the midst of a growing sound is moved then, not before.
    const growing = station.step > 0;
    const handling = growing ? { ...found.handling, tasks: found.handling.tasks.map(inTime) } : found.handling;
    const by: Means = how.by === "hands" && needed.length + later.length === 0 ? { by: "nothing" } : how;
    return {
      section: station.section,
      step: station.step,
      time,
      means: by,
      moves: needed,
      later,
      left,
      shifts: difference.shifts,
      ...found,
      handling,
      reasons: station.step === 0 ? rowReasons(row, station.section) : [],
      advice: adviceFor(row, leg.station, hand, found, time),
    };
  });
}

/** What the conventions of rows say of going into a section. */
function rowReasons({ candidates, chosen, costs }: ChosenRow, at: number): readonly Reason[] {
  const [before, after] = [candidates[at - 1], candidates[at]];
  const [earlier, later] = [chosen[at - 1], chosen[at]];
  if (!before || !after || !earlier || !later) return [];
  const has = costs.conventions(before, earlier);
  return stepReasons(after.problem, earlier.judgement, later.judgement, has);
}

function linksFrom(row: ChosenRow, at: number): PlannedSection["links"] {
  return row.links
    .filter((link) => link.from === at)
    .map((link) => {
      const [mine, other] = [row.chosen[link.from] as Alternative, row.chosen[link.to] as Alternative];
      return { link, holds: linkHolds(link.kind, mine.sound, other.sound).holds };
    });
}

/** Points that a plan gives up in all, against the best of every list. */
export const givenUpPoints = ({ sections }: Pick<PlannedPiece, "sections">): Points =>
  sections.reduce((sum, section) => sum + (section.givenUp?.points ?? 0), 0);

function assumptions(row: ChosenRow, stations: readonly Station[]): readonly string[] {
  const silent = stations.filter((station) => station.step === 0 && station.time?.assumed).length;
  const count = silent === 1 ? "one section" : `${silent} sections`;
  return [
    ...(row.layout.assumed.length > 0
      ? [`The console is taken to be a usual one: ${row.layout.assumed.join("; ")}.`]
      : []),
    ...(silent > 0 ? [`Nothing is said of the time before ${count}: a rest of two beats is taken.`] : []),
  ];
}

/** Works out a chosen row: every change with its means and its verdict, the pistons, and what was given up. */
export function workOut(row: ChosenRow): PlannedPiece {
  const stations = stationsOf(row);
  const legs = stations.slice(1).map((station, at): Leg => {
    const difference = differenceInto(row, stations[at] as Station, station);
    return { at, station, difference, time: station.time as TimeLeft };
  });
  const first = stations[0] as Station;
  const memory = stored(row, first, legs);
  return {
    row,
    instrument: row.instrument,
    sections: row.chosen.map((chosen, at): PlannedSection => {
      return {
        music: row.piece.sections[at] as PieceSection,
        candidates: row.candidates[at] as Candidates,
        chosen,
        links: linksFrom(row, at),
        givenUp: givenUpIn(row, at),
      };
    }),
    stations,
    changes: changesOf(row, first, legs, memory),
    pistons: memory.pistons,
    memoryExact: memory.exact,
    assumed: assumptions(row, stations),
  };
}
