import { addVoice, type PartSound, silence, type Voice } from "../acoustics/part-sound.ts";
import { zonesBetween } from "../acoustics/voice.ts";
import type { BoxPosition, ConsoleState, Placing } from "../console/state.ts";
import { SOURCES } from "../music/prescriptions/sources.ts";
import { pitchName } from "../pitch/reading.ts";
import { partName } from "../rules/balance.ts";
import { type Heard, type HeardStop, listed, type Points, type Words } from "../rules/rule.ts";
import type { Coupler, Division, Stop } from "../stoplist/instrument.ts";
import { heardVoice, type PlacedPart, settlingOrder } from "./placed-part.ts";
import { type Problem, placingDeviations, type WeighedPart } from "./problem.ts";
import { type Closeness, COSTS, closenessOf, type Match, standingIn, wantedText } from "./recipe.ts";

/** One reason for or against a state. Scores are sums of these and of nothing else. */
export interface Reason {
  readonly rule: string;
  readonly points: Points;
  readonly text: string;
  readonly source: string;
  /** Ids of the parts concerned. */
  readonly parts: readonly string[];
  /** Ids of the stops concerned. */
  readonly stops: readonly string[];
  readonly severity: "praise" | "error" | "warning" | "note";
  readonly remedy: string | null;
}

/** What one part hears in a judged state. */
export interface JudgedPart {
  readonly placing: Placing;
  readonly placed: PlacedPart;
  readonly sound: PartSound;
  /** Ids of the stops heard, in printed order. */
  readonly heard: readonly string[];
}

export interface Judgement {
  readonly score: Points;
  /** Whether a rule forbids the state. */
  readonly forbidden: boolean;
  /** The prescription in whose light the state is best, `null` for the conventions alone. */
  readonly prescription: Problem["readings"][number]["prescription"];
  readonly reading: number;
  readonly reasons: readonly Reason[];
  readonly parts: readonly JudgedPart[];
  /** Ids of drawn stops that no part hears. */
  readonly idle: readonly string[];
}

/** `Gedackt 8`, `Nasat 2 2/3`, `Dulzian 8 bass`: a stop as rules and cards name it. */
export function stopLabel(stop: Stop): string {
  const pitch = stop.pitch ? ` ${pitchName(stop.pitch)}` : "";
  return `${stop.name}${pitch}${stop.half ? ` ${stop.half}` : ""}`;
}
/** Couplers of the state that bear on a keyboard, in the instrument's order, fixed ones left out. */
export function couplersBearing(
  couplers: readonly Coupler[],
  keyboard: Division,
  isOn: (coupler: Coupler) => boolean,
): readonly Coupler[] {
  const bearing = new Set<Coupler>();
  const visit = (name: string, carried: boolean): void => {
    for (const coupler of couplers) {
      if (coupler.to !== name || !(coupler.fixed || isOn(coupler)) || bearing.has(coupler)) continue;
      if (!carried) continue;
      bearing.add(coupler);
      visit(coupler.from, coupler.through);
    }
  };
  visit(keyboard.name, true);
  return couplers.filter((each) => bearing.has(each) && !each.fixed);
}

interface PartState {
  readonly placing: Placing;
  readonly placed: PlacedPart;
  readonly sound: PartSound;
  readonly own: readonly Stop[];
  readonly borrowed: readonly Stop[];
  readonly shutBoxes: number;
}

