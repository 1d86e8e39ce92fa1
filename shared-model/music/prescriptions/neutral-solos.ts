import type { Prescription } from "../prescription.ts";
import { FLUTE_4, FLUTE_8, PEDAL_8, QUIET_8 } from "./stop-lists.ts";
import { type PartText, type RecipeFacts, recipe } from "./wanted.ts";

const PRACTICE = { sources: ["common practice"], evidence: "common practice" } as const;

/** One colour for a solo, as the parts of a recipe need it. */
type Colour = Pick<PartText, "must" | "oneOf" | "may" | "not" | "note">;

/** Colours of equal standing. Each shuts out what would turn it into another, so that proposals stay varied. */
const COLOURS = {
  oboe: {
    must: ["oboe 8"],
    may: ["stopped-flute 8", "open-flute 8"],
    not: ["chorus-reed", "mutation", "mixture", "16"],
  },
  "flutes 8 and 4": {
    oneOf: [FLUTE_8, FLUTE_4],
    may: ["open-flute 2"],
    not: ["reed", "principal", "mutation", "high-compound", "celeste", "16"],
    note: "flute 8 with flute 2 alone, without the 4, is the sprightly way",
  },
  "flutes with a twelfth": {
    must: ["nasard 2 2/3"],
    oneOf: [FLUTE_8, FLUTE_4],
    may: ["open-flute 2"],
    not: ["reed", "tierce-sounding", "mixture", "celeste", "16"],
  },
  "flutes with a nineteenth": {
    must: ["larigot 1 1/3"],
    oneOf: [FLUTE_8, FLUTE_4],
    may: ["open-flute 2"],
    not: ["reed", "tierce-sounding", "mixture", "celeste", "16"],
  },
  cornet: {
    must: ["cornet"],
    may: ["stopped-flute 8", "open-flute 8", "open-flute 4", "stopped-flute 4"],
    not: ["reed", "mixture", "celeste", "16"],
  },
  Sesquialtera: {
    must: ["sesquialtera"],
    oneOf: [
      ["stopped-flute 8", "open-flute 8", "principal 8"],
      ["open-flute 4", "stopped-flute 4", "principal 4"],
    ],
    may: ["open-flute 2", "principal 2"],
    not: ["reed", "mixture", "celeste", "16"],
  },
  "Cromorne or clarinet": {
    oneOf: [["cromorne 8", "clarinet 8"]],
    may: ["stopped-flute 8", "open-flute 4", "stopped-flute 4"],
    not: ["chorus-reed", "tierce-sounding", "mixture", "16"],
  },
  principal: {
    must: ["principal 8"],
    may: ["principal 4"],
    not: ["reed", "mutation", "high-compound", "celeste", "16"],
  },
  trumpet: {
    must: ["trumpet 8"],
    may: ["stopped-flute 8", "principal 8"],
    not: ["mixture", "celeste", "16"],
    note: "a mild one, or in a half shut box",
  },
  "harmonic flute": {
    must: ["harmonic-flute 8"],
    may: ["stopped-flute 8"],
    not: ["reed", "mutation", "high-compound", "celeste", "16"],
  },
  string: {
    oneOf: [["string 8", "soft-string 8"]],
    may: ["stopped-flute 8"],
    not: ["reed", "mutation", "high-compound", "celeste", "16"],
  },
  tierces: {
    must: ["nasard 2 2/3", "tierce 1 3/5"],
    oneOf: [FLUTE_8, ["open-flute 4", "stopped-flute 4", "principal 4"]],
    may: ["open-flute 2", "principal 2"],
    not: ["reed", "mixture", "celeste", "16"],
  },
} as const satisfies Readonly<Record<string, Colour>>;
type ColourName = keyof typeof COLOURS;

/** One soft 8, or two of different kind; never 16. */
const ACCOMPANIMENT: PartText = {
  role: "accompaniment",
  keyboard: "any-other",
  oneOf: [QUIET_8],
  may: ["stopped-flute 8", "open-flute 8", "soft-string 8", "open-flute 4", "stopped-flute 4"],
  not: ["16", "2", "mutation", "high-compound", "celeste", "reed"],
};

const BASS: PartText = {
  role: "bass",
  keyboard: "pedal",
  oneOf: [["stopped-flute 16", "string 16", "open-flute 16", "principal 16"], PEDAL_8],
  not: ["reed", "mixture", "32"],
};

function solos(texture: string, names: readonly ColourName[], melody: Partial<PartText>, others: readonly PartText[]) {
  return names.map((way, index) => {
    const colour: Colour = COLOURS[way];
    return recipe(`${texture}.neutral.${index + 1}`, {
      way,
      ...PRACTICE,
      parts: [{ role: "melody", keyboard: "any-other", ...melody, ...colour }, ...others],
      tremulant: way === "trumpet" || way === "string" ? "no" : "may",
    });
  });
}

