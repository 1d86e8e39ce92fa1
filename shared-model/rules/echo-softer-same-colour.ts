import type { PartSound } from "../acoustics/part-sound.ts";
import { familiesOf, HARMONICS, isOneSilent, leadOf, REED, soundName, soundNameFirst } from "./balance.ts";
import { agree, named } from "./naming.ts";
import type { PairRule } from "./rule.ts";

/** Hundredths of a phon by which an echo is softer: heard as a step, and still heard. */
const LEAST = 250;
const FARTHEST = 900;
const RIGHT = 200;
const COLOUR_COST = { same: 0, thinner: 60, new: 250 } as const;
const WRONG_STEP = 350;

/** Colour of the echo against the call: the same, part of it, or a new one. */
function colourOfEcho(first: PartSound, echo: PartSound): keyof typeof COLOUR_COST {
  const [one, other] = [familiesOf(first), familiesOf(echo)];
  // Reeds, cornets and mixtures tell more than the flues that carry them: a cornet answers the ranks of a tierce.
  const telling = one & other & (REED | HARMONICS) ? REED | HARMONICS : ~0;
  if ((other & ~one & telling) !== 0) return "new";
  return ((one ^ other) & telling) === 0 ? "same" : "thinner";
}

function weighed(first: PartSound, echo: PartSound): number {
  if (isOneSilent(first, echo)) return 0;
  const colour = COLOUR_COST[colourOfEcho(first, echo)];
  const step = leadOf(first, echo);
  const away = step < LEAST ? LEAST - step : step > FARTHEST ? (step - FARTHEST) >> 1 : 0;
  return RIGHT - colour - Math.min(WRONG_STEP, away);
}

export const echoSofterSameColour: PairRule = {
  id: "echo-softer-same-colour",
  conventions: [38],
  reads: "pair",
  listens: true,
  statement: "An echo is the same colour at the same pitch, clearly softer and still heard.",
  why: "An echo answers with the voice that called; another colour is another person.",
  source: "common practice",
  severity: "warning",
  // No recipe wants an echo that is as loud as what it answers.
  yieldsToPrescription: false,
  applies: (first, second) =>
    (first.part.role === "melody" || first.part.role === "plenum") &&
    // Of several solos in dialogue the first is the one that is echoed.
    (first.part.id === first.part.role || first.part.id.endsWith("-1")) &&
    second.part.role === "echo",
  most: () => RIGHT,
  weigh: weighed,
  words: (first, echo, firstContext, echoContext, heard, points) => {
    const [call, answer] = [soundName(heard.first, firstContext), soundName(heard.second, echoContext)];
    const start = soundNameFirst(heard.second, echoContext);
    const verb = start.startsWith("The ") ? "answers" : agree(heard.second.stops, "answers", "answer");
    if (points === RIGHT) return { text: `${start} ${verb} ${call} in the same colour, a clear step softer.` };
    if (colourOfEcho(first, echo) === "new") {
      return {
        text: `${named(heard.second.stops)} on the ${echoContext.keyboard.name} ${agree(heard.second.stops, "answers", "answer")} ${call} in another colour.`,
        remedy: `Echo with the same kinds of stops on the ${echoContext.keyboard.name}, fewer or in a box.`,
      };
    }
    const step = leadOf(first, echo);
    if (points > 0) {
      const how = step < LEAST ? "only a little softer" : step > FARTHEST ? "from far away" : "a clear step softer";
      const colour = colourOfEcho(first, echo) === "same" ? "" : ", with less of its colour";
      return { text: `${start} ${verb} ${call} ${how}${colour}.` };
    }
    if (step < LEAST) {
      return {
        text: `The echo of ${answer} is hardly softer than ${call}.`,
        remedy:
          echo.enclosed > 0 && echo.shut < 2
            ? `Shut the box of the ${echoContext.keyboard.name}.`
            : `Take a stop off the ${echoContext.keyboard.name}, or add one to the call.`,
      };
    }
    return {
      text: `The echo of ${answer} is so much softer than ${call} that it is lost.`,
      remedy:
        echo.shut > 0
          ? `Open the box of the ${echoContext.keyboard.name}.`
          : `Add a stop on the ${echoContext.keyboard.name}.`,
    };
  },
  examples: {
    speaks: [
      {
        organ: "Great: Open Diapason 8, Principal 4 | Swell [box]: Open Diapason 8, Principal 4",
        plays: "plenum on Great, echo on Swell",
        boxes: { Swell: "closed" },
        says: "Open Diapason 8 and Principal 4 answer Open Diapason 8 and Principal 4 from far away.",
      },
      {
        organ: "Grand-Orgue: Montre 8, Prestant 4 | Écho: Bourdon 8 from C4",
        plays: "melody on Grand-Orgue, echo on Écho",
        says: "Bourdon 8 on the Écho answers Montre 8 and Prestant 4 in another colour.",
      },
      {
        organ: "Hauptwerk: Principal 8 | Brustwerk: Krummhorn 8",
        plays: "melody on Hauptwerk, echo on Brustwerk",
        says: "Krummhorn 8 on the Brustwerk answers Principal 8 in another colour.",
      },
      {
        organ: "Grand-Orgue: Bourdon 8, Cornet V | Récit: Bourdon 8, Cornet V, Trompette 8",
        plays: "melody on Grand-Orgue, echo on Récit",
        says: "Bourdon 8, Cornet V and Trompette 8 on the Récit answer Bourdon 8 and Cornet V in another colour.",
      },
      {
        organ: "Great: Stopped Diapason 8, Flute 4 | Swell [box]: Stopped Diapason 8, Flute 4",
        plays: "melody on Great, echo on Swell",
        boxes: { Swell: "half" },
        says: "Stopped Diapason 8 and Flute 4 answer Stopped Diapason 8 and Flute 4 in the same colour, a clear step softer.",
      },
      {
        organ: "Great: Stopped Diapason 8 | Swell [box]: Stopped Diapason 8",
        plays: "melody on Great, echo on Swell",
        says: "The echo of Stopped Diapason 8 is hardly softer than Stopped Diapason 8.",
      },
    ],
    silent: [
      {
        organ: "Great: Stopped Diapason 8 | Swell: Stopped Diapason 8",
        plays: "melody on Great, accompaniment on Swell",
      },
      {
        organ: "Great: Stopped Diapason 8 | Swell: Stopped Diapason 8",
        plays: "accompaniment on Great, echo on Swell",
      },
    ],
  },
};
