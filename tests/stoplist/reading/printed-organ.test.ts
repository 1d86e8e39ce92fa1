import { describe, expect, it } from "vitest";
import { footText } from "../../../shared-model/pitch/foot.ts";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";
import { Draw } from "../../instruments/seeded-random.ts";
import { mannerOf, SETTINGS, TONGUES, type WantedDivision, wantedOrgan } from "./printed-organ.ts";

const RUNS = Number(process.env.REGISTRANT_PRINTS ?? 2);

const lineOf = ({ name, stops }: Pick<WantedDivision, "name" | "stops">): string =>
  `${name.toLowerCase()}: ${stops.map((stop) => `${stop.name} ${stop.pitch ?? `${stop.ranks} ranks`}`).join(", ")}`;

/** What the list reads as; questions at the end, for there should be none. */
function read(list: string): string {
  const { divisions, questions } = readStoplist(list);
  const lines = divisions.map(({ name, stops }) =>
    lineOf({
      name: name ?? "-",
      stops: stops.map((stop) => ({
        name: stop.name,
        pitch: stop.pitch ? footText(stop.pitch) : null,
        ranks: stop.ranks,
      })),
    }),
  );
  return [...lines, ...questions.map(({ line, text }) => `? ${line} ${text}`)].join("\n");
}

describe.each(Object.entries(TONGUES))("a random organ reads the same however it is set: %s", (tongueName, tongue) => {
  const seeds = Array.from({ length: RUNS }, (_, run) => run + 1);
  const cases = Object.keys(SETTINGS).flatMap((setting) => seeds.map((seed) => [setting, seed] as const));
  it.each(cases)("%s (seed %i)", (settingName, seed) => {
    const setting = SETTINGS[settingName];
    const draw = new Draw(seed * 1009 + tongueName.length * 17 + settingName.length);
    const organ = wantedOrgan(draw, tongue);
    const list = setting?.(organ, mannerOf(draw, tongue), draw) ?? "";
    expect(read(list), list).toBe(organ.map(lineOf).join("\n"));
  });
});
