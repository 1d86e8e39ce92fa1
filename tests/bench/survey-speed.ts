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

/** One whole survey, by the clock and in processor time: on a busy machine the clock says more of the others. */
function timed(instrument: Instrument): { readonly clock: number; readonly processor: number; readonly sure: number } {
  const [start, used] = [performance.now(), process.cpuUsage()];
  const steps = [...surveying(instrument, { traditions: TRADITIONS, labelOf })];
  const { user, system } = process.cpuUsage(used);
  const sure = steps.filter(({ surveyed }) => surveyed.exact).length / steps.length;
  return { clock: performance.now() - start, processor: (user + system) / 1000, sure };
}

/** Prints how long the survey of every texture of every school takes; how many lines are over their limit. */
export function printSurveySpeed(): number {
  console.log("\nSurveys of all schools: milliseconds, the first call on each organ, median and worst of the organs");
  console.log(["organs", "clock", "processor", "worst", "exact"].map((head) => head.padStart(12)).join(" "));
  let over = 0;
  for (const row of ROWS) {
    const organs = organsOf(row);
    const took = organs.map(timed);
    const stops = Math.max(...organs.map(({ divisions }) => divisions.flatMap((each) => each.stops).length));
    const limit = LIMITS.find((each) => stops <= each.stops)?.ms ?? Number.POSITIVE_INFINITY;
    const processor = median(took.map((each) => each.processor));
    if (processor > limit) over += 1;
    const cells = [
      organsText(row),
      ms(median(took.map((each) => each.clock))),
      ms(processor),
      ms(Math.max(...took.map((each) => each.processor))),
      `${Math.round(100 * Math.min(...took.map((each) => each.sure)))} %`,
    ];
    console.log(
      `${cells.map((cell) => cell.padStart(12)).join(" ")}  ${processor > limit ? "over" : "within"} ${limit} (processor)`,
    );
  }
  return over;
}
if (process.argv[2] === "surveys") printSurveySpeed();
