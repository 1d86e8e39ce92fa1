import { describe, expect, it } from "vitest";
import type { Instrument, Stop } from "../../shared-model/stoplist/instrument.ts";
import { FAMILIES, KINDS } from "../../shared-model/stoplist/kind.ts";
import { instrumentFaults as faults, stopsOf } from "./instrument-faults.ts";
import { randomInstrument } from "./random-instruments.ts";
import { UNIT_RANKS, VOICES } from "./random-voices.ts";
import { seededRandom } from "./seeded-random.ts";

const SEEDS = Array.from({ length: 300 }, (_, index) => index + 1);
describe("random instruments", () => {
  it("are valid values, whatever the seed", () => {
    for (const seed of SEEDS) expect({ seed, faults: faults(randomInstrument(seed)) }).toEqual({ seed, faults: [] });
  });

  it("are the same for the same seed and differ otherwise", () => {
    for (const seed of SEEDS.slice(0, 40)) expect(randomInstrument(seed)).toEqual(randomInstrument(seed));
    expect(new Set(SEEDS.map((seed) => JSON.stringify({ ...randomInstrument(seed), name: "" }))).size).toBe(
      SEEDS.length,
    );
  });

  it.each([
    [3, 1],
    [3, 3],
    [8, 2],
    [11, 2],
    [30, 2],
    [60, 3],
    [120, 5],
    [450, 7],
    [450, 1],
  ])("have %i stops on %i manuals when asked", (stops, manuals) => {
    for (const seed of SEEDS.slice(0, 25)) {
      const instrument = randomInstrument(seed, { stops, manuals });
      expect(stopsOf(instrument).length).toBe(stops);
      expect(instrument.divisions.filter((division) => division.kind === "manual").length).toBe(manuals);
      expect(faults(instrument)).toEqual([]);
    }
  });

  it("have a pedal, few couplers or a manner when asked", () => {
    for (const seed of SEEDS.slice(0, 50)) {
      const hands = randomInstrument(seed, { pedal: false, couplersAtMost: 1, stops: 9, manuals: 2 });
      expect(hands.divisions.some((division) => division.kind === "pedal")).toBe(false);
      expect(hands.couplers.length).toBeLessThanOrEqual(1);
      const feet = randomInstrument(seed, { pedal: true, manner: "unit" });
      expect(feet.divisions.some((division) => division.kind === "pedal")).toBe(true);
    }
  });

  it("refuse sizes that contradict each other", () => {
    expect(() => randomInstrument(1, { stops: 2, manuals: 3 })).toThrow(
      "No organ of 2 stops on 3 manuals can be made here.",
    );
    expect(() => randomInstrument(1, { stops: 2000 })).toThrow(RangeError);
  });

  it("cover what an organ may have", () => {
    const all = SEEDS.map((seed) => randomInstrument(seed));
    const share = (test: (instrument: Instrument) => boolean): number => all.filter(test).length;
    const anyStop = (test: (stop: Stop) => boolean) => share((organ) => stopsOf(organ).some(test));
    const seen = {
      pedalless: share((organ) => organ.divisions.every((division) => division.kind !== "pedal")),
      pullDown: share((organ) => organ.couplers.some((coupler) => coupler.fixed)),
      divided: anyStop((stop) => stop.half !== null),
      off: anyStop((stop) => stop.off && stop.note !== null),
      short: anyStop((stop) => stop.half === null && stop.from > 47 && stop.kinds[0] === "celeste"),
      borrowedBass: anyStop(
        (stop) => stop.ranks === 1 && stop.uses.length === 2 && stop.uses[0]?.rank !== stop.uses[1]?.rank,
      ),
      breaks: anyStop((stop) => stop.uses.length > stop.ranks && stop.ranks > 1),
      effect: anyStop((stop) => stop.ranks === 0),
      thirds: anyStop((stop) => stop.tierce),
      shared: share((organ) => {
        const users = new Map<string, number>();
        for (const stop of stopsOf(organ))
          for (const use of stop.uses) users.set(use.rank, (users.get(use.rank) ?? 0) + 1);
        return organ.ranks.some((rank) => (users.get(rank.id) ?? 0) > 3);
      }),
      shortKeyboard: share((organ) => organ.divisions.some((division) => division.compass.low > 47)),
      shortOctave: share((organ) => organ.divisions.some((division) => division.compass.missing.length > 1)),
      floating: share((organ) => organ.divisions.some((division) => division.kind === "floating")),
      sharedBox: share((organ) => organ.divisions.filter((division) => division.box === "box").length > 1),
      superCoupler: share((organ) => organ.couplers.some((coupler) => coupler.pitch === 4)),
      subCoupler: share((organ) => organ.couplers.some((coupler) => coupler.pitch === 16)),
      through: share((organ) => organ.couplers.some((coupler) => coupler.through)),
      unisonOff: share((organ) => organ.unisonOff.length > 0),
      tremulantAll: share((organ) => organ.tremulants[0] === "all"),
      tremulants: share((organ) => organ.tremulants.length > 1),
      ventils: share((organ) => organ.aids.ventils.length > 0),
      large: share((organ) => stopsOf(organ).length > 150),
      small: share((organ) => stopsOf(organ).length < 9),
    };
    const tooRare = Object.entries(seen).filter(([, count]) => count < 5);
    expect(tooRare).toEqual([]);
    const kinds = new Set(all.flatMap((organ) => stopsOf(organ).flatMap((stop) => stop.kinds)));
    expect(KINDS.filter((kind) => !kinds.has(kind) && kind !== "musette")).toEqual([]);
  });
});

describe("the stream of numbers", () => {
  it("stays in [0, 1) and is even", () => {
    const next = seededRandom(7);
    const tenths = new Array<number>(10).fill(0);
    for (let turn = 0; turn < 10_000; turn += 1) {
      const at = Math.floor(next() * 10);
      tenths[at] = (tenths[at] ?? Number.NaN) + 1;
    }
    expect(tenths.length).toBe(10);
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(120);
  });
});

describe("the table of voices", () => {
  it("uses the words of the model", () => {
    for (const { family, kinds } of [...VOICES, ...UNIT_RANKS]) {
      expect(FAMILIES).toContain(family);
      for (const kind of kinds) expect(KINDS).toContain(kind);
    }
  });
});
