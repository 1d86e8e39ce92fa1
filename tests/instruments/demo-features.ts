import { footOf } from "../../shared-model/pitch/foot.ts";
import { keyFromText } from "../../shared-model/pitch/key.ts";
import { type Understanding, understandName } from "../../shared-model/stoplist/glossary/glossary.ts";
import type { Coupler, Division, Instrument, RankUse, Stop } from "../../shared-model/stoplist/instrument.ts";
import { DEMO_ORGANS, demoOrgan } from "./demo-organs.ts";
import { stopsOf } from "./instrument-faults.ts";

/** Organs for which the test holds, in order of their names. */
const where = (holds: (instrument: Instrument) => boolean): string[] =>
  DEMO_ORGANS.filter((name) => holds(demoOrgan(name)));
const whereDivision = (holds: (division: Division) => boolean): string[] =>
  where(({ divisions }) => divisions.some(holds));
const whereStop = (holds: (stop: Stop, instrument: Instrument) => boolean): string[] =>
  where((instrument) => stopsOf(instrument).some((stop) => holds(stop, instrument)));
const whereCoupler = (holds: (coupler: Coupler) => boolean): string[] => where(({ couplers }) => couplers.some(holds));

const plain = (stop: Stop): boolean => stop.ranks === 1;
const users = (instrument: Instrument, rank: string): readonly Stop[] =>
  stopsOf(instrument).filter((stop) => stop.uses.some((use) => use.rank === rank));
const starts = (uses: readonly RankUse[]): number => new Set(uses.map((use) => use.from)).size;
/** What the glossary alone would make of the stop's name in its place. */
const known = (stop: Stop, instrument: Instrument): Understanding => {
  const pedal = instrument.divisions.some((division) => division.name === stop.division && division.kind === "pedal");
  return understandName(stop.name, { pedal, pitch: stop.pitch, ranks: stop.ranks > 1 ? stop.ranks : null });
};

