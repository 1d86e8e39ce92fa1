import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Piece, PieceSection } from "../../shared-model/music/piece.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureById } from "../../shared-model/music/textures/catalogue.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { workOut } from "../../shared-model/plan/planned.ts";
import { bestStates } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { PLAN_LIMIT_MS } from "./limits.ts";
import { median, ms } from "./numbers.ts";
import { organsOf } from "./organs.ts";

const TEXTURES = [
  "plenum",
  "two-voices",
  "flutes",
  "melody-over-accompaniment",
  "melody-in-tenor",
  "plenum-manual",
  "trio",
  "meditation",
  "hymn-verse",
  "pastorale",
];

/** A piece of so many sections, its textures in turn, with links and rests of several lengths; the same every time. */
function pieceOf(count: number, pistons: boolean): Piece {
  const sections = Array.from({ length: count }, (_, at): PieceSection => {
    const texture = textureById(TEXTURES[(at * 7) % TEXTURES.length] as string) as Texture;
    return {
      section: sectionOf(texture, { name: `Section ${at + 1}`, bars: `${at * 16 + 1}-${at * 16 + 16}` }),
      metronome: { bpm: 60 + ((at * 13) % 60), quarters: 1 },
      beatsInBar: 4,
      before: at === 0 ? null : { what: "rest", beats: 1 + (at % 4), free: null, turnedBy: "player" },
      moments: at % 5 === 0 ? [{ limb: "left", beats: 4, bar: null }] : [],
      links: at % 6 === 5 ? [{ kind: "contrast-with", to: at - 3 }] : [],
      registration: null,
      steps: [],
      pinned: false,
    };
  });
  const none = { generals: [], divisionals: {}, levels: null };
  return {
    name: null,
    organ: null,
    assistant: "none",
    pistons: pistons ? { generals: null, divisionals: null, levels: null } : none,
    practised: true,
    pace: "normal",
    sections,
  };
}

/** Milliseconds by the clock, and of the processor alone: on a busy machine the two differ. */
interface Took {
  readonly all: number;
  readonly processor: number;
  /** Of the processor: the proposals of every texture that occurs, by themselves. */
  readonly lists: number;
  /** Of the processor: the chosen row worked out, with pistons and other ways. */
  readonly working: number;
}

function processor(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function time(instrument: Instrument, piece: Piece): Took {
  const before = processor();
  for (const texture of new Set(piece.sections.map((each) => each.section.texture as string)))
    bestStates(prepare(instrument, sectionOf(textureById(texture) as Texture)), { count: 8 });
  const [start, listed] = [performance.now(), processor()];
  const row = chooseRow(instrument, piece);
  const chosen = processor();
  if ("troubles" in row) throw new Error(row.troubles.map((each) => each.text).join("\n"));
  workOut(row);
  const [end, done] = [performance.now(), processor()];
  return { all: end - start, processor: done - listed, lists: listed - before, working: done - chosen };
}

/**
 * Prints how long whole pieces take to plan on the largest demo organ, and how it grows with their sections; returns how many
 * of the lines with a limit are over it. Run alone: `node dist/tests/bench/plan-speed.js plans`.
 */
export function printPlanSpeed(limitMs: number): number {
  const [organ] = organsOf({ demo: "aldrunburg" });
  const heads = ["sections", "changes", "all", "processor", "lists", "working out"];
  console.log("\nWhole pieces on aldrunburg (121 stops): milliseconds, warm, median of 3");
  console.log(heads.map((head) => head.padStart(11)).join(" "));
  let over = 0;
  time(organ as Instrument, pieceOf(10, true));
  for (const count of [10, 20, 40, 60, 120]) {
    for (const pistons of [false, true]) {
      const took = [1, 2, 3].map(() => time(organ as Instrument, pieceOf(count, pistons)));
      const middle = (part: (each: Took) => number): number => median(took.map(part));
      const all = middle((each) => each.all);
      const cells = [
        String(count),
        pistons ? "pistons" : "by hand",
        ms(all),
        ms(middle((each) => each.processor)),
        ms(middle((each) => each.lists)),
        ms(middle((each) => each.working)),
      ];
      const limited = count === 60;
      if (limited && all > limitMs) over += 1;
      const verdict = limited ? `  ${all > limitMs ? "over" : "within"} ${limitMs}` : "";
      console.log(cells.map((cell) => cell.padStart(11)).join(" ") + verdict);
    }
  }
  return over;
}
if (process.argv[2] === "plans") printPlanSpeed(PLAN_LIMIT_MS);