/** What each part hears of a state, in the section's order; `null` when the keyboards are coupled in a ring. */
function listen(problem: Problem, state: ConsoleState, placings: readonly Placing[]): readonly PartState[] | null {
  const { instrument, section } = problem;
  const placed = placings.map((placing) => {
    const index = section.parts.findIndex((part) => part.id === placing.part);
    const keyboard = instrument.divisions.find((division) => division.name === placing.keyboard) as Division;
    const on = couplersBearing(instrument.couplers, keyboard, (coupler) => state.couplers.has(coupler.name));
    return problem.place(index, keyboard, placing.octave, on);
  });
  const order = settlingOrder(placed);
  if (!order) return null;
  const boxOf = (division: Division): BoxPosition =>
    division.box ? (state.boxes.get(division.box) ?? "open") : "open";
  const settled = new Set<string>();
  const counted = new Set<string>();
  const result: PartState[] = [];
  for (const index of order) {
    const one = placed[index] as PlacedPart;
    const sound = silence();
    const own: Stop[] = [];
    const borrowed: Stop[] = [];
    let shutBoxes = 0;
    const divisions = [...new Set(one.reach.map((each) => each.division))];
    for (const division of instrument.divisions) {
      if (!divisions.includes(division)) continue;
      const box = boxOf(division);
      let heardHere = false;
      for (const stop of division.stops) {
        if (!state.drawn.has(stop.id)) continue;
        const voice: Voice | null = heardVoice(one, stop, problem.shared, box);
        if (!voice) continue;
        addVoice(sound, voice, sound);
        heardHere = true;
        (settled.has(stop.id) ? borrowed : own).push(stop);
      }
      if (!heardHere) continue;
      if (state.tremulants.has("all") || state.tremulants.has(division.name)) sound.tremulant = 1;
      if (box !== "open" && division.box && !counted.has(division.box)) {
        counted.add(division.box);
        shutBoxes += 1;
      }
    }
    for (const stop of own) settled.add(stop.id);
    result[index] = { placing: placings[index] as Placing, placed: one, sound, own, borrowed, shutBoxes };
  }
  return result;
}

const freshCloseness = (): Closeness => ({ gain: 0, cost: 0, conform: false, satisfied: 0, serving: 0 });

interface Weight {
  readonly score: Points;
  readonly forbidden: number;
  readonly weighed: readonly WeighedPart[];
  readonly closeness: readonly Closeness[];
}

/** What a part's conventions give it, a prescription that is followed to the letter silencing their complaints. */
export const yielding = (points: Points, yields: boolean, conform: boolean): Points =>
  yields && conform && points < 0 ? 0 : points;

/** The sum for one reading, without a word. */
function weigh(problem: Problem, parts: readonly PartState[], reading: number): Weight {
  let [score, forbidden] = [0, 0];
  const weighed = parts.map((part) => problem.weighed(part.placed, reading));
  const closeness = parts.map((part, index) => {
    const { recipe } = weighed[index] as WeighedPart;
    const own: Match[] = part.own.map((stop) => recipe.matchOf(stop));
    return closenessOf(
      recipe,
      own,
      own.length,
      part.borrowed.map((stop) => recipe.matchOf(stop)),
      freshCloseness(),
    );
  });
  parts.forEach((part, index) => {
    const { context, partRules, fix } = weighed[index] as WeighedPart;
    const { gain, cost, conform } = closeness[index] as Closeness;
    score += gain - cost - COSTS.shutBox * part.shutBoxes;
    if (fix === null) forbidden += 1;
    else score += fix;
    for (const rule of partRules) {
      if (rule.forbids?.(part.sound, context) && !(rule.yieldsToPrescription && conform)) forbidden += 1;
      score += yielding(rule.weigh(part.sound, context), rule.yieldsToPrescription, conform);
    }
    if (part.sound.stops === 0) forbidden += 1;
  });
  forEachPair(parts.length, (a, b) => {
    const [first, second] = [weighed[a] as WeighedPart, weighed[b] as WeighedPart];
    const conform = (closeness[a] as Closeness).conform && (closeness[b] as Closeness).conform;
    for (const rule of problem.rules.pair) {
      if (!rule.applies(first.context, second.context)) continue;
      const [one, other] = [(parts[a] as PartState).sound, (parts[b] as PartState).sound];
      if (rule.forbids?.(one, other, first.context, second.context) && !(rule.yieldsToPrescription && conform))
        forbidden += 1;
      score += yielding(rule.weigh(one, other, first.context, second.context), rule.yieldsToPrescription, conform);
    }
  });
  return { score, forbidden, weighed, closeness };
}

/** Every ordered pair of different parts. */
export function forEachPair(count: number, visit: (first: number, second: number) => void): void {
  for (let a = 0; a < count; a++) for (let b = 0; b < count; b++) if (a !== b) visit(a, b);
}

