import { spawnSync } from "node:child_process";
import { cpus, loadavg } from "node:os";
import { fileURLToPath } from "node:url";
import type { Tradition } from "../../shared-model/music/texture.ts";
import { CHECK_LIMIT_MS, HEAP_LIMIT_MB, limitFor, PLAN_LIMIT_MS, verdict, WARMING_MS } from "./limits.ts";
import { median, ms } from "./numbers.ts";
import { FIRST_SEED, type Organs, organsText } from "./organs.ts";
import { printPlanSpeed } from "./plan-speed.ts";
import type { Measured, RowTask } from "./row.ts";
import { printSurveySpeed } from "./survey-speed.ts";

/**
 * Prints how long proposals and checks take. Each line of the table is measured in a process of its own, so that its
 * first call is cold and one line that never ends costs the others nothing.
 */
const TOTAL_MS = 360_000;
const ROW_MOST_MS = 16_000;
/** An organ that takes longer is given up, and counts as a call that takes for ever. */
const ORGANS_MOST_MS = 4_500;
const ORGAN_BUDGET_MS = 600;
const ROW_HEAP_MB = 1_000;
const began = performance.now();

const RANDOM: readonly Organs[] = [
  { manuals: 2, stops: 30, seeds: 9 },
  { manuals: 3, stops: 60, seeds: 9 },
  { manuals: 5, stops: 120, seeds: 9 },
  { manuals: 7, stops: 450, seeds: 5 },
];
const DEMO: readonly Organs[] = ["sallowby", "zinnrode", "hawsermouth", "aldrunburg"].map((demo) => ({ demo }));
const GROWTH: readonly Organs[] = [
  { manuals: 2, stops: 10, seeds: 5 },
  { manuals: 2, stops: 20, seeds: 5 },
  { manuals: 3, stops: 40, seeds: 5 },
  { manuals: 4, stops: 80, seeds: 5 },
  { manuals: 5, stops: 160, seeds: 5 },
  { manuals: 6, stops: 320, seeds: 5 },
  { manuals: 7, stops: 450, seeds: 5 },
];
const MELODY = ["melody-over-accompaniment", "neutral"] as const;
const CHORUSES: readonly (readonly [string, Tradition])[] = [
  ["hymn-verse", "neutral"],
  ["organo-pleno", "north-german"],
  ["plein-jeu", "french-classical"],
];

/** What one line measured, and the numbers of the organs that were given up or never begun. */
interface RowResult {
  readonly measured: readonly Measured[];
  readonly givenUp: readonly number[];
  readonly notBegun: readonly number[];
}

const count = (organs: Organs): number => ("demo" in organs ? 1 : organs.seeds);

function measure(organs: Organs, [texture, tradition]: readonly [string, Tradition]): RowResult {
  const start = performance.now();
  const measured: Measured[] = [];
  const givenUp: number[] = [];
  let only = Array.from({ length: count(organs) }, (_, organ) => organ);
  while (only.length > 0) {
    const now = performance.now();
    const timeout = Math.min(ORGANS_MOST_MS + WARMING_MS, ROW_MOST_MS - (now - start), TOTAL_MS - (now - began));
    if (timeout < 1_000 + WARMING_MS) break;
    const task: RowTask = { organs, texture, tradition, only, budgetMs: ORGAN_BUDGET_MS };
    const { stdout, status } = spawnSync(
      process.execPath,
      [`--max-old-space-size=${ROW_HEAP_MB}`, fileURLToPath(new URL("row.js", import.meta.url)), JSON.stringify(task)],
      { encoding: "utf8", timeout: Math.ceil(timeout), killSignal: "SIGKILL", maxBuffer: 64e6 },
    );
    const lines = stdout.split("\n").slice(0, -1);
    for (const line of lines) if (line.startsWith("{")) measured.push(JSON.parse(line) as Measured);
    if (status === 0) return { measured, givenUp, notBegun: [] };
    const last = Number(lines.findLast((line) => !line.startsWith("{")) ?? only[0]);
    // Stopped between two calls of an organ, it is only short of some calls.
    if (!measured.some((each) => each.organ === last && !each.cold)) givenUp.push(last);
    only = only.slice(only.indexOf(last) + 1);
  }
  return { measured, givenUp, notBegun: only };
}

