import * as z from "zod";
import { HAPPENINGS, LIMBS, LINK_KINDS, PACES } from "../music/piece.ts";
import { TRADITIONS } from "../music/texture.ts";
import { wholeNumber, words } from "./instrument-schema.ts";
import { musicShape, registrationShape } from "./music-schema.ts";

const beats = () =>
  z.number({ error: "beats, such as 2" }).min(0, { error: "beats, 0 or more" }).max(1000, { error: "at most 1000" });

const limb = () => z.enum(LIMBS, { error: "left, right or feet" });

const BEFORE = "attacca, pause, or what and beats, such as {what: rest, beats: 2}";

/** What happens before a section, in its long form. */
export const beforeSchema = z.looseObject(
  {
    what: z.enum(HAPPENINGS, { error: "what happens" }),
    beats: beats().optional().describe("In the tempo of the section before; of a fermata, as written."),
    free: z
      .union(
        [
          z.array(limb(), { error: "limbs such as [left, feet]" }),
          z.partialRecord(limb(), beats(), { error: "limbs with beats, such as {left: 4}" }),
        ],
        { error: "limbs such as [left, feet], or with beats: {left: 4}" },
      )
      .optional()
      .describe("Which limbs have nothing to play before the section begins, and for how many beats."),
    "turned-by": z.enum(["player", "assistant"], { error: "player or assistant" }).optional(),
  },
  { error: BEFORE },
);

/** A stretch inside a section in which a limb rests. */
export const momentSchema = z.looseObject(
  {
    limb: limb(),
    beats: beats(),
    bar: z.union([words("a bar"), z.number({ error: "a bar" })], { error: "a bar" }).optional(),
  },
  { error: "a free moment, such as {limb: left, beats: 4, bar: 12}" },
);

const SECTION_NAME = "the name of a section, or its number in the list";
const link = () => {
  const one = z.union([words(SECTION_NAME, 200), wholeNumber(SECTION_NAME, 1, 1000)], { error: SECTION_NAME });
  return z.union([one, z.array(one).max(50)], { error: SECTION_NAME });
};

/** How the console stands for a section. */
export const consoleSchema = z.looseObject(registrationShape, { error: "a registration, such as {drawn: {...}}" });

/** One section, apart from how the console stands, which is read by itself. */
export const pieceSectionSchema = z.looseObject(
  {
    ...musicShape,
    "beats-in-bar": beats().optional(),
    before: z
      .union([z.enum(HAPPENINGS, { error: BEFORE }), beforeSchema], { error: BEFORE })
      .optional()
      .describe("What happens between the section before and this one."),
    moments: z
      .array(momentSchema, { error: "a list of free moments" })
      .max(200, { error: "at most 200 free moments" })
      .optional()
      .describe("Stretches inside the section in which a limb has nothing to play."),
    ...(Object.fromEntries(LINK_KINDS.map((kind) => [kind, link().optional()])) as Record<
      (typeof LINK_KINDS)[number],
      z.ZodOptional<ReturnType<typeof link>>
    >),
    registration: consoleSchema.optional().describe("How the console stands; a plan fills it in."),
    steps: z
      .array(consoleSchema, { error: "a list of registrations" })
      .max(40, { error: "at most 40 steps" })
      .optional()
      .describe("For a section that grows: the registrations that follow the first."),
    pinned: z.boolean({ error: "true or false" }).optional().describe("Whether a plan must keep the registration."),
    again: z
      .boolean({ error: "true or false" })
      .optional()
      .describe("The bars were played before, as after da capo: they may lie before those of the section above."),
  },
  { error: "a section" },
);

const numbers = (what: string, most: number) =>
  z
    .union([wholeNumber(`how many ${what}`, 0, most), z.array(wholeNumber(`numbers of ${what}`, 1, most))], {
      error: `how many ${what}, or a list of their numbers`,
    })
    .optional();

/** Which pistons are the player's to use. */
export const pistonsSchema = z.looseObject(
  {
    generals: numbers("general pistons", 999),
    divisionals: z
      .record(words("a division"), numbers("pistons", 99), { error: "divisions with pistons, such as {Great: 4}" })
      .optional(),
    levels: numbers("memory levels", 100_000),
  },
  { error: "keys such as generals: 8, or none" },
);

/** The head of a piece, without a look into its sections, which are read one by one. */
export const pieceHeadSchema = z.looseObject(
  {
    registrant: z.literal("piece/1", { error: "piece/1" }),
    name: words("a name", 200).optional(),
    note: words("a note", 2000).optional(),
    organ: words("the name of the organ", 200).optional().describe("The organ that the registrations were made on."),
    tradition: z.enum(TRADITIONS, { error: "a tradition" }).optional(),
    tempo: musicShape.tempo.describe("What holds for sections that do not say."),
    "beats-in-bar": beats().optional(),
    assistant: z
      .enum(["left", "right", "none"], { error: "left, right or none" })
      .optional()
      .describe("Where an assistant stands, as the player sees it."),
    pistons: z
      .union([z.literal("none", { error: "none" }), pistonsSchema], { error: "none, or keys such as generals: 8" })
      .optional()
      .describe("Pistons and levels that the player may set; left out: all that the organ has."),
    practised: z
      .boolean({ error: "true or false" })
      .optional()
      .describe("Whether the changes are practised, so that no label has to be read."),
    pace: z.enum(PACES, { error: "a pace" }).optional(),
    sections: z
      .array(z.unknown(), { error: "a list of sections" })
      .max(500, { error: "at most 500 sections" })
      .optional(),
  },
  { error: "a piece" },
);

/** The whole form of a piece file, for the JSON Schema that editors use. */
export const pieceSchema = pieceHeadSchema.extend({ sections: z.array(pieceSectionSchema).optional() });
