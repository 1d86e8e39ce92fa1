import type { Kind } from "../stoplist/kind.ts";
import { hasAnyKind, kindBits, type PartSound, type Voice } from "./part-sound.ts";
import { P, type PitchSet } from "./pitch-set.ts";

/** What a listener calls the colour of a part: the most telling sound in it. */
export interface Colour {
  readonly id: string;
  /** As a musician says it. */
  readonly name: string;
  is(sound: PartSound): boolean;
  /** Whether a part of this colour can hold a stop that sounds so. */
  admits(voice: Voice): boolean;
  /** How many kinds of stop make the colour: every part of the colour holds one of each. */
  readonly makers: number;
  /** Which of them a stop is, a bit for each. */
  makes(voice: Voice): number;
}

const GREAT_REEDS = ["tuba", "horizontal-trumpet"] as const;
const TRUMPETS = ["trumpet", "cornett"] as const;
const OBOES = ["oboe", "bassoon"] as const;
const HOLLOW_REEDS = ["clarinet", "cromorne"] as const;
const OTHER_REEDS = ["dulcian", "regal", "schalmei", "musette", "horn"] as const;
const MIXTURES = ["mixture", "cymbal", "rauschpfeife"] as const;
const TIERCES = ["sesquialtera", "tertian", "tierce"] as const;

type Test = (sound: PartSound) => boolean;
interface Row {
  readonly id: string;
  readonly name: string;
  readonly test: Test;
  /** What some stop of it must be, each; the test itself where a single stop makes the colour. */
  readonly makes: readonly Test[];
  /** What no stop of it can be. */
  readonly never?: Test;
  /** Whether the test holds for every larger sound once it holds: then a lower colour can hold no such stop. */
  readonly lasting: boolean;
}

const [EIGHT, FOUR, TWELFTH, NINETEENTH] = ["8", "4", "8/3", "4/3"].map((text) => P[text] as PitchSet) as [
  PitchSet,
  PitchSet,
  PitchSet,
  PitchSet,
];
const HIGH: PitchSet = (P["2"] as PitchSet) | (P["1"] as PitchSet);

const isCornet: Test = (one) => one.cornets > 0;
const kind = (kinds: readonly Kind[]): Test => {
  const wanted = kindBits(kinds);
  return (sound) => hasAnyKind(sound, wanted);
};
const row = (id: string, name: string, test: Test, never?: Test): Row => ({
  id,
  name,
  test,
  makes: [test],
  lasting: true,
  ...(never ? { never } : {}),
});
const mixed = (id: string, name: string, test: Test, makes: readonly Test[], never?: Test): Row => ({
  id,
  name,
  test,
  makes,
  lasting: false,
  ...(never ? { never } : {}),
});

/**
 * From the most telling to the plainest; a sound has the first colour that fits. The order is common practice: a reed
 * is heard before a cornet, a third before a fifth, a fifth before an octave.
 */
const ROWS: readonly Row[] = [
  mixed("reeds-and-cornet", "reeds with cornet", (sound) => sound.reed !== 0 && sound.cornets > 0, [
    (one) => one.cornets > 0,
    (one) => one.reed !== 0,
  ]),
  row("great-reed", "great reed", kind(GREAT_REEDS), isCornet),
  row("trumpet", "trumpet", kind(TRUMPETS), isCornet),
  row("oboe", "oboe", kind(OBOES), isCornet),
  row("hollow-reed", "cromorne or clarinet", kind(HOLLOW_REEDS), isCornet),
  row("vox-humana", "vox humana", kind(["voix-humaine"]), isCornet),
  row("short-reed", "short reed", kind(OTHER_REEDS), isCornet),
  row("plenum", "chorus with mixture", kind(MIXTURES)),
  row("cornet", "cornet", kind(["cornet"])),
  row("tierce", "with the third", kind(TIERCES)),
  row("celeste", "celeste", kind(["celeste"])),
  mixed(
    "twelfth-and-nineteenth",
    "with twelfth and nineteenth",
    (sound) => (sound.plain & TWELFTH) !== 0 && (sound.plain & NINETEENTH) !== 0,
    [(one) => (one.plain & TWELFTH) !== 0, (one) => (one.plain & NINETEENTH) !== 0],
  ),
  row(
    "twelfth",
    "with the twelfth",
    (sound) => (sound.plain & TWELFTH) !== 0,
    (one) => (one.plain & NINETEENTH) !== 0,
  ),
  row("nineteenth", "with the nineteenth", (sound) => (sound.plain & NINETEENTH) !== 0),
  row("far-mutation", "with another mutation", (sound) => sound.mutation !== 0),
  mixed("principals", "principals", (sound) => sound.principal !== 0 && (sound.plain & ~EIGHT) !== 0, [
    (one) => one.principal !== 0,
    (one) => (one.plain & ~EIGHT) !== 0,
  ]),
  row(
    "principal",
    "principal 8",
    (sound) => sound.principal !== 0,
    (one) => (one.plain & ~EIGHT) !== 0,
  ),
  row("string", "string", (sound) => sound.string !== 0),
  mixed(
    "high-flutes",
    "flutes with a gap",
    (sound) => (sound.plain & EIGHT) !== 0 && (sound.plain & FOUR) === 0 && (sound.plain & HIGH) !== 0,
    [(one) => (one.plain & HIGH) !== 0, (one) => (one.plain & EIGHT) !== 0],
    (one) => (one.plain & FOUR) !== 0,
  ),
  mixed("flutes", "flutes", (sound) => (sound.plain & (sound.plain - 1)) !== 0, [(one) => one.plain !== 0]),
  row("flute", "flute alone", () => true),
];

const colourAt = (sound: PartSound): number => ROWS.findIndex((each) => each.test(sound));

/** Every colour, in order. */
export const COLOURS: readonly Colour[] = ROWS.map((each, index) => {
  const above = ROWS.slice(0, index).filter((other) => other.lasting);
  return {
    id: each.id,
    name: each.name,
    is: (sound) => colourAt(sound) === index,
    admits: (voice) => !above.some((other) => other.test(voice)) && !each.never?.(voice),
    makers: each.makes.length,
    makes: (voice) => each.makes.reduce((bits, test, at) => (test(voice) ? bits | (1 << at) : bits), 0),
  };
});

/** The colour of a sound: the first that fits. */
export const colourOf = (sound: PartSound): Colour => COLOURS[colourAt(sound)] as Colour;
