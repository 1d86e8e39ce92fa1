import type { BoxPosition, ConsoleState } from "../console/state.ts";
import type { JudgedPart, Judgement } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import type { Reason } from "../judging/reason.ts";
import { citation } from "../music/prescriptions/citation.ts";
import type { Hands } from "../music/texture.ts";
import type { Instrument, Stop } from "../stoplist/instrument.ts";
import { labelOf } from "./label.ts";
import { sparesOf } from "./spares.ts";

/** Who plays on which keyboard. */
export interface CardHand {
  /** `Right hand`, `Both hands`, `Feet`; `Bass` for what the feet would play where hands have to. */
  readonly who: string;
  /** The keyboard by its division; `null` when the feet rest. */
  readonly keyboard: string | null;
  /** What is played there, where one hand goes to several keyboards: `echo`; else `null`. */
  readonly what: string | null;
  readonly octave: -1 | 0 | 1;
}

/** One thing to draw. */
export interface CardStop {
  /** As the jamb has it: name, pitch, half. */
  readonly name: string;
  /** Stops of the division that would do just as well and are not drawn, in printed order. */
  readonly or: readonly string[];
}

/** What an error or a warning says, and what to do. */
export interface CardWarning {
  readonly severity: "error" | "warning";
  readonly text: string;
  readonly remedy: string | null;
}

/** All that the console needs for one section, in the order in which it is set up. */
export interface CueCard {
  readonly organ: string;
  readonly section: string | null;
  readonly bars: string | null;
  readonly label: string;
  readonly hands: readonly CardHand[];
  /** Divisions with something drawn, in printed order. */
  readonly divisions: readonly { readonly name: string; readonly stops: readonly CardStop[] }[];
  /** In the instrument's order; fixed ones are left out, for nobody draws them. */
  readonly couplers: readonly string[];
  readonly tremulants: readonly string[];
  readonly unisonOff: readonly string[];
  /** Every box behind which something sounds, open ones too: a box has to be set. */
  readonly boxes: readonly { readonly name: string; readonly position: BoxPosition }[];
  readonly warnings: readonly CardWarning[];
  /** The recipe that it follows, or what speaks most for it; `null` when nothing does, and beside an error. */
  readonly why: string | null;
}

/** What the judging of one registration gives a card. */
export type JudgedRegistration = Pick<Judgement, "parts" | "reasons" | "prescription">;

/** What a finding must have to stand on a card; reasons of a judgement have it. */
export type CardFinding = Pick<Reason, "severity" | "text" | "remedy">;

const WHO: Readonly<Record<Hands, string>> = {
  right: "Right hand",
  left: "Left hand",
  both: "Both hands",
  feet: "Feet",
};

const whoPlays = ({ placed }: JudgedPart): string =>
  placed.part.hands === "feet" && placed.keyboard.kind !== "pedal" ? "Bass" : WHO[placed.part.hands];

const ORDINALS = ["first", "second", "third", "fourth", "fifth"];

/** `echo`, `second chorus`: a part in words. */
function partWords(id: string): string {
  const [, role, number] = /^(.*?)(?:-(\d+))?$/.exec(id) ?? [];
  const noun = role === "plenum" ? "chorus" : (role ?? id).replace("-", " ");
  return number === undefined ? noun : `${ORDINALS[Number(number) - 1] ?? number} ${noun}`;
}

function handsOf(problem: Pick<Problem, "section">, parts: readonly JudgedPart[]): readonly CardHand[] {
  const rows = parts.map((part) => ({
    who: whoPlays(part),
    keyboard: part.placing.keyboard,
    what: partWords(part.placing.part),
    octave: part.placing.octave,
  }));
  const order = [...Object.values(WHO), "Bass"];
  const hands: CardHand[] = [];
  for (const row of rows.toSorted((a, b) => order.indexOf(a.who) - order.indexOf(b.who))) {
    const same = rows.filter((other) => other.who === row.who);
    const alone = same.every((other) => other.keyboard === row.keyboard && other.octave === row.octave);
    if (alone && hands.some((hand) => hand.who === row.who)) continue;
    hands.push({ ...row, what: alone ? null : row.what });
  }
  const restingFeet = problem.section.parts.some(
    (part) => part.hands === "feet" && !parts.some((played) => played.placing.part === part.id),
  );
  return restingFeet && !hands.some((hand) => hand.who === "Feet")
    ? [...hands, { who: "Feet", keyboard: null, what: null, octave: 0 }]
    : hands;
}

