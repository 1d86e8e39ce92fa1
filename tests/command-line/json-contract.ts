import * as z from "zod";

// The forms that outside programs read, written down once more and strictly: a key more or less is a fault.

const places = z
  .number()
  .refine((points) => Math.abs(points * 100 - Math.round(points * 100)) < 1e-9, "at most two places");
const sentence = z.string().regex(/^\p{Lu}.*\.$/su);
const pitch = z
  .string()
  .regex(/^[1-9]\d*(?:\/[1-9]\d*)?$/)
  .nullable();
const octave = z.union([z.literal(-1), z.literal(0), z.literal(1)]);
const reason = z.strictObject({ rule: z.string().min(1), points: places, text: sentence, source: z.string().min(1) });

const share = places.min(0).max(1);
const hearing = z.strictObject({
  parts: z.array(z.strictObject({ part: z.string(), sones: places.min(0), phon: places.min(0).max(120) })),
  pairs: z.array(
    z.strictObject({
      first: z.string(),
      second: z.string(),
      lead: places.min(-40).max(40),
      prominence: places.min(-40).max(40),
      kept: z.tuple([share, share]),
      margin: places,
      shine: places.min(-40).max(40),
      colour: places.min(0),
    }),
  ),
  guessed: z.array(z.string().min(1)),
});

export const proposeForm = z.strictObject({
  instrument: z.string(),
  texture: z.string(),
  tradition: z.string(),
  proposals: z.array(
    z.strictObject({
      place: z.int().min(1),
      score: places,
      label: z.string().min(1),
      parts: z.array(
        z.strictObject({
          part: z.string(),
          role: z.string(),
          keyboard: z.string(),
          octave,
          stops: z
            .array(
              z.strictObject({
                division: z.string(),
                name: z.string(),
                pitch,
                half: z.enum(["bass", "treble"]).optional(),
                or: z.array(z.string().min(1)).min(1).optional(),
              }),
            )
            .min(1),
        }),
      ),
      drawn: z.record(z.string(), z.array(z.string()).min(1)),
      couplers: z.array(z.string()),
      tremulants: z.array(z.string()),
      boxes: z.record(z.string(), z.enum(["open", "half", "closed"])),
      hearing,
      reasons: z.array(reason),
    }),
  ),
  missing: z.array(z.strictObject({ rule: z.string().min(1), text: z.string().min(1) })),
});

export const checkForm = z.strictObject({
  findings: z.array(
    z.strictObject({
      rule: z.string().min(1),
      severity: z.enum(["error", "warning", "note"]),
      text: sentence,
      source: z.string().min(1),
      parts: z.array(z.string()),
      stops: z.array(z.string()),
      remedy: sentence.nullable(),
    }),
  ),
  reasons: z.array(reason),
  score: places,
  keyboards: z.record(z.string(), z.string()),
  hearing,
});

export const readForm = z.strictObject({
  name: z.string().nullable(),
  divisions: z.array(
    z.strictObject({
      name: z.string().nullable(),
      kind: z.enum(["manual", "pedal"]),
      keyboard: z.int().nullable(),
      stops: z.array(
        z.strictObject({
          name: z.string(),
          pitch,
          printed: z.string().nullable(),
          ranks: z.int().nullable(),
          half: z.enum(["bass", "treble", "both"]).nullable(),
          line: z.int().min(1),
        }),
      ),
    }),
  ),
  couplers: z.array(
    z.strictObject({
      from: z.string(),
      to: z.string(),
      pitch: z.union([z.literal(16), z.literal(8), z.literal(4)]),
    }),
  ),
  tremulants: z.array(z.string()),
  questions: z.array(z.strictObject({ line: z.int().min(1), text: z.string().min(1), about: z.string() })),
});

/** Decimals with at most two places summed as whole hundredths. */
export const sumOf = (reasons: readonly { readonly points: number }[]): number =>
  reasons.reduce((sum, each) => sum + Math.round(each.points * 100), 0);
