import * as z from "zod";
import { DYNAMICS, ROLES, TRADITIONS } from "../music/texture.ts";
import { keyName, wholeNumber, words } from "./instrument-schema.ts";

const SOUNDING = "16, 8, 4 or 2, the pitch in feet at which the part sounds";
const sounding = () =>
  z
    .literal([16, 8, 4, 2], { error: SOUNDING })
    .describe("Pitch in feet at which the part sounds: 8 as written, 4 an octave higher, 16 an octave lower.");

/** Notes that a beat can be, in quarters. */
export const BEATS = {
  whole: 4,
  "dotted half": 3,
  half: 2,
  "dotted quarter": 1.5,
  quarter: 1,
  "dotted eighth": 0.75,
  eighth: 0.5,
  sixteenth: 0.25,
} as const;

/** A part written by hand. */
export const partSchema = z.looseObject(
  {
    part: words("the name of the part").optional().describe("Its role, with -1, -2 where a role occurs twice."),
    role: z.enum(ROLES, { error: "a role" }),
    hands: z.enum(["right", "left", "both", "feet"], { error: "right, left, both or feet" }),
    low: keyName().describe("Lowest written key."),
    high: keyName().describe("Highest written key."),
    sounding: sounding().optional(),
    place: z.enum(["treble", "alto", "tenor", "bass"], { error: "treble, alto, tenor or bass" }).optional(),
    optional: z.boolean({ error: "true or false" }).optional().describe("Complete without it."),
  },
  { error: "a part" },
);

const TEMPO = "slow, moderate, fast, or {bpm: 72, beat: quarter}";

/** Keys that a section and a registration share: what is played. */
export const musicShape = {
  texture: words("the id of a texture").optional().describe("An id of the catalogue (registrant textures lists them)."),
  parts: z
    .array(partSchema, { error: "a list of parts" })
    .min(1, { error: "at least one part" })
    .max(12, { error: "at most 12 parts" })
    .optional()
    .describe("Parts written by hand, instead of a texture."),
  tradition: z.enum(TRADITIONS, { error: "a tradition" }).optional(),
  dynamic: z.enum(DYNAMICS, { error: "a dynamic" }).optional(),
  tempo: z
    .union(
      [
        z.enum(["slow", "moderate", "fast"], { error: TEMPO }),
        z.looseObject(
          {
            bpm: z
              .number({ error: "beats in a minute, from 10 to 400" })
              .min(10, { error: "beats in a minute, from 10 to 400" })
              .max(400, { error: "beats in a minute, from 10 to 400" }),
            beat: z
              .enum(Object.keys(BEATS) as (keyof typeof BEATS)[], { error: "the note that is one beat" })
              .optional(),
          },
          { error: TEMPO },
        ),
      ],
      { error: TEMPO },
    )
    .optional(),
  ranges: z
    .record(
      words("a part"),
      z
        .array(keyName(), { error: "the lowest and the highest key, such as [C4, A5]" })
        .length(2, { error: "the lowest and the highest key, such as [C4, A5]" }),
      {
        error: "parts with their ranges, such as {melody: [C4, A5]}",
      },
    )
    .optional()
    .describe("Lowest and highest written key of a part."),
  sounding: z.record(words("a part"), sounding(), { error: "parts with pitches, such as {melody: 4}" }).optional(),
  bars: z
    .union([words("bar numbers"), z.number({ error: "bar numbers" })], { error: "bar numbers, such as 1-24" })
    .optional(),
  name: words("a name", 200).optional(),
  note: words("a note", 2000).optional(),
};

/** A section file. */
export const sectionSchema = z.looseObject(
  { registrant: z.literal("section/1", { error: "section/1" }), ...musicShape },
  { error: "a section" },
);

const stopList = z
  .array(words("a stop such as Principal 8"), { error: "a list of stops" })
  .max(500, { error: "at most 500 stops" });
const nameList = (expected: string) =>
  z.array(words(expected, 260), { error: `a list: ${expected}` }).max(300, { error: "at most 300 entries" });

/** Keys that say how the console stands and where parts are played. */
export const registrationShape = {
  keyboards: z
    .record(words("a part"), words("a division"), { error: "parts with keyboards, such as {melody: Swell}" })
    .optional()
    .describe("Part to keyboard, named by its division. Left out: the check tries all."),
  octaves: z
    .record(words("a part"), wholeNumber("-1 an octave lower, 0, or 1 an octave higher", -1, 1), {
      error: "parts with octaves, such as {melody: -1}",
    })
    .optional()
    .describe("Parts played an octave lower (-1) or higher (1) than written."),
  drawn: z
    .record(words("a division"), stopList, { error: "divisions with lists of stops, such as {Great: [Principal 8]}" })
    .optional()
    .describe("Division to the stops drawn, named as the instrument names them."),
  couplers: nameList("couplers such as Swell to Great").optional(),
  tremulants: nameList("a division, or all").optional(),
  "unison-off": nameList("a division")
    .optional()
    .describe("Divisions silenced at the unison on their own keyboard; couplers still take their stops."),
  boxes: z
    .record(words("a division or box"), z.enum(["open", "half", "closed"], { error: "open, half or closed" }), {
      error: "divisions with positions, such as {Swell: closed}",
    })
    .optional()
    .describe("Positions of swell boxes; those left out are open."),
};

/** A registration file. */
export const registrationSchema = z.looseObject(
  {
    registrant: z.literal("registration/1", { error: "registration/1" }),
    ...musicShape,
    ...registrationShape,
  },
  { error: "a registration" },
);