/** What the file format can say, and which of the organs say it. */
export const FEATURES: readonly (readonly [feature: string, found: () => string[], organs: readonly string[]])[] = [
  [
    "one manual without pedal stops",
    () => where(({ divisions }) => divisions.filter((division) => division.stops.length > 0).length === 1),
    ["alcorava", "torrevana"],
  ],
  [
    "no pedal at all",
    () => where(({ divisions }) => divisions.every((division) => division.kind !== "pedal")),
    ["alcorava"],
  ],
  ["five keyboards", () => whereDivision((division) => division.keyboard === 5), ["aldrunburg"]],
  ["a floating division", () => whereDivision((division) => division.kind === "floating"), ["aldrunburg"]],
  ["a pedal without pipes", () => whereDivision((division) => division.stops.length === 0), ["torrevana"]],
  [
    "keys that are missing",
    () => whereDivision((division) => division.compass.missing.length > 0),
    ["alcorava", "lurvaux", "torrevana", "wiekenborg", "zinnrode"],
  ],
  [
    "a short octave",
    () => whereDivision((division) => division.compass.missing.length === 4),
    ["alcorava", "torrevana", "wiekenborg"],
  ],
  ["a keyboard that begins late", () => whereDivision((division) => division.compass.low > 47), ["lurvaux"]],
  ["a pedal below C2", () => whereDivision((division) => division.compass.low < 36), ["lurvaux"]],
  [
    "the compass that is understood when none is written",
    () =>
      where((instrument) =>
        instrument.divisions.every(
          ({ compass, kind }) => compass.low === 36 && compass.high === (kind === "pedal" ? 65 : 91),
        ),
      ),
    ["port-lestrane", "sallowby"],
  ],
  ["bass and treble halves", () => whereStop((stop) => stop.half === "bass"), ["alcorava"]],
  [
    "halves that meet elsewhere than at C4",
    () => whereStop((stop) => stop.half === "treble" && stop.from === keyFromText("C#4")),
    ["alcorava"],
  ],
  [
    "a treble half alone",
    () =>
      whereStop(
        (stop, instrument) =>
          stop.half === "treble" &&
          !stopsOf(instrument).some((other) => other.half === "bass" && other.name === stop.name),
      ),
    ["alcorava"],
  ],
  [
    "mixtures with breaks",
    () => whereStop((stop) => stop.ranks > 1 && starts(stop.uses) > 1),
    [
      "alcorava",
      "aldrunburg",
      "hawsermouth",
      "huettenlohe",
      "lurvaux",
      "port-lestrane",
      "sallowby",
      "wiekenborg",
      "zinnrode",
    ],
  ],
  [
    "single rows that break",
    () =>
      whereStop(
        (stop, instrument) =>
          plain(stop) && starts(stop.uses) > 1 && stop.uses.every((use) => users(instrument, use.rank).length === 1),
      ),
    ["aldrunburg", "torrevana"],
  ],
  [
    "a compound that begins late",
    () => whereStop((stop) => stop.ranks > 1 && stop.half === null && stop.from > 47),
    ["aldrunburg", "lurvaux", "port-lestrane", "sallowby"],
  ],
  [
    "a third in a mixture, by its composition",
    () =>
      whereStop(
        (stop) => stop.tierce && stop.kinds[0] === "mixture" && stop.uses.some((use) => use.pitch === footOf(8, 5)),
      ),
    ["huettenlohe", "aldrunburg", "zinnrode"],
  ],
  [
    "a third that the file states",
    () => whereStop((stop) => stop.tierce && stop.id === "Great/Mixture"),
    ["hawsermouth"],
  ],
  [
    "a stop that begins late",
    () => whereStop((stop) => plain(stop) && stop.half === null && stop.from === 48 && stop.kinds.includes("celeste")),
    ["aldrunburg", "hawsermouth", "huettenlohe", "port-lestrane"],
  ],
  [
    "a stop that ends early",
    () =>
      whereStop(
        (stop, { divisions }) =>
          stop.half === null &&
          divisions.some((division) => division.name === stop.division && division.compass.high > stop.to),
      ),
    ["aldrunburg", "weidenquell"],
  ],
  [
    "a borrowed bass",
    () =>
      whereStop(
        (stop, instrument) =>
          plain(stop) &&
          stop.uses.length === 2 &&
          stop.uses[0]?.pitch === stop.uses[1]?.pitch &&
          users(instrument, stop.uses[0]?.rank ?? "").length > 1,
      ),
    ["sallowby", "weidenquell", "zinnrode"],
  ],
  [
    "a borrowed bass from another division",
    () =>
      whereStop(
        (stop, instrument) =>
          plain(stop) &&
          stop.uses.length === 2 &&
          users(instrument, stop.uses[0]?.rank ?? "").some(
            (other) => other.division !== stop.division && other.uses.length === 1,
          ) &&
          stop.uses[0]?.pitch === stop.uses[1]?.pitch &&
          stop.name === "Clarabella",
      ),
    ["sallowby"],
  ],
  [
    "a rank drawn at several pitches",
    () =>
      whereStop((stop, instrument) =>
        stop.uses.some(
          (use) => new Set(users(instrument, use.rank).map((other) => other.pitch)).size > 1 && plain(stop),
        ),
      ),
    ["aldrunburg", "hawsermouth", "weidenquell"],
  ],
  [
    "the same pipes in two divisions",
    () =>
      whereStop(
        (stop, instrument) =>
          stop.uses.length === 1 &&
          users(instrument, stop.uses[0]?.rank ?? "").some(
            (other) => other.division !== stop.division && other.pitch === stop.pitch && other.uses.length === 1,
          ),
      ),
    ["aldrunburg", "hawsermouth", "huettenlohe", "weidenquell"],
  ],
  [
    "a kind given for a name that no glossary knows",
    () => whereStop((stop, instrument) => !known(stop, instrument).sure),
    ["wiekenborg"],
  ],
  [
    "a family given against the glossary",
    () =>
      whereStop((stop, instrument) => {
        const name = known(stop, instrument);
        return name.sure && name.family !== stop.family && stop.name === "Tuba";
      }),
    ["aldrunburg"],
  ],
  ["two kinds for one stop", () => whereStop((stop) => stop.kinds.join() === "regal,dulcian"), ["wiekenborg"]],
  [
    "strength set by ear: two of one name and pitch that differ",
    () =>
      whereStop((stop, instrument) =>
        stopsOf(instrument).some(
          (other) =>
            other.name === stop.name &&
            other.pitch === stop.pitch &&
            other.ranks === stop.ranks &&
            other.strength !== stop.strength,
        ),
      ),
    ["aldrunburg", "lurvaux"],
  ],
  [
    "a stop that is off, with a note",
    () => whereStop((stop) => stop.off && stop.note !== null),
    ["aldrunburg", "hawsermouth"],
  ],
  [
    "a note on a stop that works",
    () => whereStop((stop) => !stop.off && stop.note !== null),
    ["aldrunburg", "hawsermouth", "huettenlohe", "lurvaux", "port-lestrane", "sallowby", "wiekenborg"],
  ],
  ["percussion", () => whereStop((stop) => stop.family === "percussion"), ["aldrunburg"]],
  [
    "no box at all",
    () => where(({ divisions }) => divisions.every((division) => division.box === null)),
    ["alcorava", "lurvaux", "torrevana", "weidenquell", "wiekenborg", "zinnrode"],
  ],
  [
    "one box for two divisions",
    () =>
      where(({ divisions }) => {
        const boxes = divisions.map((division) => division.box).filter((box) => box !== null);
        return new Set(boxes).size < boxes.length;
      }),
    ["aldrunburg"],
  ],
  [
    "two boxes",
    () => where(({ divisions }) => new Set(divisions.map((division) => division.box)).size > 2),
    ["aldrunburg"],
  ],
  [
    "a tremulant for a division",
    () => where(({ tremulants }) => tremulants.length > 0 && !tremulants.includes("all")),
    ["aldrunburg", "hawsermouth", "port-lestrane", "sallowby", "torrevana", "wiekenborg"],
  ],
  ["a tremulant for all", () => where(({ tremulants }) => tremulants.includes("all")), ["lurvaux", "zinnrode"]],
  [
    "a coupler at 4",
    () => whereCoupler((coupler) => coupler.pitch === 4 && coupler.from !== coupler.to),
    ["aldrunburg", "hawsermouth", "huettenlohe", "sallowby"],
  ],
  [
    "a coupler at 16",
    () => whereCoupler((coupler) => coupler.pitch === 16 && coupler.from !== coupler.to),
    ["aldrunburg", "hawsermouth", "huettenlohe", "port-lestrane"],
  ],
  [
    "octave couplers within a division",
    () => whereCoupler((coupler) => coupler.from === coupler.to),
    ["aldrunburg", "hawsermouth", "port-lestrane"],
  ],
  ["a coupler that is always on", () => whereCoupler((coupler) => coupler.fixed), ["torrevana"]],
  [
    "a coupler that carries on",
    () =>
      where(
        ({ couplers }) => couplers.some((coupler) => coupler.through) && couplers.some((coupler) => !coupler.through),
      ),
    ["aldrunburg", "zinnrode"],
  ],
  [
    "couplers that all carry on",
    () =>
      where(
        ({ couplers }) =>
          couplers.length > 1 && couplers.filter(({ from, to }) => from !== to).every((coupler) => coupler.through),
      ),
    ["port-lestrane"],
  ],
  ["no coupler", () => where(({ couplers }) => couplers.length === 0), ["alcorava"]],
  ["unison off", () => where(({ unisonOff }) => unisonOff.length > 0), ["aldrunburg", "hawsermouth"]],
  [
    "general and divisional pistons",
    () => where(({ aids }) => aids.generals > 0 && Object.keys(aids.divisionals).length > 0),
    ["aldrunburg", "hawsermouth"],
  ],
  ["one free combination", () => where(({ aids }) => aids.generals === 1 && aids.levels === 1), ["huettenlohe"]],
  [
    "a crescendo pedal or roller",
    () => where(({ aids }) => aids.crescendoPedal),
    ["aldrunburg", "hawsermouth", "huettenlohe"],
  ],
  ["ventils", () => where(({ aids }) => aids.ventils.length > 0), ["port-lestrane"]],
  [
    "toys",
    () => where(({ toys }) => toys.length > 0),
    ["alcorava", "aldrunburg", "lurvaux", "port-lestrane", "torrevana", "wiekenborg", "zinnrode"],
  ],
  ["a dry room", () => where(({ room }) => room === "dry"), ["weidenquell"]],
  [
    "a live room",
    () => where(({ room }) => room === "live"),
    ["aldrunburg", "lurvaux", "port-lestrane", "torrevana", "wiekenborg"],
  ],
  [
    "a pitch other than 440",
    () => where(({ a4 }) => a4 !== 440),
    ["alcorava", "huettenlohe", "lurvaux", "port-lestrane", "wiekenborg", "zinnrode"],
  ],
];
