const FLUES = [
  "principal",
  "stopped-flute",
  "open-flute",
  "harmonic-flute",
  "string",
  "soft-string",
  "quintadena",
  "celeste",
  "twelfth",
  "nasard",
  "quint",
  "tierce",
  "larigot",
  "septieme",
  "none",
  "mixture",
  "cymbal",
  "rauschpfeife",
  "sesquialtera",
  "tertian",
  "cornet",
] as const;
const REEDS = [
  "trumpet",
  "horizontal-trumpet",
  "tuba",
  "cornett",
  "oboe",
  "clarinet",
  "bassoon",
  "horn",
  "cromorne",
  "dulcian",
  "regal",
  "schalmei",
  "voix-humaine",
  "musette",
] as const;

/**
 * What a stop *is*, whatever it is called: the word by which recipes of all schools ask for it.
 * A stop has at least one kind; some names stand between two (a Decimanona is a principal and serves as a larigot).
 */
export const KINDS = [...FLUES, ...REEDS, "percussion", "effect"] as const;
export type Kind = (typeof KINDS)[number];

/** The families of the trade, as the stoplists of the literature group them. */
export const FAMILIES = [
  "principal",
  "flute-open",
  "flute-stopped",
  "flute-half-stopped",
  "string",
  "hybrid",
  "celeste",
  "reed-chorus",
  "reed-solo",
  "reed-short",
  "mutation",
  "mixture",
  "cornet",
  "percussion",
  "effect",
] as const;
export type Family = (typeof FAMILIES)[number];

/** Names for several kinds at once, as prescriptions use them. `flue` is everything without a tongue. */
export const KIND_GROUPS = {
  flute: ["stopped-flute", "open-flute", "harmonic-flute"],
  mutation: ["twelfth", "nasard", "quint", "tierce", "larigot", "septieme", "none"],
  "tierce-sounding": ["tierce", "sesquialtera", "tertian", "cornet"],
  "high-compound": ["mixture", "cymbal", "rauschpfeife", "sesquialtera", "tertian", "cornet"],
  "chorus-reed": ["trumpet", "horizontal-trumpet", "tuba"],
  "short-reed": ["cromorne", "dulcian", "regal", "schalmei", "voix-humaine", "musette"],
  reed: REEDS,
  flue: FLUES,
  /** Flues that sound 16, 8 or 4; the pitch is asked for beside the group. */
  foundation: ["principal", "stopped-flute", "open-flute", "harmonic-flute", "string", "soft-string", "quintadena"],
} as const satisfies Readonly<Record<string, readonly Kind[]>>;
export type KindGroup = keyof typeof KIND_GROUPS;

/** What a person calls a stop of a family. */
export const FAMILY_WORDS: Readonly<Record<Family, string>> = {
  principal: "principal",
  "flute-open": "open flute",
  "flute-stopped": "stopped flute",
  "flute-half-stopped": "chimney flute",
  string: "string",
  hybrid: "stop between flute and string",
  celeste: "celeste",
  "reed-chorus": "chorus reed",
  "reed-solo": "solo reed",
  "reed-short": "short reed",
  mutation: "mutation",
  mixture: "mixture",
  cornet: "cornet",
  percussion: "percussion",
  effect: "effect",
};