function heardOf(problem: Problem, part: PartState): Heard {
  const stops: HeardStop[] = [];
  const undrawn: HeardStop[] = [];
  const drawn = new Set([...part.own, ...part.borrowed].map((stop) => stop.id));
  const divisions = new Set(part.placed.reach.map((each) => each.division));
  const keys = Array.from(
    { length: part.placed.zones.high - (part.placed.zones.starts[0] as number) + 1 },
    (_, index) => (part.placed.zones.starts[0] as number) + index,
  );
  for (const stop of problem.stops) {
    const reached = part.placed.reach.find(
      (each) => divisions.has(each.division) && each.division.name === stop.division,
    );
    if (!reached) continue;
    const away = 12 * (part.placed.octave + reached.shift);
    if (zonesBetween(part.placed.zones, stop.from - away, stop.to - away) === 0 && !drawn.has(stop.id)) continue;
    const silent = keys.filter((key) => key + away < stop.from || key + away > stop.to);
    const heard = { stop, label: stopLabel(stop), silent };
    if (drawn.has(stop.id)) stops.push(heard);
    else if (!stop.off) undrawn.push(heard);
  }
  return { stops, undrawn };
}

/** `Bédos de Celles (1766)`; `Common practice`. */
export function sourceName(id: string): string {
  const source = SOURCES[id];
  if (!source) return id === "common practice" ? "Common practice" : id;
  return source.year ? `${source.author} (${source.year})` : source.author;
}

