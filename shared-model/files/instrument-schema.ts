import * as z from "zod";
import { FAMILIES, KINDS } from "../stoplist/kind.ts";
import { VISIT_TOPICS, type VisitTopic } from "../stoplist/visit-topic.ts";

const A4 = { low: 370, high: 500 } as const;

/** Text of at most `longest` letters; the schema's messages say what is expected and stand in sentences. */
export const words = (expected: string, longest = 120): z.ZodString =>
  z
    .string({ error: expected })
    .min(1, { error: expected })
    .max(longest, { error: `${expected}, not longer than ${longest} letters` });

/** A whole number between bounds. */
export const wholeNumber = (what: string, low: number, high: number): z.ZodInt => {
  const error = `${what}, a whole number from ${low} to ${high}`;
  // What is too large to be whole is out of bounds as well, and said once.
  return z.int({ error, abort: true }).min(low, { error }).max(high, { error });
};

/** True or false. */
const yesOrNo = (): z.ZodBoolean => z.boolean({ error: "true or false" });

const list = <T extends z.ZodType>(item: T, expected: string, most: number): z.ZodArray<T> =>
  z.array(item, { error: expected }).max(most, { error: `${expected}, at most ${most}` });

/** A key such as `C4`. */
export const keyName = (): z.ZodString => words("a key such as C2, F#4 or Eb5", 12);

/** A pitch as a number of feet or as text. */
const pitchValue = () =>
  z
    .union(
      [
        z.number({ error: "a pitch" }).max(1000, { error: "a pitch in feet, such as 8 or 2 2/3" }),
        words("a pitch", 40),
      ],
      {
        error: "a pitch in feet, such as 8 or 2 2/3",
      },
    )
    .describe("Pitch in feet: 8, 2 2/3, 1 3/5.");

const kindOrKinds = z.union(
  [
    z.enum(KINDS, { error: "a kind of stop" }),
    list(z.enum(KINDS, { error: "a kind of stop" }), "a list of kinds", 6).min(1, { error: "at least one kind" }),
  ],
  { error: "a kind of stop, or a list of kinds" },
);

const strength = () =>
  wholeNumber("1 (very soft) to 5 (very strong)", 1, 5).describe(
    "Strength by ear: 1 very soft, 2 soft, 3 middling (a principal 8), 4 strong, 5 very strong.",
  );

const brightness = () =>
  wholeNumber("1 (dull) to 5 (bright)", 1, 5).describe(
    "Brightness by ear: 1 dull, 2 rather dull, 3 as usual for such a stop, 4 rather bright, 5 bright.",
  );

/** A stop in the long form. */
export const stopSchema = z.looseObject(
  {
    name: words("the stop's name").describe("As on the jamb. Pitch, ranks (Roman) and half may stand behind it."),
    pitch: pitchValue().optional(),
    ranks: wholeNumber("the number of ranks", 1, 20).optional().describe("Ranks sounding together on a key."),
    composition: z
      .record(keyName(), list(pitchValue(), "a list of pitches", 20), {
        error: "keys with lists of pitches, such as {C2: [1 1/3, 1, 2/3]}",
      })
      .refine((rows) => Object.keys(rows).length <= 24, { error: "keys with lists of pitches, at most 24" })
      .optional()
      .describe("From each key on, the pitches of a compound: {C2: [1 1/3, 1], C4: [2, 1 1/3]}."),
    kind: kindOrKinds.optional().describe("What the stop is; when left out, the glossary tells it from the name."),
    family: z.enum(FAMILIES, { error: "a family of stops" }).optional(),
    strength: strength().optional(),
    brightness: brightness().optional(),
    half: z.enum(["bass", "treble"], { error: "bass or treble" }).optional().describe("Which half of a divided stop."),
    from: keyName().optional().describe("Lowest key of its own pipes."),
    to: keyName().optional().describe("Highest key of its own pipes."),
    rank: words("the id of a rank").optional().describe("Draws this rank of ranks, shared with other stops."),
    "same-as": words("a stop").optional().describe("Has the same pipes at the same pitch as this stop: Swell/Oboe 8."),
    "bass-from": words("a stop").optional().describe("Below `from` it borrows the pipes of this stop."),
    tierce: yesOrNo().optional().describe("Whether a compound holds a third."),
    off: z
      .union(
        [
          yesOrNo(),
          words("what is wrong with it", 500).refine((text) => !/^(?:yes|no|on|off|true|false)$/i.test(text), {
            error: "true, false, or in a few words what is wrong with the stop",
          }),
        ],
        { error: "true, false, or in a few words what is wrong with the stop" },
      )
      .optional()
      .describe("Dead, out of tune or ciphering: never proposed."),
    note: words("a note", 2000).optional(),
  },
  { error: "a stop" },
);

