import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { labelOf } from "../../shared-model/cards/label.ts";
import { surveying } from "../../shared-model/carry/survey.ts";
import { TRADITIONS } from "../../shared-model/music/texture.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { median, ms } from "./numbers.ts";
import { type Organs, organsOf, organsText } from "./organs.ts";

/** What the survey of all schools may take on an organ of up to so many stops. */
const LIMITS = [
  { stops: 31, ms: 1_000 },
  { stops: 126, ms: 10_000 },
] as const;
const ROWS: readonly Organs[] = [{ manuals: 2, stops: 30, seeds: 5 }, { demo: "huettenlohe" }, { demo: "aldrunburg" }];
const WARM_CALLS = 4;

/** The whole surveys of one organ, in a process of its own. */
interface Timed {
  readonly stops: number;
  /** The first call, with cold code and nothing known of the organ. */
  readonly cold: number;
  /** The median of the calls that follow, by the clock and in processor time. */
  readonly warm: number;
  readonly processor: number;
  /** Share of the textures of which the level is known exactly. */
  readonly sure: number;
}

function timeSurveys(instrument: Instrument): Timed {
  const calls = Array.from({ length: 1 + WARM_CALLS }, () => {
    const [start, used] = [performance.now(), process.cpuUsage()];
    const steps = [...surveying(instrument, { traditions: TRADITIONS, labelOf })];
    const clock = performance.now() - start;
    const { user, system } = process.cpuUsage(used);
    const sure = steps.filter(({ surveyed }) => surveyed.exact).length / steps.length;
    return { clock, processor: (user + system) / 1000, sure };
  });
  const [first, ...after] = calls;
  return {
    stops: instrument.divisions.flatMap((each) => each.stops).length,
    cold: first?.clock ?? Number.NaN,
    warm: median(after.map((each) => each.clock)),
    processor: median(after.map((each) => each.processor)),
    sure: Math.min(...calls.map((each) => each.sure)),
  };
}

/** Prints how long the survey of every texture of every school takes; how many lines are over their limit. */
export function printSurveySpeed(): number {
  console.log(
    "\nSurveys of all schools: milliseconds, medians of the organs; warm as above: code and the instrument's tables",
  );
  console.log(["organs", "cold", "warm", "worst", "processor", "exact"].map((head) => head.padStart(12)).join(" "));
  let over = 0;
  for (const row of ROWS) {
    const took = organsOf(row).map((_, organ) => {
      const { stdout } = spawnSync(
        process.execPath,
        [fileURLToPath(import.meta.url), "survey", JSON.stringify(row), `${organ}`],
        { encoding: "utf8" },
      );
      return JSON.parse(stdout) as Timed;
    });
    const stops = Math.max(...took.map((each) => each.stops));
    const limit = LIMITS.find((each) => stops <= each.stops)?.ms ?? Number.POSITIVE_INFINITY;
    const warm = median(took.map((each) => each.warm));
    if (warm > limit) over += 1;
    const cells = [
      organsText(row),
      ms(median(took.map((each) => each.cold))),
      ms(warm),
      ms(Math.max(...took.map((each) => each.warm))),
      ms(median(took.map((each) => each.processor))),
      `${Math.round(100 * Math.min(...took.map((each) => each.sure)))} %`,
    ];
    console.log(`${cells.map((cell) => cell.padStart(12)).join(" ")}  ${warm > limit ? "over" : "within"} ${limit}`);
  }
  return over;
}

const [, , what, row, organ] = process.argv;
if (what === "surveys") printSurveySpeed();
if (what === "survey") {
  const instrument = organsOf(JSON.parse(row as string) as Organs)[Number(organ)];
  console.log(JSON.stringify(timeSurveys(instrument as Instrument)));
}