/** The reasons of one reading, in words. */
function explain(problem: Problem, parts: readonly PartState[], at: number, weight: Weight): readonly Reason[] {
  const reasons: Reason[] = [];
  const reading = problem.readings[at] as Problem["readings"][number];
  const sources = reading.prescription?.sources ?? ["common practice"];
  const sourceText = sources.join("; ");
  const heards = parts.map((part) => heardOf(problem, part));
  const add = (
    rule: { id: string; source: string; severity: "error" | "warning" | "note" },
    points: Points,
    words: Words,
    partIds: readonly string[],
    stops: readonly string[],
    forbids = false,
  ): void => {
    const severity = forbids
      ? "error"
      : points > 0
        ? "praise"
        : points < 0 && rule.severity === "error"
          ? "warning"
          : rule.severity;
    reasons.push({
      rule: rule.id,
      points,
      text: words.text,
      source: rule.source,
      parts: partIds,
      stops: words.stops ?? stops,
      severity,
      remedy: words.remedy ?? null,
    });
  };
  const recipeRule = { id: "close-to-prescription", source: sourceText, severity: "note" as const };
  const economyRule = { id: "fewest-stops", source: "common practice", severity: "note" as const };

  parts.forEach((part, index) => {
    const weighed = weight.weighed[index] as WeighedPart;
    const close = weight.closeness[index] as Closeness;
    const heard = heards[index] as Heard;
    const ids = heard.stops.map((each) => each.stop.id);
    const who = partName(weighed.context);
    const { recipe } = weighed;
    const matches = part.own.map((stop) => ({ stop, match: recipe.matchOf(stop) }));
    const all = [...matches, ...part.borrowed.map((stop) => ({ stop, match: recipe.matchOf(stop) }))];
    const standInBits = all.reduce((bits, each) => bits | each.match.standIn, 0);
    const beside = all.reduce((bits, each) => bits | (each.match.items === 0 ? each.match.standIn : 0), 0);

    let direct = close.gain;
    const replaced: { points: Points; text: string; stops: readonly string[] }[] = [];
    const missing: string[] = [];
    recipe.items.forEach((item, i) => {
      if (close.satisfied & (1 << i)) return;
      const use = standingIn(item, standInBits, beside);
      const name = item.wanted.map(wantedText).slice(0, 3).join(" or ");
      if (!use) {
        missing.push(name);
        return;
      }
      direct -= use.weight;
      if (use.leaveOut) {
        replaced.push({
          points: use.weight,
          text: `The ${who} does without the ${name}, which is welcome rather than needed.`,
          stops: [],
        });
        return;
      }
      const serving = all.filter((each) => (each.match.standIn & use.bits) !== 0).map((each) => each.stop);
      replaced.push({
        points: use.weight,
        text: `${listed(serving.map(stopLabel))} ${serving.length === 1 ? "stands" : "stand"} in for the ${name} that the recipe asks for${use.note ? ` (${use.note})` : ""}.`,
        stops: serving.map((stop) => stop.id),
      });
    });
    if (recipe.speaks && (direct !== 0 || recipe.items.length === 0)) {
      const asked = all.filter((each) => each.match.status === "asked").map((each) => stopLabel(each.stop));
      const by =
        sources[0] === "common practice" ? "By common practice" : `As ${sourceName(sources[0] as string)} has it`;
      const lack = missing.length > 0 ? `; the recipe also asks for ${listed(missing)}` : "";
      add(recipeRule, direct, { text: `${by}, the ${who} draws ${listed(asked)}${lack}.` }, [part.placing.part], ids);
    } else if (recipe.speaks && missing.length > 0) {
      add(
        recipeRule,
        0,
        { text: `The recipe asks the ${who} for ${listed(missing)}, which it does not have here.` },
        [part.placing.part],
        ids,
      );
    }
    for (const each of replaced) add(recipeRule, each.points, each, [part.placing.part], each.stops);

    const costOf = (status: Match["status"]) => {
      const found = matches.filter(
        (each) => each.match.status === status && !(status === "stray" && (each.match.standIn & close.serving) !== 0),
      );
      return { stops: found.map((each) => each.stop), points: -found.reduce((sum, each) => sum + each.match.cost, 0) };
    };
    const stray = costOf("stray");
    const against = costOf("against");
    if (stray.stops.length > 0) {
      add(
        recipeRule,
        stray.points,
        {
          text: `${listed(stray.stops.map(stopLabel))} ${stray.stops.length === 1 ? "is" : "are"} outside the recipe for the ${who}.`,
          stops: stray.stops.map((stop) => stop.id),
        },
        [part.placing.part],
        ids,
      );
    }
    if (against.stops.length > 0) {
      add(
        { ...recipeRule, severity: "warning" },
        against.points,
        {
          text: `The recipe keeps ${listed(against.stops.map(stopLabel))} out of the ${who}.`,
          remedy: `Leave out ${listed(against.stops.map(stopLabel))}.`,
          stops: against.stops.map((stop) => stop.id),
        },
        [part.placing.part],
        ids,
      );
    }
    const rest = -close.cost - stray.points - against.points - COSTS.shutBox * part.shutBoxes;
    if (rest !== 0) {
      const boxes = part.shutBoxes > 0 ? " and a box that is not open" : "";
      const more = matches
        .filter((each) => each.match.status !== "stray" && each.match.status !== "against")
        .map((each) => stopLabel(each.stop));
      add(
        economyRule,
        rest,
        { text: `The ${who} could do with fewer: ${listed(more)}${boxes}.` },
        [part.placing.part],
        ids,
      );
    }
    for (const deviation of placingDeviations(reading, part.placed, problem.kindsOf)) {
      const text = {
        keyboard: `The recipe plays the ${who} on the ${deviation.about.replace("-", " ")} keyboard; here it is the ${part.placed.keyboard.name}.`,
        "left-out": `The recipe couples ${deviation.about}; that coupler is not on here.`,
        beside: `${deviation.about} is on, which the recipe does not ask for.`,
        allowed: `${deviation.about} is on; the recipe allows it and can do without.`,
      }[deviation.what];
      add(recipeRule, deviation.points, { text }, [part.placing.part], ids);
    }
    for (const rule of problem.rules.placing) {
      const points = rule.weigh(weighed.context);
      const forbids = rule.forbids?.(weighed.context) ?? false;
      if (points !== 0 || forbids)
        add(rule, points, rule.words(weighed.context, points), [part.placing.part], ids, forbids);
    }
    for (const rule of weighed.partRules) {
      const silenced = rule.yieldsToPrescription && close.conform;
      const points = yielding(rule.weigh(part.sound, weighed.context), rule.yieldsToPrescription, close.conform);
      const forbids = !silenced && (rule.forbids?.(part.sound, weighed.context) ?? false);
      if (points !== 0 || forbids) {
        add(rule, points, rule.words(part.sound, weighed.context, heard, points), [part.placing.part], ids, forbids);
      }
    }
    if (part.sound.stops === 0) {
      add(
        { id: "foundation-present", source: "common practice", severity: "error" },
        0,
        {
          text: `Nothing is drawn that the ${who} on the ${part.placed.keyboard.name} can hear.`,
          remedy: `Draw a stop on the ${part.placed.keyboard.name}.`,
        },
        [part.placing.part],
        [],
        true,
      );
    }
    for (const rule of problem.rules.advice) {
      const words = rule.advise(part.sound, weighed.context, heard);
      if (words) add(rule, 0, words, [part.placing.part], ids);
    }
  });
  forEachPair(parts.length, (a, b) => {
    const [first, second] = [weight.weighed[a] as WeighedPart, weight.weighed[b] as WeighedPart];
    const conform = (weight.closeness[a] as Closeness).conform && (weight.closeness[b] as Closeness).conform;
    const [one, other] = [parts[a] as PartState, parts[b] as PartState];
    for (const rule of problem.rules.pair) {
      if (!rule.applies(first.context, second.context)) continue;
      const silenced = rule.yieldsToPrescription && conform;
      const points = yielding(
        rule.weigh(one.sound, other.sound, first.context, second.context),
        rule.yieldsToPrescription,
        conform,
      );
      const forbids = !silenced && (rule.forbids?.(one.sound, other.sound, first.context, second.context) ?? false);
      if (points === 0 && !forbids) continue;
      const heard = { first: heards[a] as Heard, second: heards[b] as Heard };
      add(
        rule,
        points,
        rule.words(one.sound, other.sound, first.context, second.context, heard, points),
        [one.placing.part, other.placing.part],
        [...heard.first.stops, ...heard.second.stops].map((each) => each.stop.id),
        forbids,
      );
    }
  });
  return reasons;
}