/** The compass in its long form. */
export const compassSchema = z.looseObject(
  {
    low: keyName(),
    high: keyName(),
    missing: list(keyName(), "a list of keys", 60).optional().describe("Keys between them that do not exist."),
  },
  { error: "the lowest and the highest key, such as C2-G6" },
);

/** A division without a look into its stops, which are read one by one. */
export const divisionSchema = z.looseObject(
  {
    name: words("the division's name"),
    kind: z.enum(["manual", "pedal", "floating"], { error: "manual, pedal or floating" }),
    keyboard: wholeNumber("the number of the manual, counted from the lowest", 1, 9).optional(),
    compass: z
      .union([words("a compass", 24), compassSchema], { error: "the lowest and the highest key, such as C2-G6" })
      .optional()
      .describe("C2-G6, or {low: C2, high: C6, missing: [C#2]}."),
    "divided-at": keyName().optional().describe("First key of the treble half of divided stops; C4 when left out."),
    enclosed: z
      .union([yesOrNo(), words("the name of a box")], { error: "true, false or the name of a box" })
      .optional()
      .describe("true, or the name of a box that several divisions share."),
    stops: list(z.unknown(), "a list of stops", 2000).optional(),
  },
  { error: "a division" },
);

/** A row of pipes that several stops draw. */
export const rankSchema = z.looseObject(
  {
    id: words("a short name of the rank"),
    longest: pitchValue().describe("Length of its first pipe, in feet at C2."),
    pipes: wholeNumber("the number of pipes", 1, 122),
    kind: kindOrKinds.optional(),
    family: z.enum(FAMILIES, { error: "a family of stops" }).optional(),
    strength: strength().optional(),
  },
  { error: "a rank, such as {id: gedackt, longest: 16, pipes: 97}" },
);

/** A coupler in its long form. */
export const couplerSchema = z.looseObject(
  {
    coupler: words("a coupler such as Swell to Great", 260),
    fixed: yesOrNo().optional().describe("Always on, without a knob."),
    through: yesOrNo().optional().describe("Carries on what is coupled to its first division in its turn."),
  },
  { error: "a coupler such as Swell to Great" },
);

/** What makes changes easier at the console. */
export const aidsSchema = z.looseObject(
  {
    generals: wholeNumber("the number of general pistons", 0, 999).optional(),
    divisionals: z
      .record(words("a division"), wholeNumber("the number of pistons", 0, 99), {
        error: "divisions with their number of pistons, such as {Great: 6}",
      })
      .optional(),
    levels: wholeNumber("the number of memory levels", 0, 100_000).optional(),
    "crescendo-pedal": yesOrNo().optional(),
    ventils: list(words("a division"), "a list of divisions", 40)
      .optional()
      .describe("Divisions whose reeds and mixtures are shut off by a ventil."),
  },
  { error: "keys such as generals: 8" },
);

const centimetres = (what: string) =>
  z
    .number({ error: `${what}, in centimetres` })
    .min(1, { error: `${what}, in centimetres` })
    .max(400, { error: `${what}, at most 400 cm` })
    .optional();