const practice = (id: string, way: string, parts: readonly PartText[], more: Partial<RecipeFacts> = {}): Prescription =>
  recipe(id, { way, ...PRACTICE, parts, ...more });

const TREBLE = { place: "treble" } as const;

const MELODY_OVER_ACCOMPANIMENT = solos(
  "melody-over-accompaniment",
  [
    "oboe",
    "flutes 8 and 4",
    "flutes with a twelfth",
    "flutes with a nineteenth",
    "cornet",
    "Sesquialtera",
    "Cromorne or clarinet",
    "principal",
    "trumpet",
    "harmonic flute",
    "string",
    "tierces",
  ],
  TREBLE,
  [ACCOMPANIMENT, BASS],
);

const MELODY_IN_TENOR = solos(
  "melody-in-tenor",
  [
    "oboe",
    "trumpet",
    "Cromorne or clarinet",
    "principal",
    "Sesquialtera",
    "tierces",
    "string",
    "harmonic flute",
    "flutes with a twelfth",
  ],
  { place: "tenor" },
  [ACCOMPANIMENT, BASS],
);

const HYMN_SOLO_VERSE = solos(
  "hymn-solo-verse",
  ["trumpet", "oboe", "Cromorne or clarinet", "Sesquialtera", "cornet", "principal", "tierces"],
  TREBLE,
  [
    {
      role: "accompaniment",
      keyboard: "any-other",
      oneOf: [
        ["principal 8", "stopped-flute 8", "open-flute 8"],
        ["principal 4", "open-flute 4", "stopped-flute 4"],
      ],
      may: ["stopped-flute 8", "principal 8"],
      not: ["reed", "high-compound", "16", "celeste"],
      note: "singers carry on, so the harmony keeps 8 and 4",
    },
    BASS,
  ],
);

const quiet8WithPrincipal: PartText = {
  ...ACCOMPANIMENT,
  may: [...(ACCOMPANIMENT.may ?? []), "principal 8", "principal 4"],
};

const SOLO_IN_BASS = [
  practice("solo-in-bass.neutral.1", "trumpet", [
    {
      role: "melody",
      place: "bass",
      keyboard: "any-other",
      must: ["trumpet 8"],
      may: ["stopped-flute 8", "principal 4", "principal 8"],
      not: ["mixture", "16"],
    },
    quiet8WithPrincipal,
  ]),
  practice("solo-in-bass.neutral.2", "softer reed", [
    {
      role: "melody",
      place: "bass",
      keyboard: "any-other",
      oneOf: [["cromorne 8", "dulcian 8", "bassoon 8", "clarinet 8"]],
      may: ["stopped-flute 8", "principal 4"],
      not: ["mixture", "chorus-reed", "16"],
    },
    ACCOMPANIMENT,
  ]),
  practice("solo-in-bass.neutral.3", "principal", [
    {
      role: "melody",
      place: "bass",
      keyboard: "any-other",
      must: ["principal 8"],
      may: ["principal 4"],
      not: ["mixture", "reed", "16"],
    },
    ACCOMPANIMENT,
  ]),
];

const drone: PartText = {
  ...BASS,
  oneOf: [
    ["stopped-flute 16", "string 16"],
    ["stopped-flute 8", "open-flute 8", "string 8"],
  ],
  not: ["reed", "mixture", "32", "principal 16", "open-flute 16"],
  optional: true,
  note: "a long, soft drone",
};
const single8: PartText = { ...ACCOMPANIMENT, may: ["stopped-flute 8", "open-flute 8", "soft-string 8"] };

const PASTORALE = [
  practice(
    "pastorale.neutral.1",
    "flutes",
    [
      {
        role: "melody",
        ...TREBLE,
        keyboard: "any-other",
        oneOf: [["open-flute 8", "stopped-flute 8", "harmonic-flute 8"]],
        may: ["open-flute 4", "stopped-flute 4", "stopped-flute 8"],
        not: ["reed", "mixture", "16"],
      },
      single8,
      drone,
    ],
    { tremulant: "may" },
  ),
  practice(
    "pastorale.neutral.2",
    "piping reed",
    [
      {
        role: "melody",
        ...TREBLE,
        keyboard: "any-other",
        oneOf: [["oboe 8", "cromorne 8", "musette 8", "schalmei 8"]],
        may: ["stopped-flute 8"],
        not: ["chorus-reed", "mixture", "16"],
      },
      single8,
      drone,
    ],
    { tremulant: "may" },
  ),
];

