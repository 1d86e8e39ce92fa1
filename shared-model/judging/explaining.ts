import { partName } from "../rules/balance.ts";
import { the } from "../rules/naming.ts";
import type { Heard, PartContext, Words } from "../rules/rule.ts";
import { heardOf, type PartState } from "./listening.ts";
import type { Problem, WeighedPart } from "./problem.ts";
import { type Reason, reasonOf, type Speaker } from "./reason.ts";
import type { Closeness } from "./recipe.ts";
import { recipeReasons } from "./recipe-words.ts";
import { forEachPair, type Weight, yielding } from "./weighing.ts";

const SILENT_PART: Speaker = { id: "foundation-present", source: "common practice", severity: "error" };

const idsIn = (heard: Heard): readonly string[] => heard.stops.map((each) => each.stop.id);

/** Why a part hears nothing, and what to do. */
function silenceWords({ placed, silenced }: PartState, context: PartContext): Words {
  const [who, keyboard] = [partName(context), the(context)];
  if (silenced.length > 0) {
    return {
      text: `The unison of ${keyboard} is off, so the ${who} does not hear what is drawn there.`,
      remedy: `Turn the unison of ${keyboard} on.`,
      stops: silenced.map((stop) => stop.id),
    };
  }
  const text = `Nothing is drawn that the ${who} on ${keyboard} can hear.`;
  return { text, remedy: `${placed.unisonOff ? "Turn its unison on, and draw" : "Draw"} a stop on ${keyboard}.` };
}

/** What the rules say of one part: of where it is played, of its sound, and what to mind. */
function partReasons(
  problem: Problem,
  part: PartState,
  { context, partRules }: WeighedPart,
  { excused }: Closeness,
  heard: Heard,
): readonly Reason[] {
  const reasons: Reason[] = [];
  const [parts, stops] = [[part.placing.part], idsIn(heard)];
  for (const rule of problem.rules.placing) {
    const points = rule.weigh(context);
    const forbids = rule.forbids?.(context) ?? false;
    if (points !== 0 || forbids)
      reasons.push(reasonOf(rule, points, rule.words(context, points), parts, stops, forbids));
  }
  for (const rule of partRules) {
    const silenced = rule.yieldsToPrescription && excused;
    const points = yielding(rule.weigh(part.sound, context), rule.yieldsToPrescription, excused);
    const forbids = !silenced && (rule.forbids?.(part.sound, context) ?? false);
    if (points === 0 && !forbids) continue;
    reasons.push(reasonOf(rule, points, rule.words(part.sound, context, heard, points), parts, stops, forbids));
  }
  if (part.sound.stops === 0) {
    reasons.push(reasonOf(SILENT_PART, 0, silenceWords(part, context), parts, [], true));
  }
  for (const rule of problem.rules.advice) {
    const words = rule.advise(part.sound, context, heard);
    if (words) reasons.push(reasonOf(rule, 0, words, parts, stops));
  }
  return reasons;
}

/** What the rules say of two parts heard together, in this order. */
function pairReasons(
  problem: Problem,
  { weighed, closeness }: Weight,
  parts: readonly PartState[],
  heards: readonly Heard[],
  a: number,
  b: number,
): readonly Reason[] {
  const reasons: Reason[] = [];
  const [first, second] = [weighed[a] as WeighedPart, weighed[b] as WeighedPart];
  const excused = (closeness[a] as Closeness).excused && (closeness[b] as Closeness).excused;
  const [one, other] = [parts[a] as PartState, parts[b] as PartState];
  for (const rule of problem.rules.pair) {
    if (!rule.applies(first.context, second.context)) continue;
    const silenced = rule.yieldsToPrescription && excused;
    const points = yielding(
      rule.weigh(one.sound, other.sound, first.context, second.context),
      rule.yieldsToPrescription,
      excused,
    );
    const forbids = !silenced && (rule.forbids?.(one.sound, other.sound, first.context, second.context) ?? false);
    if (points === 0 && !forbids) continue;
    const heard = { first: heards[a] as Heard, second: heards[b] as Heard };
    const words = rule.words(one.sound, other.sound, first.context, second.context, heard, points);
    const ids = [one.placing.part, other.placing.part];
    reasons.push(reasonOf(rule, points, words, ids, [...idsIn(heard.first), ...idsIn(heard.second)], forbids));
  }
  return reasons;
}

/** The reasons of one reading, in words: their points are its score. */
export function explain(problem: Problem, parts: readonly PartState[], at: number, weight: Weight): readonly Reason[] {
  const reading = problem.readings[at] as Problem["readings"][number];
  const heards = parts.map((part) => heardOf(problem, part));
  const reasons = parts.flatMap((part, index) => {
    const weighed = weight.weighed[index] as WeighedPart;
    const close = weight.closeness[index] as Closeness;
    const heard = heards[index] as Heard;
    return [
      ...recipeReasons(problem, reading, part, weighed, close, idsIn(heard)),
      ...partReasons(problem, part, weighed, close, heard),
    ];
  });
  forEachPair(parts.length, (a, b) => {
    reasons.push(...pairReasons(problem, weight, parts, heards, a, b));
  });
  return reasons;
}
