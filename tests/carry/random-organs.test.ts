import { expect, test } from "vitest";
import { carry } from "../../shared-model/carry/carry.ts";
import type { Piece, Registration } from "../../shared-model/music/piece.ts";
import { chooseRow } from "../../shared-model/plan/plan.ts";
import { type PlannedPiece, workOut } from "../../shared-model/plan/planned.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { seededRandom } from "../instruments/seeded-random.ts";
import { piece } from "../plan/small-console.ts";

/** The same organ with a number for every stop's name. */
function numbered(organ: Instrument): Instrument {
  const numbers = new Map(organ.divisions.flatMap((each) => each.stops).map((stop, at) => [stop.id, `Register ${at}`]));
  return {
    ...organ,
    divisions: organ.divisions.map((division) => ({
      ...division,
      stops: division.stops.map((stop) => {
        const name = numbers.get(stop.id) as string;
        return { ...stop, name, id: `${division.name}/${name}` };
      }),
    })),
  };
}

/** Whatever a hand may have drawn: stops, couplers, tremulants and boxes by chance. */
function anyRegistration(organ: Instrument, seed: number): Registration {
  const random = seededRandom(seed);
  const some = <T>(list: readonly T[], share: number): Set<T> => new Set(list.filter(() => random() < share));
  const [low, high] = organ.divisions.filter((each) => each.kind === "manual").map((each) => each.name);
  const pedal = organ.divisions.find((each) => each.kind === "pedal")?.name;
  const boxes = organ.divisions.flatMap((each) => each.box ?? []);
  return {
    keyboards: { melody: high ?? "", accompaniment: low ?? "", ...(pedal === undefined ? {} : { bass: pedal }) },
    octaves: {},
    state: {
      drawn: some(
        organ.divisions.flatMap((each) => each.stops.filter((stop) => !stop.off)).map((stop) => stop.id),
        0.4,
      ),
      couplers: some(
        organ.couplers.filter((each) => !each.fixed).map((each) => each.name),
        0.2,
      ),
      tremulants: some(organ.tremulants, 0.4),
      boxes: new Map([...some(boxes, 0.5)].map((box) => [box, "closed" as const])),
      unisonOff: new Set(),
    },
  };
}

function drawnOn(organ: Instrument, seed: number): PlannedPiece | null {
  const empty = piece("sections:\n  - {texture: melody-over-accompaniment}\n", organ);
  const sections = empty.sections.map((section) => ({
    ...section,
    registration: anyRegistration(organ, seed),
    pinned: true,
  }));
  const music: Piece = { ...empty, sections };
  const row = chooseRow(organ, music, { count: 1 });
  // Keyboards coupled to one another in a ring cannot be judged, so they are nothing that could be carried.
  return "troubles" in row ? null : workOut(row);
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])(
  "seed %i: what a hand drew is found again on the same organ, also when every stop has another name",
  (seed) => {
    const organ = randomInstrument(seed, { manuals: 2, stops: 16, pedal: seed % 3 !== 0 });
    const plans = [1, 2, 3, 4, 5].flatMap((each) => drawnOn(organ, seed * 10 + each) ?? []);
    expect(plans.length).toBeGreaterThan(0);
    for (const plan of plans) {
      const before = plan.sections[0]?.chosen.entry;
      const [same] = carry(plan, [false], organ, 1).sections;
      expect(same).toMatchObject({ asItWas: true, stops: [], differences: [] });
      expect(same?.after?.chosen.entry.state).toEqual(before?.state);
      expect(same?.after?.chosen.entry.placings).toEqual(before?.placings);
      const other = numbered(organ);
      const [renamed] = carry(plan, [false], other, 1).sections;
      expect(renamed).toMatchObject({ asItWas: true, differences: [] });
      const place = (on: Instrument, drawn: ReadonlySet<string> | undefined): number[] =>
        on.divisions.flatMap((each) => each.stops).flatMap((stop, at) => (drawn?.has(stop.id) ? [at] : []));
      expect(place(other, renamed?.after?.chosen.entry.state.drawn)).toEqual(place(organ, before?.state.drawn));
    }
  },
);