/** The echo has the kind of the solo, softer. */
const echoWay = (number: number, way: string, solo: Colour, echo: Colour): Prescription =>
  practice(`solo-and-echo.neutral.${number}`, way, [
    { role: "melody", ...TREBLE, keyboard: "any-other", ...solo },
    { role: "echo", ...TREBLE, keyboard: "any-other", ...echo },
    { ...ACCOMPANIMENT, may: ["stopped-flute 8", "open-flute 8", "soft-string 8", "open-flute 4"] },
  ]);

const SOLO_AND_ECHO = [
  echoWay(1, "cornets", COLOURS.cornet, {
    oneOf: [["cornet", "sesquialtera", "tierce 1 3/5"]],
    may: ["stopped-flute 8", "open-flute 8", "open-flute 4", "stopped-flute 4", "nasard 2 2/3", "open-flute 2"],
    not: ["mixture", "reed"],
  }),
  echoWay(2, "trumpets", COLOURS.trumpet, {
    oneOf: [["trumpet 8", "oboe 8"]],
    may: ["stopped-flute 8"],
    not: ["mixture", "16"],
  }),
  echoWay(3, "softer reeds", COLOURS["Cromorne or clarinet"], {
    oneOf: [["cromorne 8", "clarinet 8", "oboe 8", "regal 8"]],
    may: ["stopped-flute 8"],
    not: ["mixture", "chorus-reed", "16"],
  }),
  echoWay(4, "principals", COLOURS.principal, {
    oneOf: [["principal 8", "soft-string 8", "open-flute 8"]],
    may: ["principal 4", "open-flute 4"],
    not: ["mixture", "reed", "16"],
  }),
  echoWay(5, "flutes", COLOURS["flutes 8 and 4"], {
    oneOf: [["stopped-flute 8", "open-flute 8"]],
    may: ["open-flute 4", "stopped-flute 4"],
    not: ["mixture", "reed", "16"],
  }),
  echoWay(6, "Sesquialteras", COLOURS.Sesquialtera, {
    oneOf: [["sesquialtera", "tierce 1 3/5", "nasard 2 2/3"], FLUTE_8],
    may: ["open-flute 4", "stopped-flute 4"],
    not: ["mixture", "reed"],
  }),
];

const underPedalMelody: PartText = {
  ...ACCOMPANIMENT,
  may: [...(ACCOMPANIMENT.may ?? []), "principal 8", "principal 4"],
  note: "the left hand has the bass",
};

const MELODY_IN_PEDAL = [
  practice("melody-in-pedal.neutral.1", "reed 8", [
    {
      role: "cantus-firmus",
      keyboard: "pedal",
      must: ["trumpet 8"],
      may: ["principal 8", "principal 4", "open-flute 8"],
      not: ["16", "32", "mixture"],
    },
    underPedalMelody,
  ]),
  practice("melody-in-pedal.neutral.2", "principal 8", [
    {
      role: "cantus-firmus",
      keyboard: "pedal",
      must: ["principal 8"],
      may: ["principal 4"],
      not: ["16", "32", "mixture", "reed"],
    },
    underPedalMelody,
  ]),
  practice("melody-in-pedal.neutral.3", "4 foot", [
    {
      role: "cantus-firmus",
      keyboard: "pedal",
      oneOf: [["trumpet 4", "schalmei 4", "cornett 4", "principal 4", "open-flute 4"]],
      not: ["8", "16", "32", "mixture"],
      note: "as written for a tune at 4, an octave lower for a tune at 8",
    },
    underPedalMelody,
  ]),
];

const RECORDER_CONSORT = [
  practice("recorder-consort.neutral.1", "8 and 4", [
    { role: "plenum", keyboard: "any-other", oneOf: [FLUTE_8, FLUTE_4], not: ["reed", "mixture", "principal", "16"] },
  ]),
  practice("recorder-consort.neutral.2", "4 alone, an octave lower", [
    {
      role: "plenum",
      keyboard: "any-other",
      octave: -1,
      oneOf: [FLUTE_4],
      not: ["reed", "mixture", "principal", "8", "16", "2"],
    },
  ]),
  practice("recorder-consort.neutral.3", "8 alone", [
    {
      role: "plenum",
      keyboard: "any-other",
      oneOf: [FLUTE_8],
      not: ["reed", "mixture", "principal", "16", "4", "2"],
    },
  ]),
];

/** Solo textures of the neutral tradition. Every line is common practice. */
export const NEUTRAL_SOLO_PRESCRIPTIONS: readonly Prescription[] = [
  ...MELODY_OVER_ACCOMPANIMENT,
  ...MELODY_IN_TENOR,
  ...HYMN_SOLO_VERSE,
  ...SOLO_IN_BASS,
  ...PASTORALE,
  ...SOLO_AND_ECHO,
  ...MELODY_IN_PEDAL,
  ...RECORDER_CONSORT,
];