/** The stop as its division's jamb names it, alone of that name: its id without the division. */
const jambName = (stop: Stop): string => stop.id.slice(stop.division.length + 1);

/** What to draw of one division, each stop with those that would do as well. */
const stopsOf = (
  stops: readonly Stop[],
  drawn: ReadonlySet<string>,
  spares: ReadonlyMap<string, readonly Stop[]>,
): readonly CardStop[] =>
  stops
    .filter((stop) => drawn.has(stop.id))
    .map((stop) => ({ name: jambName(stop), or: (spares.get(stop.id) ?? []).map(jambName) }));

function boxesOf(instrument: Instrument, state: ConsoleState, parts: readonly JudgedPart[]): CueCard["boxes"] {
  const heard = new Set(parts.flatMap((part) => part.heard));
  const sounding = instrument.divisions.filter((division) => division.stops.some((stop) => heard.has(stop.id)));
  const names = new Set(sounding.map((division) => division.box).filter((box) => box !== null));
  return [...names].map((name) => ({ name, position: state.boxes.get(name) ?? "open" }));
}

/** Rules that say of every registration how near a recipe it is: their sentences only list the stops again. */
const RECIPE_RULES: readonly string[] = ["close-to-prescription", "fewest-stops"];

function whyOf({ reasons, prescription }: JudgedRegistration): string | null {
  const source = prescription?.sources.find((each) => each !== "common practice");
  if (source !== undefined) return `Recipe: ${citation(source)}.`;
  const praise = reasons
    .filter((reason) => reason.points > 0 && !RECIPE_RULES.includes(reason.rule))
    .toSorted((a, b) => b.points - a.points || a.text.length - b.text.length);
  return praise[0]?.text ?? null;
}

/**
 * The cue card of one judged registration.
 *
 * @param findings what a check found; default: the reasons of the judgement. Errors and warnings stand on the card.
 */
export function cueCard(
  problem: Pick<Problem, "instrument" | "section" | "shared">,
  state: ConsoleState,
  judged: JudgedRegistration,
  findings: readonly CardFinding[] = judged.reasons,
): CueCard {
  const { instrument, section } = problem;
  const spares = sparesOf(problem, state.drawn);
  const warnings = new Map<string, CardWarning>();
  for (const severity of ["error", "warning"] as const) {
    for (const { text, remedy, ...found } of findings) {
      if (found.severity === severity && !warnings.has(text)) warnings.set(text, { severity, text, remedy });
    }
  }
  const wrong = [...warnings.values()].some((warning) => warning.severity === "error");
  return {
    organ: instrument.name,
    section: section.name,
    bars: section.bars,
    label: labelOf(problem, judged.parts),
    hands: handsOf(problem, judged.parts),
    divisions: instrument.divisions
      .map(({ name, stops }) => ({ name, stops: stopsOf(stops, state.drawn, spares) }))
      .filter((division) => division.stops.length > 0),
    couplers: instrument.couplers
      .filter((coupler) => !coupler.fixed && state.couplers.has(coupler.name))
      .map((coupler) => coupler.name),
    tremulants: instrument.tremulants.filter((name) => state.tremulants.has(name)),
    unisonOff: instrument.unisonOff.filter((name) => state.unisonOff.has(name)),
    boxes: boxesOf(instrument, state, judged.parts),
    warnings: [...warnings.values()],
    why: wrong ? null : whyOf(judged),
  };
}
