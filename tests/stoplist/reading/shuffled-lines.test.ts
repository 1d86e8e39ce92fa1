import { describe, expect, it } from "vitest";
import { pitchName } from "../../../shared-model/pitch/reading.ts";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";
import type { Reading } from "../../../shared-model/stoplist/reading/reading.ts";
import { Draw } from "../../instruments/seeded-random.ts";
import { INVENTED } from "./invented/all.ts";
import { dedented } from "./written.ts";

/** Runs of lines that hold one stop each, all of one division: in whichever order they stand, they say the same. */
function runsOf(text: string, reading: Reading): number[][] {
  const holders = new Map<number, string[]>();
  for (const [index, { stops }] of reading.divisions.entries())
    for (const { line } of stops) holders.set(line, [...(holders.get(line) ?? []), `${index}`]);
  const runs: number[][] = [];
  let last: string | null = null;
  for (const [at, words] of text.split("\n").entries()) {
    const [only, ...others] = holders.get(at + 1) ?? [];
    const plain = only !== undefined && others.length === 0 && !/^\s*[\d|]/.test(words) ? only : null;
    if (plain !== null && plain === last) runs.at(-1)?.push(at);
    else if (plain !== null) runs.push([at]);
    last = plain;
  }
  return runs.filter((run) => run.length > 1);
}

function shuffled(text: string, runs: readonly (readonly number[])[], draw: Draw): string {
  const lines = text.split("\n");
  for (const run of runs) {
    const left = run.map((at) => lines[at] as string);
    for (const at of run) lines[at] = left.splice(draw.between(0, left.length - 1), 1)[0] as string;
  }
  return lines.join("\n");
}

/** What a reading says, the stops of each division by name. */
const said = ({ divisions, couplers, tremulants, questions }: Reading): readonly string[] => [
  ...divisions.map(
    ({ name, stops }) =>
      `${name}: ${stops
        .map(
          (stop) =>
            `${stop.name} ${stop.pitch ? pitchName(stop.pitch) : "-"} ${stop.ranks ?? "-"} ${stop.half ?? "-"} ${stop.prepared}`,
        )
        .toSorted()
        .join(", ")}`,
  ),
  ...couplers.map(({ from, to, pitch }) => `${from} to ${to} ${pitch}`),
  `tremulants: ${tremulants.join(", ")}`,
  ...questions.map(({ text }) => text).toSorted(),
];

describe.each(INVENTED)("stops in another order are the same stops: %s", (_, lists) => {
  it.each(Object.entries(lists))("%s (seeds 1 and 2)", (_what, [list]) => {
    const text = dedented(list);
    const reading = readStoplist(text);
    const runs = runsOf(text, reading);
    for (const seed of [1, 2])
      expect(said(readStoplist(shuffled(text, runs, new Draw(seed)))), `seed ${seed}`).toEqual(said(reading));
  });
});
