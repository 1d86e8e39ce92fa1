import { type Colour, colourOf } from "../acoustics/colour.ts";
import { strengthOf } from "../acoustics/hearing.ts";
import { checkRegistration } from "../check/check.ts";
import type { ConsoleState, Placing } from "../console/state.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import { prepare } from "../judging/prepare.ts";
import type { Problem } from "../judging/problem.ts";
import type { Piece, PieceSection, Registration } from "../music/piece.ts";
import type { Dynamic, Section } from "../music/texture.ts";
import { textureById } from "../music/textures/catalogue.ts";
import { identify } from "../propose/found.ts";
import { isLadder, ladder } from "../propose/ladder.ts";
import { missingMeans } from "../propose/missing.ts";
import { bestStates } from "../propose/propose.ts";
import { familiesOf } from "../rules/balance.ts";
import type { Points } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type Stand, standOf } from "./stand.ts";

/** Where an alternative comes from. */
export type Origin = "proposed" | "pinned" | "kept" | "for-a-link" | "carried-on" | "carried-over";

/** One registration that a section may have, or the whole row of one that grows. */
export interface Alternative {
  readonly origin: Origin;
  /** Its place in the list of proposals, from 1; `null` when it is not from there. */
  readonly place: number | null;
  readonly score: Points;
  /** Judged; of a row that grows, its first step. */
  readonly judgement: Judgement;
  /** How the console stands at its beginning and at its end: the same, unless it grows. */
  readonly entry: Stand;
  readonly exit: Stand;
  /** The later steps of one that grows; empty for all others. */
  readonly steps: readonly { readonly stand: Stand; readonly judgement: Judgement }[];
  /** One text for one way to set and play the console. */
  readonly signature: string;
  readonly sound: Impression;
}

/** What a listener keeps of a registration, to set another against it. */
export interface Impression {
  readonly colour: Colour["id"];
  /** Families in the telling part, a bit each. */
  readonly families: number;
  /** Pitches of its plain stops, a bit each. */
  readonly pitches: number;
  /** Of its loudest part, in hundredths of a decibel. */
  readonly level: number;
  /** The keyboard of the telling part. */
  readonly keyboard: string;
}

/** A section with its alternatives, best first as proposed. */
export interface Candidates {
  readonly problem: Problem;
  readonly list: readonly Alternative[];
  /** Why there is none, or none of those wanted; empty when all is well. */
  readonly trouble: NoChoice | null;
}

/** Why there is nothing to choose from. */
export interface NoChoice {
  readonly text: string;
  /** Whether the organ has no means for it; else it cannot be so as it is written. */
  readonly impossible: boolean;
}

/** What is heard of a judged registration. */
function impressionOf(problem: Problem, judgement: Judgement): Impression {
  const { texture } = problem.section;
  const wanted = texture === null ? null : textureById(texture)?.colourOf;
  const leading =
    judgement.parts.find((part) => part.placing.part === wanted) ??
    judgement.parts.find((part) => part.placed.part.role === "melody") ??
    judgement.parts[0];
  return {
    colour: leading ? colourOf(leading.sound).id : "",
    families: leading ? familiesOf(leading.sound) : 0,
    pitches: leading ? leading.sound.plain : 0,
    level: judgement.parts.reduce((most, part) => Math.max(most, strengthOf(part.sound.blend)), 0),
    keyboard: leading?.placing.keyboard ?? "",
  };
}

function alternative(
  problem: Problem,
  judgement: Judgement,
  state: ConsoleState,
  placings: readonly Placing[],
  origin: Origin,
  place: number | null,
): Alternative {
  const stand = standOf(problem.instrument, problem.section, state, placings);
  const signature = identify(problem, state, placings).signature;
  const sound = impressionOf(problem, judgement);
  return { origin, place, score: judgement.score, judgement, entry: stand, exit: stand, steps: [], signature, sound };
}

/** Makes the lists of all sections; sections whose music is equal share one. */
export class CandidateLists {
  readonly #instrument: Instrument;
  readonly #count: number;
  readonly #problems = new Map<string, Problem>();
  readonly #lists = new Map<Problem, readonly Alternative[]>();

  constructor(instrument: Instrument, count: number) {
    this.#instrument = instrument;
    this.#count = count;
  }