/**
 * Judges a state for a section, its parts placed as said: the best of all readings, taken apart into reasons.
 *
 * @param placings one for each part that is played; optional parts may be left out.
 * @returns `null` when the keyboards are coupled in a ring, which no player uses.
 */
export function judge(problem: Problem, state: ConsoleState, placings: readonly Placing[]): Judgement | null {
  const parts = listen(problem, state, placings);
  if (!parts) return null;
  let best: { at: number; weight: Weight } | null = null;
  for (let at = 0; at < problem.readings.length; at++) {
    const weight = weigh(problem, parts, at);
    const better =
      !best ||
      weight.forbidden < best.weight.forbidden ||
      (weight.forbidden === best.weight.forbidden && weight.score > best.weight.score);
    if (better) best = { at, weight };
  }
  const { at, weight } = best as NonNullable<typeof best>;
  const heardIds = new Set(parts.flatMap((part) => [...part.own, ...part.borrowed].map((stop) => stop.id)));
  return {
    score: weight.score,
    forbidden: weight.forbidden > 0,
    prescription: problem.readings[at]?.prescription ?? null,
    reading: at,
    reasons: explain(problem, parts, at, weight),
    parts: parts.map((part) => ({
      placing: part.placing,
      placed: part.placed,
      sound: part.sound,
      heard: problem.stops.filter((stop) => [...part.own, ...part.borrowed].includes(stop)).map((stop) => stop.id),
    })),
    idle: [...state.drawn].filter((id) => !heardIds.has(id)),
  };
}

/** The score alone and whether a rule forbids the state: what enumeration compares. `null` as for {@link judge}. */
export function scoreOf(
  problem: Problem,
  state: ConsoleState,
  placings: readonly Placing[],
): { readonly score: Points; readonly forbidden: boolean } | null {
  const parts = listen(problem, state, placings);
  if (!parts) return null;
  let best: { score: Points; forbidden: boolean } | null = null;
  for (let at = 0; at < problem.readings.length; at++) {
    const { score, forbidden } = weigh(problem, parts, at);
    const allowed = forbidden === 0;
    if (!best || (allowed && best.forbidden) || (allowed !== best.forbidden && score > best.score)) {
      best = { score, forbidden: !allowed };
    }
  }
  return best;
}
