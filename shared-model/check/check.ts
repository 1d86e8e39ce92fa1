import type { ConsoleState, Placing } from "../console/state.ts";
import { type Judgement, judge } from "../judging/judge.ts";
import { keyboardsFor, type Problem } from "../judging/problem.ts";
import type { Reason } from "../judging/reason.ts";
import { agree, idsOf, named } from "../rules/naming.ts";
import { idleWords, nothingIdle } from "../rules/nothing-idle.ts";
import { stopOff } from "../rules/stop-off.ts";
import { asHeard, idleIn } from "./idle.ts";
import { bestKeyboards, type OpenPart } from "./keyboards.ts";

/** A registration drawn by hand: how the console stands, and where the parts are played as far as that is said. */
export interface DrawnRegistration {
  readonly state: ConsoleState;
  /**
   * Part id to the name of the division whose keyboard plays it. `null`: nothing is said, and an optional part is played
   * where that serves. With some said, an optional part that is not named rests, and any other is tried everywhere.
   */
  readonly keyboards: Readonly<Record<string, string>> | null;
  /** By part id; parts not named are played as written. */
  readonly octaves: Readonly<Record<string, Placing["octave"]>>;
}

/** One thing to be said about a drawn registration. */
export interface Finding {
  /** Id of the rule. */
  readonly rule: string;
  readonly severity: "error" | "warning" | "note";
  /** What is wrong, in a sentence for an organist. */
  readonly text: string;
  /** Ids of sources, or `common practice`. */
  readonly source: string;
  /** Ids of the parts concerned; empty for what no part hears. */
  readonly parts: readonly string[];
  /** Ids of the stops concerned. */
  readonly stops: readonly string[];
  /** What to do; `null` when nothing needs to be done. */
  readonly remedy: string | null;
}

/** A drawn registration judged. */
export interface CheckedRegistration {
  /** Errors first, then warnings, then notes; within these the dearest first. */
  readonly findings: readonly Finding[];
  /** Its score is the sum of the points of its reasons. */
  readonly judgement: Judgement;
  /** Where each part is played, as said or as found; parts that rest are left out. */
  readonly placings: readonly Placing[];
  /** Whether the keyboards that were found are surely the best; `true` where they were said. */
  readonly sure: boolean;
}

/** Why a registration cannot be judged at all, in a sentence for an organist. */
export interface Unplayable {
  readonly unplayable: string;
}

const HANDS = { right: "the right hand", left: "the left hand", both: "both hands", feet: "the feet" } as const;

/** What is said of the keyboards, as ways for each part; or why it cannot be played so. */
function openParts(problem: Problem, drawn: DrawnRegistration): readonly OpenPart[] | Unplayable {
  const { instrument, section } = problem;
  const ids = section.parts.map((part) => part.id);
  const strange = [...Object.keys(drawn.keyboards ?? {}), ...Object.keys(drawn.octaves)].find(
    (id) => !ids.includes(id),
  );
  if (strange !== undefined)
    return { unplayable: `The music has no part "${strange}"; its parts are ${ids.join(", ")}.` };
  const open: OpenPart[] = [];
  for (const [index, part] of section.parts.entries()) {
    const octave = drawn.octaves[part.id] ?? 0;
    const said = drawn.keyboards?.[part.id];
    if (said === undefined) {
      if (part.optional && drawn.keyboards) continue;
      const keyboards = keyboardsFor(problem, index);
      if (keyboards.length > 0) open.push({ part: index, keyboards, octave, mayRest: part.optional });
      else if (!part.optional) {
        return { unplayable: `The ${part.id} is for ${HANDS[part.hands]}, and the organ has no manual to play it on.` };
      }
      continue;
    }
    const keyboard = instrument.divisions.find((division) => division.name === said);
    if (!keyboard) {
      const all = instrument.divisions.map((division) => division.name).join(", ");
      return { unplayable: `The organ has no keyboard "${said}"; its divisions are ${all}.` };
    }
    if (keyboard.kind === "floating") {
      return { unplayable: `The ${said} has no keyboard of its own; name the manual that it is coupled to.` };
    }
    if (keyboard.kind === "pedal" && part.hands !== "feet") {
      return {
        unplayable:
          `The ${part.id} is for ${HANDS[part.hands]}, and the ${said} is played by the feet; name a manual for it, ` +
          "or choose a texture in which the feet play it.",
      };
    }
    open.push({ part: index, keyboards: [keyboard], octave, mayRest: false });
  }
  if (open.length === 0) return { unplayable: "No part is given a keyboard, so nothing is played." };
  return open;
}

const ORDER = { error: 0, warning: 1, note: 2 } as const;

/** What the judging says against the state; sentences that several parts share stand once. */
function findingsOf(reasons: readonly Reason[]): readonly Finding[] {
  const found = new Map<string, { finding: Finding; points: number }>();
  for (const { rule, severity, text, source, parts, stops, remedy, points } of reasons) {
    if (severity === "praise") continue;
    const key = `${rule} ${severity} ${text}`;
    const twin = found.get(key);
    if (!twin) {
      found.set(key, { finding: { rule, severity, text, source, parts, stops, remedy }, points });
      continue;
    }
    found.set(key, {
      finding: {
        ...twin.finding,
        parts: [...new Set([...twin.finding.parts, ...parts])],
        stops: [...new Set([...twin.finding.stops, ...stops])],
      },
      points: twin.points + points,
    });
  }
  return [...found.values()]
    .sort((a, b) => ORDER[a.finding.severity] - ORDER[b.finding.severity] || a.points - b.points)
    .map((each) => each.finding);
}

/** What is set for nobody. A stop that is off is an error even so: one that ciphers sounds without a key. */
function idleFindings(problem: Problem, state: ConsoleState, judgement: Judgement): readonly Finding[] {
  const dead = problem.stops.filter((stop) => stop.off && judgement.idle.includes(stop.id)).map(asHeard);
  const findings: Finding[] = [];
  if (dead.length > 0) {
    const [only] = dead;
    const note = dead.length === 1 && only?.stop.note ? ` (${only.stop.note})` : "";
    findings.push({
      rule: stopOff.id,
      severity: stopOff.severity,
      text: `${named(dead)} ${agree(dead, "is", "are")} drawn and marked off${note}.`,
      source: stopOff.source,
      parts: [],
      stops: idsOf(dead),
      remedy: `Leave ${agree(dead, "it", "them")} out.`,
    });
  }
  for (const { text, remedy, stops } of idleWords(idleIn(problem, state, judgement))) {
    const { id: rule, severity, source } = nothingIdle;
    findings.push({ rule, severity, text, source, parts: [], stops: stops ?? [], remedy: remedy ?? null });
  }
  return findings;
}

/**
 * Judges a registration that a person drew, by the rules that proposals are made by. Where keyboards are left open, every
 * way of giving the parts keyboards that sound is tried and the best is taken; the octaves stay as said.
 */
export function checkRegistration(problem: Problem, drawn: DrawnRegistration): CheckedRegistration | Unplayable {
  const open = openParts(problem, drawn);
  if ("unplayable" in open) return open;
  const found = bestKeyboards(problem, drawn.state, open);
  const judgement = found && judge(problem, drawn.state, found.placings);
  if (!judgement) {
    return { unplayable: "Two keyboards that are played are coupled to each other; take one of the two couplers off." };
  }
  const findings = [...findingsOf(judgement.reasons), ...idleFindings(problem, drawn.state, judgement)];
  return {
    findings: findings.sort((a, b) => ORDER[a.severity] - ORDER[b.severity]),
    judgement,
    placings: found.placings,
    sure: found.sure,
  };
}