const COLUMNS = [20, 8, 10, 10, 8, 7, 10, 10, 7, 7, 7, 8, 7, 9, 7] as const;
const HEADS = [
  "manuals / stops",
  "cold",
  "varied",
  "worst",
  "limit",
  "",
  "raw",
  "worst",
  "gap",
  "pools",
  "pairs",
  "check",
  "",
  "heap MB",
  "",
];
const print = (cells: readonly string[]): void =>
  console.log(
    cells.map((cell, at) => (at === 0 ? cell.padEnd(COLUMNS[0]) : cell.padStart(COLUMNS[at] as number))).join(" "),
  );

/** Prints one line; `true` when it keeps every limit. */
function printRow(organs: Organs, { measured, givenUp, notBegun }: RowResult): boolean {
  const of = (list: Measured["list"]) => measured.filter((each) => each.list === list && !each.cold);
  const times = (list: Measured["list"]): readonly number[] => {
    // By organ first: one that allows of few calls weighs as much as the others.
    const done = [...new Set(of(list).map((each) => each.organ))];
    return [
      ...done.map((organ) =>
        median(
          of(list)
            .filter((each) => each.organ === organ)
            .map((each) => each.ms),
        ),
      ),
      ...(list === "check" ? [] : givenUp.map(() => Number.POSITIVE_INFINITY)),
    ];
  };
  const cold = measured.find((each) => each.cold)?.ms ?? Number.NaN;
  const stops = measured[0]?.stops ?? ("stops" in organs ? organs.stops : 0);
  const varied = median(times("varied"));
  const check = median(times("check"));
  const heap = Math.max(Number.NEGATIVE_INFINITY, ...measured.map((each) => each.heapMb));
  const verdicts = [verdict(varied, limitFor(stops)), verdict(check, CHECK_LIMIT_MS), verdict(heap, HEAP_LIMIT_MB)];
  const gaps = of("raw").flatMap(({ gap }) => gap ?? []);
  const whole = (values: readonly number[]): string => (values.length > 0 ? median(values).toFixed(0) : "-");
  print([
    "demo" in organs ? `${organsText(organs)} (${stops})` : organsText(organs),
    ms(cold),
    ms(varied),
    ms(Math.max(...times("varied"))),
    `${limitFor(stops)}`,
    verdicts[0] as string,
    ms(median(times("raw"))),
    ms(Math.max(...times("raw"))),
    gaps.length > 0 ? (median(gaps) / 100).toFixed(1) : "-",
    whole(of("varied").map((each) => each.pools)),
    whole(of("varied").map((each) => each.pairs)),
    ms(check),
    verdicts[1] as string,
    Number.isFinite(heap) ? heap.toFixed(0) : "-",
    verdicts[2] as string,
  ]);
  const names = (list: readonly number[]): string =>
    "demo" in organs ? organs.demo : `seeds ${list.map((organ) => organ + FIRST_SEED).join(", ")}`;
  if (givenUp.length > 0) console.log(`  did not end within ${ORGANS_MOST_MS / 1000} s: ${names(givenUp)}`);
  if (notBegun.length > 0) console.log(`  time was over before: ${names(notBegun)}`);
  return givenUp.length + notBegun.length === 0 && verdicts.every((each) => each === "within");
}

function printTable(title: string, organs: readonly Organs[], texture: readonly [string, Tradition]): number {
  console.log(`\n${title}`);
  print(HEADS);
  return organs.filter((each) => !printRow(each, measure(each, texture))).length;
}

console.log(
  `Node ${process.version}, ${cpus().length} cores, load average ${loadavg()
    .map((load) => load.toFixed(2))
    .join(" ")} at the start.`,
);
console.log(
  "Milliseconds, eight proposals, a section made ready in every call. Cold: the first call of a process; the others\n" +
    "after three seconds of calls on organs of 30 stops. Varied: the list as proposed; raw: by score alone. Gap: points between the highest bound and the eighth best.\n" +
    "Limits are those of a three-part texture; chorus textures are held against the same.",
);
let over = printTable(`${MELODY.join(", ")}: sizes`, RANDOM, MELODY);
over += printTable(`${MELODY.join(", ")}: demo organs (stops)`, DEMO, MELODY);
over += printTable(`${MELODY.join(", ")}: growth`, GROWTH, MELODY);
for (const chorus of CHORUSES) over += printTable(`${chorus.join(", ")}: chorus`, [...RANDOM, ...DEMO], chorus);
over += printPlanSpeed(PLAN_LIMIT_MS);
over += printSurveySpeed();
const seconds = ((performance.now() - began) / 1000).toFixed(0);
console.log(`\n${over === 0 ? "All lines are within their limits" : `${over} lines are over a limit`}; ${seconds} s.`);
