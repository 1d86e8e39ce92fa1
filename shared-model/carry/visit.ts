import { joined } from "../rules/rule.ts";
import { hasPistons, type Instrument, type Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import type { VisitTopic } from "../stoplist/visit-topic.ts";

/** Something to ask, to see or to hear on a visit. */
export interface VisitQuestion {
  readonly topic: VisitTopic;
  readonly text: string;
  /** Lines that an answer takes, written by hand. */
  readonly lines: number;
}

/** Questions that are asked at one time. */
export interface VisitPart {
  readonly head: string;
  readonly questions: readonly VisitQuestion[];
}

const ask = (topic: VisitTopic, text: string, lines = 1): VisitQuestion => ({ topic, text, lines });

const MIXTURES: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife"];

/** Whether a row of pipes stands behind several knobs. */
function sharesPipes(stops: readonly Stop[]): boolean {
  const uses = new Map<string, number>();
  for (const { uses: own } of stops)
    for (const rank of new Set(own.map((use) => use.rank))) uses.set(rank, (uses.get(rank) ?? 0) + 1);
  return [...uses.values()].some((count) => count > 1);
}

/** ` (in the file Swell left, Great right)`; nothing where no side is stated. */
function sidesOf({ console: stated }: Instrument): string {
  const at = (side: "left" | "right"): readonly string[] => {
    const names = stated?.[side] ?? [];
    return names.length > 0 ? [`${joined(names)} ${side}`] : [];
  };
  const sides = [...at("left"), ...at("right")];
  return sides.length > 0 ? ` (in the file ${sides.join(", ")})` : "";
}

/** From so many stops on an organ may well have pistons that nobody has written down. Our own setting. */
const MAY_HAVE_PISTONS = 20;

/** Questions that not every organ gives rise to, and whether this one does. */
function arises(instrument: Instrument): Readonly<Partial<Record<VisitTopic, boolean>>> {
  const stops = instrument.divisions.flatMap((division) => division.stops.filter((stop) => !stop.off));
  const isReed = (kind: Kind): boolean => (KIND_GROUPS.reed as readonly Kind[]).includes(kind);
  return {
    memory: hasPistons(instrument.aids) || stops.length >= MAY_HAVE_PISTONS,
    couplers: instrument.couplers.length > 0 || instrument.divisions.length > 1,
    boxes: instrument.divisions.some(({ box }) => box !== null),
    reeds: stops.some(({ kinds }) => kinds.some(isReed)),
    robbing: sharesPipes(stops),
    mixture: stops.some((stop) => stop.kinds.some((kind) => MIXTURES.includes(kind))),
    together: instrument.divisions.some(({ kind, stops: own }) => kind === "pedal" && own.some(({ off }) => !off)),
  };
}

/**
 * What to ask the keeper, to see at the console and to listen for on a first visit: one list for the sheet that is printed
 * and the page on which it is filled in. A question that does not arise on this organ is left out, unless it is answered.
 *
 * Which level is free, how the organ is to be left, a guide for visitors: advice that organists give each other in print
 * (dean's message of sfago.org, 2016; D. Moro, donmoroorganist.com/blog/65, 2012; insanityblog.online, 2015-03-03;
 * martinwhite.substack.com, visitor guide). All else: common practice.
 */
export function visitParts(instrument: Instrument): readonly VisitPart[] {
  const { divisions, a4, temperament, visit } = instrument;
  const known = arises(instrument);
  const parts: readonly VisitPart[] = [
    {
      head: "Ask the keeper",
      questions: [
        ask("keys", "Who opens, where are the keys, how long may I stay, when must it be quiet?"),
        ask(
          "blower",
          "Where is the blower switched on, how long until the wind stands, and what must not be switched?",
        ),
        ask("tuner", "Who tunes it and is called when something sticks?"),
        ask("faults", "Which stops, keys or couplers are out of order?", 2),
        ask(
          "memory",
          hasPistons(instrument.aids)
            ? "Which memory level may I use? May I set pistons at all? If not, none is touched."
            : "Are there pistons (the file names none)? Which memory level may I use, and may I set any?",
        ),
        ask("guide", "Is there a guide for visitors at the console?"),
        ask("leaving", "How is it to be left: shutters, cover, bench, lights, stops, lock?"),
      ],
    },
    {
      head: "See at the console",
      questions: [
        ask(
          "list",
          `Do names, pitches and compasses agree with the list (${joined(divisions.map(({ name }) => name))})?`,
        ),
        ask(
          "couplers",
          instrument.couplers.length > 0
            ? "Which couplers carry further ones on, and where are their knobs?"
            : "Which couplers are there (the list names none), and where are their knobs?",
        ),
        ask("boxes", "Is each box open when its pedal is flat or when it stands up? Where does it stay?"),
        ask("sides", `On which side does each division draw${sidesOf(instrument)}, and how far must the hand go?`),
        ask("pitch", `Pitch (taken as ${a4} Hz) and temperament${temperament === null ? "" : ` (${temperament})`}:`),
      ],
    },
    {
      head: "Listen for first",
      questions: [
        ask(
          "foundation",
          "From the room, someone else playing: which stop of 8 foot fills it, and which is the softest that is heard?",
        ),
        ask("mixture", "Does the chorus still speak clearly with its mixture, or does it cover the tune?"),
        ask(
          "reeds",
          "The reeds one by one, up and down: which are out of tune, which carry a solo, which cover everything?",
        ),
        ask("echo", "How long does a chord hang on? That is how long a rest has to be."),
        ask("together", "Do the bass and the hands reach the room together?"),
        ask("robbing", "Octaves on stops that share a row of pipes: which notes go missing?"),
        ask("singers", "Is the organ early or late against singers in the room?"),
        ask("further", "What else is worth knowing the next time?"),
      ],
    },
  ];
  const isAsked = ({ topic }: VisitQuestion): boolean => (known[topic] ?? true) || visit?.[topic] !== undefined;
  return parts.map(({ head, questions }) => ({ head, questions: questions.filter(isAsked) }));
}

/** What to take care of. Advice on noise and on instruments: common practice; the keeper and the rules of the place decide. */
export const VISIT_CAUTIONS: readonly { readonly about: string; readonly text: string }[] = [
  {
    about: "Ears",
    text: "full organ beside the pipes hurts hearing. Try it briefly, not inside the case, with protection at hand.",
  },
  {
    about: "Climbing",
    text: "do not go into the organ, up its ladders or on its walkboards; that is for the tuner or the keeper.",
  },
  {
    about: "Pipes and wires",
    text: "touch neither. What sticks or sounds by itself is told to the keeper, not mended.",
  },
  {
    about: "Memory",
    text: "use the level you were given. Note what stands on it before you set it, and put it back.",
  },
  { about: "Rules", text: "what the keeper and the house say comes before this sheet." },
];
