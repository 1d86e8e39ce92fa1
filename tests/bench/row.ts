import { writeSync } from "node:fs";
import { judge } from "../../shared-model/judging/judge.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import type { Section, Texture, Tradition } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { bestStates, propose } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { WARMING_MS } from "./limits.ts";
import { median } from "./numbers.ts";
import { type Organs, organsOf } from "./organs.ts";

/** One line of the table, as it is handed to a process of its own. */
export interface RowTask {
  readonly organs: Organs;
  readonly texture: string;
  readonly tradition: Tradition;
  /** Numbers of the organs to be measured. */
  readonly only: readonly number[];
  /** Warm calls on one organ begin no later than this after its first. */
  readonly budgetMs: number;
}

/** One call. Points in hundredths. */
export interface Measured {
  readonly list: "varied" | "raw" | "check";
  readonly cold: boolean;
  readonly organ: number;
  readonly stops: number;
  readonly ms: number;
  /** How far the last state kept lies below the highest bound; `null` where nothing serves or nothing is proved. */
  readonly gap: number | null;
  readonly pools: number;
  readonly pairs: number;
  readonly heapMb: number;
}

/** The organs that make the code warm: several, since what is compiled for one alone is compiled anew for the next. */
const WARMING_ON: Organs = { manuals: 2, stops: 30, seeds: 6 };
const ROUNDS = 15;
const CHECKS = 1000;
const COUNT = 8;

// Written at once: what has been measured stays when the process is stopped.
const report = (measured: Measured): void => {
  writeSync(1, `${JSON.stringify(measured)}\n`);
};
const heapMb = (): number => process.memoryUsage().heapUsed / 1e6;

function timeList(instrument: Instrument, section: Section, list: "varied" | "raw", cold: boolean, organ: number) {
  const start = performance.now();
  const problem = prepare(instrument, section);
  const { effort, proven } =
    list === "raw" ? bestStates(problem, { count: COUNT, every: true }) : propose(problem, { count: COUNT });
  const ms = performance.now() - start;
  const { bound, last, pools, pairs } = effort;
  const gap = proven && Number.isFinite(bound) ? bound - last : null;
  report({ list, cold, organ, stops: problem.stops.length, ms, gap, pools, pairs, heapMb: heapMb() });
}

/** A drawn registration whose keyboards are named, on a section made ready once. */
function timeCheck(instrument: Instrument, section: Section, organ: number): void {
  const problem = prepare(instrument, section);
  const [best] = propose(problem, { count: 1 }).proposals;
  if (!best) return;
  const { state, placings } = best.found;
  const times = Array.from({ length: CHECKS }, () => {
    const start = performance.now();
    judge(problem, state, placings);
    return performance.now() - start;
  });
  const stops = problem.stops.length;
  const ms = median(times);
  report({ list: "check", cold: false, organ, stops, ms, gap: null, pools: 0, pairs: 0, heapMb: heapMb() });
}

/** Until Node has compiled what is called often: the first dozens of calls are up to three times slower. */
function warm(section: Section): void {
  const start = performance.now();
  const instruments = organsOf(WARMING_ON);
  for (let call = 0; performance.now() - start < WARMING_MS; call++) {
    const instrument = instruments[call % instruments.length] as Instrument;
    propose(prepare(instrument, section), { count: COUNT });
    bestStates(prepare(instrument, section), { count: COUNT, every: true });
  }
}

function run({ organs, texture, tradition, only, budgetMs }: RowTask): void {
  const section = sectionOf(textureFor(texture, tradition) as Texture, { tradition });
  const instruments = organsOf(organs);
  for (const organ of only) {
    const instrument = instruments[organ] as Instrument;
    writeSync(1, `${organ}\n`);
    // The first call fills the instrument's tables; of the first organ it is the cold one.
    timeList(instrument, section, "varied", true, organ);
    if (organ === only[0]) warm(section);
    const start = performance.now();
    for (let round = 0; round < ROUNDS; round++) {
      if (round > 0 && performance.now() - start > budgetMs) break;
      timeList(instrument, section, "varied", false, organ);
      timeList(instrument, section, "raw", false, organ);
    }
    if (organ === only[0]) timeCheck(instrument, section, organ);
  }
}

run(JSON.parse(process.argv[2] as string) as RowTask);
