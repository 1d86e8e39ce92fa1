import type { CardHand, CueCard } from "../../shared-model/cards/cue-card.ts";
import type { CardMove, ChangeCard, PieceCards } from "../../shared-model/cards/piece-card.ts";

const HANDS = {
  right: "Right hand",
  left: "Left hand",
  both: "Both hands",
  feet: "Feet",
} as const;

const hand = (who: keyof typeof HANDS, keyboard: string | null, octave: CardHand["octave"] = 0): CardHand => ({
  who: HANDS[who],
  keyboard,
  what: null,
  octave,
});

/** How an invented console stands: `Great: Open Diapason 8, Principal 4`. */
function stands(label: string, hands: readonly CardHand[], drawn: readonly string[], rest: Partial<CueCard> = {}) {
  return {
    organ: "Weirside Chapel, Tarrowmere",
    section: null,
    bars: null,
    label,
    hands,
    divisions: drawn.map((line) => {
      const [name = "", stops = ""] = line.split(": ");
      return { name, stops: stops.split(", ").map((stop) => ({ name: stop, or: [] })) };
    }),
    couplers: [],
    tremulants: [],
    unisonOff: [],
    boxes: [],
    warnings: [],
    why: null,
    ...rest,
  } satisfies CueCard;
}

/** `- Great: Open Diapason 8`, `+ tremulant Swell`, `> box Swell half open`. */
function moves(...lines: readonly string[]): readonly CardMove[] {
  const acts = { "-": "cancel", "+": "draw", ">": "set" } as const;
  return lines.map((line) => {
    const act = acts[line[0] as keyof typeof acts];
    const [division, stop] = line.slice(2).split(": ");
    if (stop !== undefined) return { act, what: null, division: division as string, name: stop };
    const [what = "", ...name] = line.slice(2).split(" ");
    return { act, what, division: null, name: name.join(" ") };
  });
}

const change = (number: number, rest: Partial<ChangeCard> & Pick<ChangeCard, "state">): ChangeCard => ({
  number,
  section: null,
  where: null,
  cue: null,
  dynamic: null,
  verdict: { words: "easy", brief: "easy", loud: false, detail: null },
  presses: [],
  pressedBy: null,
  tasks: [],
  whenTime: [],
  stays: [],
  warnings: [],
  ...rest,
});

const TRIO = [hand("right", "Swell"), hand("left", "Great"), hand("feet", "Pedal")];

/** An invented partita on an invented organ. */
export const LANTERN: PieceCards = {
  piece: "Lantern Partita",
  organ: "Weirside Chapel, Tarrowmere",
  assistant: "left",
  changes: [
    change(1, {
      section: "Theme",
      where: "bar 1",
      dynamic: "mf",
      verdict: null,
      state: stands(
        "Principals 8 4 2",
        [hand("both", "Great"), hand("feet", "Pedal")],
        ["Great: Open Diapason 8, Principal 4, Fifteenth 2", "Pedal: Subbass 16"],
        { couplers: ["Great to Pedal"] },
      ),
    }),
    change(2, {
      section: "Variation 1",
      where: "bar 25",
      cue: "fermata",
      dynamic: "p",
      verdict: {
        words: "needs the assistant",
        brief: "assistant",
        loud: true,
        detail: "Alone 4.1 s, and the music leaves 1.5 s.",
      },
      tasks: [
        {
          who: "assistant",
          ready: null,
          turnsPage: true,
          moves: moves(
            "- Great: Open Diapason 8",
            "- Great: Principal 4",
            "- Great: Fifteenth 2",
            "+ Great: Stopped Diapason 8",
          ),
        },
        {
          who: "right",
          ready: "in the rest at bar 20",
          turnsPage: false,
          moves: moves("+ Swell: Oboe 8", "+ tremulant Swell", "> box Swell half open"),
        },
      ],
      state: stands(
        "Oboe with tremulant over the Stopped Diapason",
        TRIO,
        ["Great: Stopped Diapason 8", "Swell: Oboe 8", "Pedal: Subbass 16"],
        { couplers: ["Great to Pedal"], tremulants: ["Swell"], boxes: [{ name: "Swell", position: "half" }] },
      ),
    }),
    change(3, {
      section: "Variation 2",
      where: "bar 49",
      cue: "rest of 2 beats",
      dynamic: "mp",
      tasks: [
        {
          who: "left",
          ready: null,
          turnsPage: false,
          moves: moves("- Swell: Oboe 8", "- tremulant Swell", "+ Swell: Nason 4", "+ Swell: Nazard 2 2/3"),
        },
      ],
      state: stands("Flutes 8 4 2 2/3", TRIO, [
        "Great: Stopped Diapason 8",
        "Swell: Gedackt 8, Nason 4, Nazard 2 2/3",
        "Pedal: Subbass 16",
      ]),
      warnings: [{ severity: "warning", text: "The Nazard is soft against the Stopped Diapason.", remedy: null }],
    }),
    change(4, {
      section: "Variation 2, repeated",
      where: "bar 73",
      cue: "attacca",
      state: stands("Flutes 8 4 2 2/3", TRIO, ["Great: Stopped Diapason 8", "Swell: Gedackt 8, Nazard 2 2/3"]),
    }),
    change(5, {
      section: "Finale",
      where: "bar 97",
      cue: "page turn",
      dynamic: "ff",
      verdict: { words: "brisk", brief: "brisk", loud: false, detail: null },
      presses: [{ name: "General", number: 3, level: 2, newLevel: false }],
      state: stands(
        "Full chorus with pedal reeds",
        [hand("both", "Great", -1), hand("feet", null)],
        [
          "Great: Open Diapason 8, Principal 4, Twelfth 2 2/3, Fifteenth 2, Mixture IV",
          "Pedal: Subbass 16, Trombone 16",
        ],
        { couplers: ["Swell to Great", "Great to Pedal"] },
      ),
    }),
  ],
  pistons: [
    {
      press: { name: "General", number: 3, level: 2, newLevel: false },
      changes: [5],
      state: stands(
        "Full chorus with pedal reeds",
        [],
        [
          "Great: Open Diapason 8, Principal 4, Twelfth 2 2/3, Fifteenth 2, Mixture IV",
          "Pedal: Subbass 16, Trombone 16",
        ],
        { couplers: ["Swell to Great", "Great to Pedal"] },
      ),
    },
  ],
  cautions: ["Ask the keeper before you change any piston."],
  timeLine: [
    { number: 1, section: 0, length: 24, level: 0.6 },
    { number: 2, section: 1, length: 24, level: 0 },
    { number: 3, section: 2, length: 24, level: 0.2 },
    { number: 4, section: 3, length: 24, level: 0.2 },
    { number: 5, section: 4, length: 32, level: 1 },
  ],
  pictures: [],
};
