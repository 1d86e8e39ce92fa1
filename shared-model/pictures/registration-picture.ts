import { balanceOf } from "../acoustics/hearing.ts";
import { guessedStops } from "../judging/hearing-report.ts";
import type { JudgedPart, Judgement } from "../judging/judge.ts";
import { stopLabel } from "../judging/listening.ts";
import type { Problem } from "../judging/problem.ts";
import { partName } from "../rules/balance.ts";
import { ratioTo } from "../rules/loudness-words.ts";
import { listed } from "../rules/rule.ts";
import { balanceCurves, type Compared } from "./balance-curves.ts";
import { ladderColumns, ladderWords, pitchLadder } from "./pitch-ladder.ts";
import { type Drawing, linesOf, rule, shifted, type Words, words } from "./shapes.ts";
import { picture } from "./svg.ts";

const WIDTH = 940;
const MARGIN = 28;
const LADDER_WIDTH = 420;
const BETWEEN = 40;
const LINE = 21;
const LETTERS = 58;

/** Pairs of roles whose balance tells most, the first of a pair against the second. */
const TELLING = [
  ["melody", "accompaniment"],
  ["cantus-firmus", "accompaniment"],
  ["cantus-firmus", "plenum"],
  ["voice-1", "voice-2"],
  ["plenum-1", "plenum-2"],
  ["plenum", "echo"],
  ["melody", "echo"],
  ["bass", "plenum"],
  ["bass", "accompaniment"],
  ["melody", "bass"],
] as const;

/** The two parts whose balance is shown, or the one there is. */
export function comparedOf(parts: readonly JudgedPart[]): Compared | null {
  const sounding = parts.flatMap(({ placed: { part }, sound }) =>
    sound.blend ? [{ id: part.id, role: part.role, name: partName({ part }), blend: sound.blend }] : [],
  );
  const find = (name: string) =>
    sounding.find((each) => each.id === name) ?? sounding.find((each) => each.role === name);
  for (const [one, other] of TELLING) {
    const [first, second] = [find(one), find(other)];
    if (first && second && first !== second) return { first, second };
  }
  const [first, second] = sounding;
  return first ? { first, second: second ?? null } : null;
}

/** Hundredths of a decibel by which a bass that carries rises over what the hands hide. */
const CARRIES = 600;

/** What the balance picture says in words: two thirds as loud, and how much of it is left. */
export function balanceWords({ first, second }: Compared): string {
  if (!second) return `What the ${first.name} sounds, from the lowest partials to the highest.`;
  const { lead, kept, margin } = balanceOf(first.blend, second.blend);
  // Of low notes little loudness is left beside high ones, and they carry the chord all the same.
  if (first.name === "bass") {
    const how = margin >= CARRIES ? "carries" : margin >= 0 ? "is felt" : "is lost";
    return `The bass ${how} under the ${second.name}.`;
  }
  const left =
    kept >= 90
      ? "nearly all"
      : kept >= 60
        ? "most"
        : kept >= 35
          ? "about half"
          : kept >= 15
            ? "little"
            : "hardly anything";
  return `The ${first.name} is ${ratioTo(lead, `the ${second.name}`)}, each by itself; together ${left} of it is heard.`;
}

/** A registration drawn, and the same in words. */
export interface RegistrationDrawing extends Drawing {
  /** What it is called, with its organ. */
  readonly title: string;
  /** What it shows, for those who do not see it. */
  readonly description: string;
  /** What stands above and beside the drawing to be read: the registration, what each hand draws, how it is heard. */
  readonly read: readonly Words[];
}

/**
 * A judged registration as two pictures side by side: the pitch ladder (which harmonics each hand sounds, by family) and
 * the balance of its two telling parts. The same registration gives the same shapes.
 *
 * @param label what the registration is called; stands above the pictures.
 */
export function registrationDrawing(
  problem: Problem,
  judgement: Pick<Judgement, "parts">,
  label: string,
): RegistrationDrawing {
  const columns = ladderColumns(judgement.parts, problem.stops, stopLabel);
  const ladder = pitchLadder(columns, LADDER_WIDTH);
  const right = MARGIN + LADDER_WIDTH + BETWEEN;
  const compared = comparedOf(judgement.parts);
  const balance = compared && balanceCurves(compared, WIDTH - MARGIN - right);
  const said = compared ? balanceWords(compared) : "Nothing is heard.";
  const guessed = guessedStops(problem, judgement.parts);
  const guess =
    guessed.length > 0 ? "Strengths and colours are guessed from the names of the stops; nobody has listened yet." : "";

  const drawn = columns.flatMap(({ name, stops }) => linesOf(`${name}: ${listed(stops)}`, 110));
  const top = 66 + LINE * drawn.length;
  const notes = [...linesOf(said, LETTERS), ...linesOf(guess, LETTERS)].filter((each) => each !== "");
  const under = top + 34 + (balance?.height ?? 0);
  const head = compared?.second ? `How the ${compared.first.name} is heard` : "What is heard";
  return {
    width: WIDTH,
    height: Math.max(top + 34 + ladder.height, under + LINE * notes.length) + MARGIN,
    title: `${label}, on ${problem.instrument.name}`,
    description: `${ladderWords(columns)} ${said} ${guess}`.trim(),
    read: [
      words(MARGIN, 38, label, { size: 24, bold: true }),
      ...drawn.map((each, index) => words(MARGIN, 66 + LINE * index, each)),
      ...notes.map((each, index) => words(right, under + 14 + LINE * index, each)),
    ],
    shapes: [
      words(MARGIN, top + 14, "What each hand sounds", { size: 19, italic: true }),
      words(right, top + 14, head, { size: 19, italic: true }),
      rule(MARGIN, top + 22, MARGIN + LADDER_WIDTH, top + 22, 1),
      rule(right, top + 22, WIDTH - MARGIN, top + 22, 1),
      ...shifted(ladder.shapes, MARGIN, top + 34),
      ...(balance ? shifted(balance.shapes, right, top + 34) : []),
    ],
  };
}

/** The same as a whole picture in SVG. */
export function registrationPicture(problem: Problem, judgement: Pick<Judgement, "parts">, label: string): string {
  const drawing = registrationDrawing(problem, judgement, label);
  return picture({ ...drawing, shapes: [...drawing.read, ...drawing.shapes] }, drawing.title, drawing.description);
}
