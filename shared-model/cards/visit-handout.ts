import { joined } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";
import type { Handout, HandoutItem, HandoutPart } from "./handout.ts";
import { organLabel } from "./survey-handout.ts";

const ask = (text: string, white = 1): HandoutItem => ({ lead: null, text, white });
const told = (lead: string, text: string): HandoutItem => ({ lead, text, white: 0 });

/**
 * Which level is free, how the organ is to be left, a guide for visitors: advice that organists give each other in print
 * (dean's message of sfago.org, 2016; D. Moro, donmoroorganist.com/blog/65, 2012; insanityblog.online, 2015-03-03;
 * martinwhite.substack.com, visitor guide). All else: common practice.
 */
function keeperPart({ aids }: Instrument): HandoutPart {
  const pistons = aids.generals > 0 || Object.values(aids.divisionals).some((count) => count > 0);
  return {
    head: "Ask the keeper",
    items: [
      ask("Who opens, where are the keys, how long may I stay, when must it be quiet?"),
      ask("Where is the blower switched on, how long until the wind stands, and what must not be switched?"),
      ask("Who tunes it and is called when something sticks?"),
      ask("Which stops, keys or couplers are out of order?", 2),
      ...(pistons ? [ask("Which memory level may I use? May I set pistons at all? If not, none is touched.")] : []),
      ask("Is there a guide for visitors at the console?"),
      ask("How is it to be left: shutters, cover, bench, lights, stops, lock?"),
    ],
  };
}

function consolePart({ divisions, couplers, a4, temperament, console: build }: Instrument): HandoutPart {
  const boxes = new Set(divisions.flatMap(({ box }) => box ?? [])).size;
  return {
    head: "See at the console",
    items: [
      ask(`Do names, pitches and compasses agree with the list (${joined(divisions.map(({ name }) => name))})?`),
      ...(couplers.length > 0 ? [ask("Which couplers carry further ones on, and where are their knobs?")] : []),
      ...(boxes > 0 ? [ask("Is each box open when its pedal is flat or when it stands up? Where does it stay?")] : []),
      ...(build ? [] : [ask("On which side does each division draw, and how far must the hand go?")]),
      ask(`Pitch (${a4} Hz in the file) and temperament${temperament === null ? "" : ` (${temperament})`}:`),
    ],
  };
}

const isOf = (kinds: readonly Kind[], some: readonly Kind[]): boolean => kinds.some((kind) => some.includes(kind));

/** What the ear has to settle, since no list does. */
function listenPart({ divisions }: Instrument): HandoutPart {
  const stops = divisions.flatMap((division) => division.stops.filter((stop) => !stop.off));
  const has = (kinds: readonly Kind[]): boolean => stops.some((stop) => isOf(stop.kinds, kinds));
  const uses = new Map<string, number>();
  for (const { uses: own } of stops)
    for (const rank of new Set(own.map((use) => use.rank))) uses.set(rank, (uses.get(rank) ?? 0) + 1);
  const shared = [...uses.values()].some((count) => count > 1);
  return {
    head: "Listen for first",
    items: [
      ask(
        "From the room, someone else playing: which principal 8 fills it, and which is the softest stop that is heard?",
      ),
      ask("Does the chorus still speak clearly with its mixture, or does it cover the tune?"),
      ...(has(KIND_GROUPS.reed)
        ? [ask("The reeds one by one, up and down: which are out of tune, which carry a solo, which cover everything?")]
        : []),
      ask("How long does a chord hang on? That is how long a rest has to be."),
      ask("Do the bass and the hands reach the room together?"),
      ...(shared ? [ask("Octaves on stops that share a row of pipes: which notes go missing?")] : []),
      ask("Is the organ early or late against singers in the room?"),
    ],
  };
}

/** Advice on noise and on instruments: common practice; the keeper and the rules of the place decide. */
const CAUTIONS: HandoutPart = {
  head: "Take care",
  items: [
    told(
      "Ears:",
      "full organ beside the pipes hurts hearing. Try it briefly, not inside the case, with protection at hand.",
    ),
    told(
      "Climbing:",
      "do not go into the organ, up its ladders or on its walkboards; that is for the tuner or the keeper.",
    ),
    told("Pipes and wires:", "touch neither. What sticks or sounds by itself is told to the keeper, not mended."),
    told("Memory:", "use the level you were given. Note what stands on it before you set it, and put it back."),
    told("Rules:", "what the keeper and the house say comes before this sheet."),
  ],
};

/** What to ask, see and hear on a first visit to an organ, with lines to write on. */
export function visitHandout(instrument: Instrument): Handout {
  return {
    title: `Visit: ${instrument.name}`,
    label: organLabel(instrument),
    parts: [keeperPart(instrument), consolePart(instrument), listenPart(instrument), CAUTIONS],
    foot: "Back home: into the file of the organ. Leave the organ as you found it.",
  };
}
