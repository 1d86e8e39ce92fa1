import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { footText } from "../../../shared-model/pitch/foot.ts";
import { readPitch } from "../../../shared-model/pitch/reading.ts";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";
import { readingJson } from "../../../shared-model/stoplist/reading/reading-json.ts";

interface ExpectedStop {
  name: string;
  pitch: string | null;
  sounds?: string;
  implied?: string;
  ranks?: number | string;
  half?: "bass" | "treble" | string[];
  prepared?: boolean;
  at?: string;
}
interface ExpectedDivision {
  name: string | null;
  kind: "manual" | "pedal";
  keyboard: string | null;
  block?: number;
  enclosed?: boolean;
  count: number;
  stops: ExpectedStop[];
}
interface Expected {
  divisions: ExpectedDivision[];
  couplers: { from: string; to: string; pitch: string }[];
  tremulants: { scope: string | null }[];
  "total-stops": number;
}

const folder = new URL("../../published/stoplists/", import.meta.url);
const lists = readdirSync(folder)
  .filter((file) => file.endsWith(".txt"))
  .map((file) => file.replace(/\.txt$/, ""));

const KEYBOARDS: Record<string, number> = { I: 1, II: 2, III: 3, IV: 4, V: 5, "Erstes Manual": 1, "Zweites Manual": 2 };
/** Abbreviations that the lists themselves use in their couplers. */
const SHORT: Record<string, string> = { HW: "Hauptwerk", BW: "Brustwerk", Ped: "Pedal" };

/** Blocks without headings are parts of one manual. */
function merged(divisions: ExpectedDivision[]): ExpectedDivision[] {
  if (!divisions.every((one) => one.block !== undefined)) return divisions;
  const [first] = divisions as [ExpectedDivision];
  return [
    {
      ...first,
      count: divisions.reduce((sum, one) => sum + one.count, 0),
      stops: divisions.flatMap((one) => one.stops),
    },
  ];
}

function divisionNamed(words: string, divisions: ExpectedDivision[]): string {
  const found =
    divisions.find((one) => one.name === words) ??
    divisions.find((one) => one.name === SHORT[words]) ??
    divisions.find((one) => one.keyboard !== null && KEYBOARDS[one.keyboard] === KEYBOARDS[words]) ??
    divisions.find((one) => one.name === `${words} Organ`);
  return found?.name ?? `no division ${words}`;
}

const largest = (ranks: number | string | undefined): number | null =>
  ranks === undefined ? null : Math.max(...String(ranks).split("-").map(Number));

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

describe.each(lists)("%s", (list) => {
  const text = readFileSync(new URL(`${list}.txt`, folder), "utf8");
  const expected = parse(readFileSync(new URL(`${list}.expected.yaml`, folder), "utf8")) as Expected;
  const divisions = merged(expected.divisions);
  const reading = readStoplist(text);
  const json = readingJson(reading);

  it("has its divisions and counts", () => {
    expect(
      json.divisions.map(({ name, kind, keyboard, stops }) => ({ name, kind, keyboard, count: stops.length })),
    ).toEqual(
      divisions.map(({ name, kind, keyboard, count }) => ({
        name,
        kind,
        keyboard: keyboard === null ? null : KEYBOARDS[keyboard],
        count,
      })),
    );
    expect(json.divisions.flatMap((one) => one.stops)).toHaveLength(expected["total-stops"]);
  });

  it("has its stops", () => {
    const wanted = divisions.flatMap((division) =>
      division.stops.map((stop) => ({
        division: division.name,
        name: stop.name,
        ranks: largest(stop.ranks),
        half: Array.isArray(stop.half) ? "both" : (stop.half ?? null),
        printed: stop.pitch,
        prepared: stop.prepared ?? false,
      })),
    );
    const read = reading.divisions.flatMap((division) =>
      division.stops.map(({ name, ranks, half, printed, prepared }) => {
        const foot = printed === null ? null : readPitch(printed).foot;
        return { division: division.name, name, ranks, half, printed: foot && footText(foot), prepared };
      }),
    );
    expect(read).toEqual(wanted);
  });

  it("has their sounding pitches", () => {
    const read = json.divisions.flatMap((one) => one.stops);
    const wanted = divisions.flatMap((division) => division.stops);
    read.forEach((stop, index) => {
      const { name, pitch, sounds, implied } = wanted[index] as ExpectedStop;
      const settled = sounds ?? pitch;
      const label = `${name} on line ${stop.line}`;
      if (settled !== null) expect(stop.pitch, label).toBe(settled);
      else if (implied === undefined) expect(stop.pitch, label).toBeNull();
      else expect(stop.pitch, label).toBe(implied);
    });
  });

  it("has its boxes", () => {
    for (const [index, division] of divisions.entries()) {
      if (division.enclosed) expect(reading.divisions[index]?.enclosed, division.name ?? "").toBe(true);
    }
  });

  it("has its couplers and tremulants", () => {
    const wanted = expected.couplers.map(
      ({ from, to, pitch }) => `${divisionNamed(from, divisions)} to ${divisionNamed(to, divisions)} ${pitch}`,
    );
    expect(json.couplers.map(({ from, to, pitch }) => `${from} to ${to} ${pitch}`).sort(byText)).toEqual(
      wanted.sort(byText),
    );
    const shaken = expected.tremulants.map(({ scope }) => (scope === null || scope === "whole organ" ? "all" : scope));
    expect([...json.tremulants].sort(byText)).toEqual(shaken.sort(byText));
  });

  it("gives lines on which the stops stand", () => {
    const lines = text.split("\n");
    for (const stop of json.divisions.flatMap((one) => one.stops)) {
      const [word = ""] = stop.name.split(/[\s-]/);
      expect(lines[stop.line - 1], `${stop.name} on line ${stop.line}`).toContain(word);
    }
  });
});