/** How the console is laid out for the hands: what a plan of changes reckons with. */
export const consoleBuildSchema = z.looseObject(
  {
    action: z
      .enum(["electric", "mechanical", "tabs"], { error: "electric, mechanical or tabs" })
      .optional()
      .describe("How stops are moved: light electric knobs, mechanical ones, or tabs."),
    left: list(words("a division"), "a list of divisions", 40).optional().describe("Divisions at the player's left."),
    right: list(words("a division"), "a list of divisions", 40).optional().describe("Divisions at the player's right."),
    "keys-to-knobs": centimetres("the way from the keys to the nearest knobs"),
    "knob-to-knob": centimetres("the way from knob to knob"),
    "division-to-division": centimetres("the way from one division to the next in a jamb"),
    "jamb-to-jamb": centimetres("the way from jamb to jamb"),
  },
  { error: "keys such as action: mechanical" },
);

const answer = (about: string) =>
  z
    .union([z.string().max(5000), z.number(), z.null()], { error: "an answer in words, not longer than 5000 letters" })
    .optional()
    .describe(about);

/** What was answered on a visit; an answer may be a number, or not there yet. */
export const visitSchema = z.looseObject(
  Object.fromEntries(Object.entries(VISIT_TOPICS).map(([topic, about]) => [topic, answer(about)])) as Record<
    VisitTopic,
    ReturnType<typeof answer>
  >,
  { error: "keys such as blower: behind the console" },
);

const names = (expected: string) => list(words(expected), `a list of names: ${expected}`, 60);

/** The whole file without a look into divisions, ranks and couplers, which are read one by one. */
export const organSchema = z.looseObject(
  {
    registrant: words("instrument/1"),
    name: words("the name of the organ or its church", 200),
    place: words("the place", 200).optional(),
    builder: words("the builder", 200).optional(),
    year: wholeNumber("the year it was built", 1000, 2999).optional(),
    history: words("text", 100_000).optional(),
    note: words("text", 100_000).optional(),
    a4: z
      .number({ error: `the pitch of A4 in hertz, from ${A4.low} to ${A4.high}` })
      .min(A4.low, { error: `the pitch of A4 in hertz, from ${A4.low} to ${A4.high}` })
      .max(A4.high, { error: `the pitch of A4 in hertz, from ${A4.low} to ${A4.high}` })
      .optional(),
    temperament: words("the temperament", 200).optional(),
    room: z.enum(["dry", "medium", "live"], { error: "dry, medium or live" }).optional(),
    divisions: list(z.unknown(), "a list of divisions", 40),
    ranks: list(z.unknown(), "a list of ranks", 2000).optional(),
    couplers: list(z.unknown(), "a list of couplers", 300).optional(),
    "through-couplers": yesOrNo().optional().describe("What holds for couplers that do not say through."),
    tremulants: names("a division, or all").optional(),
    "unison-off": names("a division").optional(),
    aids: z.unknown().optional(),
    console: z.unknown().optional(),
    toys: names("a toy such as Zimbelstern").optional(),
    visit: z.unknown().optional(),
  },
  { error: "an organ" },
);

/** The whole form of an instrument file, for the JSON Schema that editors use. */
export const instrumentSchema = organSchema.extend({
  registrant: z.literal("instrument/1"),
  divisions: z.array(
    divisionSchema.extend({
      stops: z
        .array(z.union([z.string().describe("Principal 8, Mixtur IV 1 1/3, Dulzian 8 bass"), stopSchema]))
        .optional(),
    }),
  ),
  ranks: z.array(rankSchema).optional(),
  couplers: z.array(z.union([z.string().describe("Swell to Great, Swell to Great 4"), couplerSchema])).optional(),
  aids: aidsSchema.optional(),
  console: consoleBuildSchema.optional(),
  visit: visitSchema.optional(),
});
