import type { BoxPosition, ConsoleState, Placing } from "../console/state.ts";
import { stopLabel } from "../judging/listening.ts";
import { keyboardsFor, type Problem } from "../judging/problem.ts";

/** One thing that a hand at the console, or a player at the desk, does to a registration. */
export type Change =
  | { readonly what: "draw" | "put-in"; readonly stop: string }
  | { readonly what: "couple" | "uncouple"; readonly coupler: string }
  | { readonly what: "tremulant-on" | "tremulant-off"; readonly tremulant: string }
  | { readonly what: "box"; readonly box: string; readonly position: BoxPosition }
  | { readonly what: "keyboard"; readonly part: string; readonly keyboard: string }
  | { readonly what: "octave"; readonly part: string; readonly octave: Placing["octave"] };

/** How the console stands and where the parts are played. */
export interface Standing {
  readonly state: ConsoleState;
  readonly placings: readonly Placing[];
}

const withOne = <Item>(items: ReadonlySet<Item>, item: Item): ReadonlySet<Item> => new Set([...items, item]);
const withoutOne = <Item>(items: ReadonlySet<Item>, item: Item): ReadonlySet<Item> =>
  new Set([...items].filter((each) => each !== item));

/** The placings with one part on another keyboard; a part that rested begins to play. */
function placedOn(problem: Problem, placings: readonly Placing[], part: string, keyboard: string): readonly Placing[] {
  const moved = placings.map((each) => (each.part === part ? { ...each, keyboard } : each));
  if (moved.some((each) => each.part === part)) return moved;
  const order = problem.section.parts.map((each) => each.id);
  return [...moved, { part, keyboard, octave: 0 as const }].sort(
    (a, b) => order.indexOf(a.part) - order.indexOf(b.part),
  );
}

/** How things stand after a change. */
export function changed(problem: Problem, { state, placings }: Standing, change: Change): Standing {
  switch (change.what) {
    case "draw":
      return { state: { ...state, drawn: withOne(state.drawn, change.stop) }, placings };
    case "put-in":
      return { state: { ...state, drawn: withoutOne(state.drawn, change.stop) }, placings };
    case "couple":
      return { state: { ...state, couplers: withOne(state.couplers, change.coupler) }, placings };
    case "uncouple":
      return { state: { ...state, couplers: withoutOne(state.couplers, change.coupler) }, placings };
    case "tremulant-on":
      return { state: { ...state, tremulants: withOne(state.tremulants, change.tremulant) }, placings };
    case "tremulant-off":
      return { state: { ...state, tremulants: withoutOne(state.tremulants, change.tremulant) }, placings };
    case "box":
      return { state: { ...state, boxes: new Map([...state.boxes, [change.box, change.position]]) }, placings };
    case "keyboard":
      return { state, placings: placedOn(problem, placings, change.part, change.keyboard) };
    case "octave":
      return {
        state,
        placings: placings.map((each) => (each.part === change.part ? { ...each, octave: change.octave } : each)),
      };
  }
}

const POSITIONS: readonly BoxPosition[] = ["open", "half", "closed"];
const OCTAVES: readonly Placing["octave"][] = [-1, 0, 1];

/**
 * Every single change that can be made: each stop (none that is off is drawn), coupler, tremulant and box, each part's
 * keyboard and octave. In the order of print; stops first.
 */
export function changesFrom(problem: Problem, { state, placings }: Standing): readonly Change[] {
  const { instrument, section } = problem;
  const boxes = new Set(instrument.divisions.flatMap(({ box }) => (box === null ? [] : [box])));
  return [
    ...problem.stops.flatMap((stop): readonly Change[] => {
      if (state.drawn.has(stop.id)) return [{ what: "put-in", stop: stop.id }];
      return stop.off ? [] : [{ what: "draw", stop: stop.id }];
    }),
    ...instrument.couplers
      .filter((each) => !each.fixed)
      .map(({ name }): Change => ({ what: state.couplers.has(name) ? "uncouple" : "couple", coupler: name })),
    ...instrument.tremulants.map(
      (name): Change => ({ what: state.tremulants.has(name) ? "tremulant-off" : "tremulant-on", tremulant: name }),
    ),
    ...[...boxes].flatMap((box) =>
      POSITIONS.filter((position) => position !== (state.boxes.get(box) ?? "open")).map(
        (position): Change => ({ what: "box", box, position }),
      ),
    ),
    ...section.parts.flatMap((part, index): readonly Change[] => {
      const placing = placings.find((each) => each.part === part.id);
      const keyboards = keyboardsFor(problem, index).filter((each) => each.name !== placing?.keyboard);
      return [
        ...keyboards.map(({ name }): Change => ({ what: "keyboard", part: part.id, keyboard: name })),
        ...OCTAVES.filter((octave) => placing !== undefined && octave !== placing.octave).map(
          (octave): Change => ({ what: "octave", part: part.id, octave }),
        ),
      ];
    }),
  ];
}

const BOX_WORDS: Readonly<Record<BoxPosition, string>> = {
  open: "Open the box of the",
  half: "Half close the box of the",
  closed: "Close the box of the",
};

/** A change as one says it at the bench: `Draw Oboe 8`, `Play the melody on the Great`. */
export function changeWords({ stops, instrument }: Pick<Problem, "stops" | "instrument">, change: Change): string {
  const stopIn = (id: string): string => {
    const stop = stops.find((each) => each.id === id);
    if (!stop) return id;
    const label = stopLabel(stop);
    // Two divisions may have a stop of one name: then it needs its division.
    const twins = stops.filter((each) => stopLabel(each) === label);
    return twins.length > 1 ? `${label} of the ${stop.division}` : label;
  };
  switch (change.what) {
    case "draw":
      return `Draw ${stopIn(change.stop)}`;
    case "put-in":
      return `Put in ${stopIn(change.stop)}`;
    case "couple":
      return `Couple ${change.coupler}`;
    case "uncouple":
      return `Take off ${change.coupler}`;
    case "tremulant-on":
    case "tremulant-off": {
      const of = change.tremulant === "all" || instrument.tremulants.length === 1 ? "" : ` of the ${change.tremulant}`;
      return `${change.what === "tremulant-on" ? "Put on" : "Take off"} the tremulant${of}`;
    }
    case "box":
      return `${BOX_WORDS[change.position]} ${change.box}`;
    case "keyboard":
      return `Play the ${change.part} on the ${change.keyboard}`;
    case "octave":
      if (change.octave === 0) return `Play the ${change.part} as written`;
      return `Play the ${change.part} an octave ${change.octave < 0 ? "lower" : "higher"}`;
  }
}