  problem(section: Section): Problem {
    const { name: _, bars: __, ...music } = section;
    const key = JSON.stringify(music);
    let problem = this.#problems.get(key);
    if (!problem) {
      problem = prepare(this.#instrument, section);
      this.#problems.set(key, problem);
    }
    return problem;
  }

  /** The proposals for a section; of one that grows, its single row. */
  proposals(problem: Problem): readonly Alternative[] {
    let list = this.#lists.get(problem);
    if (!list) {
      list = isLadder(problem) ? this.#row(problem) : this.#best(problem, problem, "proposed");
      this.#lists.set(problem, list);
    }
    return list;
  }

  #best(problem: Problem, asked: Problem, origin: Origin): readonly Alternative[] {
    const { found } = bestStates(asked, { count: this.#count });
    return found.flatMap(({ state, placings }, index): readonly Alternative[] => {
      const judgement = judge(problem, state, placings);
      if (!judgement || judgement.forbidden) return [];
      return [alternative(problem, judgement, state, placings, origin, origin === "proposed" ? index + 1 : null)];
    });
  }

  #row(problem: Problem): readonly Alternative[] {
    const rungs = ladder(problem);
    const [first] = rungs;
    const last = rungs.at(-1);
    if (!first || !last) return [];
    const base = alternative(problem, first.judgement, first.state, first.placings, "proposed", 1);
    const stands = rungs.map(({ state, placings, judgement }) => ({
      stand: standOf(problem.instrument, problem.section, state, placings),
      judgement,
    }));
    const score = Math.round(rungs.reduce((sum, each) => sum + each.judgement.score, 0) / rungs.length);
    return [{ ...base, score, exit: (stands.at(-1) as (typeof stands)[number]).stand, steps: stands.slice(1) }];
  }

  /** A registration that stands in the file, judged for its section; or why it cannot be played. */
  written(
    problem: Problem,
    registration: Registration,
    steps: readonly Registration[],
    origin: Origin,
  ): Alternative | { readonly trouble: string } {
    const rows = [registration, ...steps].map((each) => ({ each, checked: checkRegistration(problem, each) }));
    const judged = rows.flatMap(({ each, checked }) => ("unplayable" in checked ? [] : [{ each, checked }]));
    const wrong = rows.find(({ checked }) => "unplayable" in checked);
    if (wrong && "unplayable" in wrong.checked) return { trouble: wrong.checked.unplayable };
    const [first] = judged;
    const last = judged.at(-1);
    if (!first || !last) return { trouble: "Nothing is drawn." };
    const base = alternative(problem, first.checked.judgement, first.each.state, first.checked.placings, origin, null);
    const stands = judged.map(({ each, checked }) => ({
      stand: standOf(problem.instrument, problem.section, each.state, checked.placings),
      judgement: checked.judgement,
    }));
    return { ...base, exit: (stands.at(-1) as (typeof stands)[number]).stand, steps: stands.slice(1) };
  }

  /** The same registrations behind boxes that are half open, and shut: how an echo is made where there is a box. */
  behindBoxes(problem: Problem, list: readonly Alternative[]): readonly Alternative[] {
    return list.flatMap((one) => {
      if (one.steps.length > 0) return [];
      const { state, soundedBy } = one.entry;
      const boxes = problem.instrument.divisions.flatMap(({ box, name }) =>
        box !== null && soundedBy.has(name) ? [box] : [],
      );
      if (boxes.length === 0) return [];
      return (["half", "closed"] as const).flatMap((position): readonly Alternative[] => {
        const shaded = { ...state, boxes: new Map([...state.boxes, ...boxes.map((box) => [box, position] as const)]) };
        const judgement = judge(problem, shaded, one.entry.placings);
        if (!judgement || judgement.forbidden) return [];
        return [alternative(problem, judgement, shaded, one.entry.placings, "for-a-link", null)];
      });
    });
  }

  /** What is proposed for a softer (or louder) dynamic: for a link that nothing in the list can keep. */
  shaded(problem: Problem, towards: "softer" | "louder"): readonly Alternative[] {
    if (isLadder(problem)) return [];
    const dynamics: readonly Dynamic[] = towards === "softer" ? ["p", "pp"] : ["f", "ff"];
    return dynamics.flatMap((dynamic) =>
      this.#best(problem, this.problem({ ...problem.section, dynamic }), "for-a-link"),
    );
  }
}

/** Alternatives without those that set and play the console as an earlier one does. */
export function distinct(list: readonly Alternative[]): readonly Alternative[] {
  const seen = new Set<string>();
  return list.filter((each) => {
    const key = `${each.signature}#${each.steps.length}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The trouble of a section for which the organ has no means. */
export const NOTHING_SERVES: NoChoice = { text: "Nothing on this organ serves for it.", impossible: true };

/** The same with its first reasons. */
function nothingServes(problem: Problem): NoChoice {
  const why = missingMeans(problem).slice(0, 2);
  return { ...NOTHING_SERVES, text: [NOTHING_SERVES.text, ...why.map(({ text }) => text)].join(" ") };
}

/** The list of a section by itself: its pin alone, else `besides`, the proposals and what the file has. */
export function candidatesOf(
  lists: CandidateLists,
  { section, registration, steps, pinned }: PieceSection,
  besides: (problem: Problem) => readonly Alternative[] = () => [],
): Candidates {
  const problem = lists.problem(section);
  const written = registration ? lists.written(problem, registration, steps, pinned ? "pinned" : "kept") : null;
  if (written && pinned) {
    if ("trouble" in written) return { problem, list: [], trouble: { text: written.trouble, impossible: false } };
    return { problem, list: [written], trouble: null };
  }
  const proposals = lists.proposals(problem);
  const kept = written && !("trouble" in written) && !written.judgement.forbidden ? [written] : [];
  // A ladder from the file stands beside the one worked out; a registration that is proposed as well keeps its place.
  const list = distinct([...besides(problem), ...proposals, ...kept]);
  return { problem, list, trouble: list.length === 0 ? nothingServes(problem) : null };
}

/** The sections that copy an earlier one (`same-as`, directly or by way of others): its place, or `null`. */
export function copiesOf(piece: Piece): readonly (number | null)[] {
  const group = piece.sections.map((_, at) => at);
  const find = (at: number): number => (group[at] === at ? at : find(group[at] as number));
  for (const [from, section] of piece.sections.entries()) {
    for (const { kind, to } of section.links) {
      if (kind !== "same-as") continue;
      const [one, other] = [find(from), find(to)];
      group[Math.max(one, other)] = Math.min(one, other);
    }
  }
  return piece.sections.map((_, at) => (find(at) === at ? null : find(at)));
}
