import { describe, expect, it } from "vitest";
import { compareFeet } from "../../shared-model/pitch/foot.ts";
import { FEATURES } from "./demo-features.ts";
import { DEMO_ORGANS, demoOrgan, demoText, demoTroubles } from "./demo-organs.ts";
import { instrumentFaults, stopsOf } from "./instrument-faults.ts";

describe("every demo organ", () => {
  it("is one of eleven files", () => {
    expect(DEMO_ORGANS).toEqual([
      "alcorava",
      "aldrunburg",
      "hawsermouth",
      "huettenlohe",
      "lurvaux",
      "port-lestrane",
      "sallowby",
      "torrevana",
      "weidenquell",
      "wiekenborg",
      "zinnrode",
    ]);
  });

  it.each(DEMO_ORGANS)("%s loads without trouble of any kind", (name) => {
    expect(demoTroubles(name)).toEqual([]);
  });

  it.each(DEMO_ORGANS)("%s is a valid value: every key finds its pipe", (name) => {
    expect(instrumentFaults(demoOrgan(name))).toEqual([]);
  });

  it.each(DEMO_ORGANS)("%s tells where and when and by whom it was built", (name) => {
    const { place, builder, year, history } = demoOrgan(name);
    expect([place, builder, year, history]).not.toContain(null);
    expect((history ?? "").length).toBeGreaterThan(150);
  });

  it.each(DEMO_ORGANS)("%s helps its reader with remarks", (name) => {
    expect(
      demoText(`${name}.yaml`)
        .split("\n")
        .filter((line) => /^\s*#/.test(line)).length,
    ).toBeGreaterThanOrEqual(3);
  });
});

describe("compounds of the demo organs", () => {
  const compounds = DEMO_ORGANS.flatMap((name) =>
    stopsOf(demoOrgan(name))
      .filter((stop) => stop.ranks > 1)
      .map((stop) => ({ name, stop })),
  );

  it("sound their number of ranks on every key, none twice", () => {
    for (const { name, stop } of compounds) {
      for (let key = stop.from; key <= stop.to; key += 1) {
        const sounding = stop.uses.filter((use) => use.from <= key && key <= use.to).map((use) => use.pitch);
        expect({ name, id: stop.id, key, ranks: new Set(sounding).size }).toEqual({
          name,
          id: stop.id,
          key,
          ranks: stop.ranks,
        });
      }
    }
    expect(compounds.length).toBeGreaterThanOrEqual(40);
  });

  it("break back, never forward, and stay below 9 kHz", () => {
    for (const { name, stop } of compounds) {
      const lowest = (key: number) =>
        stop.uses
          .filter((use) => use.from <= key && key <= use.to)
          .map((use) => use.pitch)
          .sort(compareFeet)[0];
      for (let key = stop.from + 1; key <= stop.to; key += 1) {
        const [before, now] = [lowest(key - 1), lowest(key)];
        if (before && now)
          expect(`${name} ${stop.id} ${compareFeet(now, before) <= 0}`).toBe(`${name} ${stop.id} true`);
      }
      for (const use of stop.uses) {
        const hertz = (demoOrgan(name).a4 * 2 ** ((use.to - 69) / 12) * 8 * use.pitch.under) / use.pitch.over;
        expect(`${name} ${stop.id} ${hertz > 9000 ? hertz : "low enough"}`).toBe(`${name} ${stop.id} low enough`);
      }
    }
  });
});

describe("what the file format can say", () => {
  it.each(FEATURES)("%s", (_, found, organs) => {
    expect(found()).toEqual([...organs].sort());
  });
});

describe("the table of the organs", () => {
  const rows = demoText("README.md")
    .split("\n")
    .filter((line) => line.startsWith("| ["))
    .map((line) => {
      const cells = line.split("|").map((cell) => cell.trim());
      const file = /^\[([a-z-]+)\.yaml\]\(\1\.yaml\)$/.exec(cells[1] ?? "")?.[1];
      return { file, organ: cells[2], keyboards: Number(cells[4]), stops: Number(cells[5]) };
    });

  it("has a row for every file", () => {
    expect(rows.map((row) => row.file).sort()).toEqual(DEMO_ORGANS);
  });

  it("tells the truth", () => {
    for (const row of rows) {
      const instrument = demoOrgan(row.file ?? "");
      const church = instrument.name.split(",")[0];
      expect(row).toEqual({
        file: row.file,
        organ: `${church}, ${instrument.year}`,
        stops: stopsOf(instrument).length,
        keyboards: instrument.divisions.filter((division) => division.kind === "manual").length,
      });
    }
  });
});
