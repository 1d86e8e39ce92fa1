import type { JudgedPart } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import type { Part } from "../music/texture.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { groundWords, isReed, soundWords } from "./sound-words.ts";

/** No label is longer: it is the head of a card and a row of a list. */
export const LONGEST_LABEL = 60;

/** What a label reads of a judged section. */
export type Labelled = Pick<Problem, "instrument" | "section">;

const words = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join(" ");

/** `an octave lower`; empty where a part is played as written. */
export const octaveWords = ({ placing }: JudgedPart): string =>
  placing.octave === 0 ? "" : placing.octave < 0 ? "an octave lower" : "an octave higher";

/** `Positif coupled`: what is coupled to the leading keyboard, in words. */
function couplerWords({ placed }: JudgedPart): string {
  const others = [...new Set(placed.couplers.map((each) => each.from))].filter((name) => name !== placed.keyboard.name);
  if (others.length > 2) return "all coupled";
  return others.length === 0 ? "" : `${others.join(" and ")} coupled`;
}

/** The first that is short enough; when none is, the last, cut at a word. */
function fitting(candidates: readonly string[]): string {
  const found = candidates.find((each) => each.length <= LONGEST_LABEL);
  if (found !== undefined) return found;
  const last = candidates.at(-1) ?? "";
  const cut = last.slice(0, LONGEST_LABEL - 1);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(" "), 20))}…`;
}

/** Order in which parts lead a label. */
const LEADING: readonly Part["role"][] = [
  "melody",
  "cantus-firmus",
  "voice",
  "plenum",
  "accompaniment",
  "echo",
  "bass",
];

/** What the words of a label are made of. */
interface Sounding {
  readonly parts: readonly JudgedPart[];
  readonly lead: JudgedPart;
  /** `Oboe`: the leading part's sound. */
  readonly head: string;
  /** The same with its octave: `Flöte 4 an octave lower`. */
  readonly placed: string;
  /** The same with its tremulant. */
  readonly full: string;
  stopsOf(part: JudgedPart): readonly Stop[];
  /** Another part's sound in the middle of a sentence. */
  groundOf(part: JudgedPart): string;
}

/** Something more behind a head that may have a `with` already. */
function joined(head: string, what: string): string {
  if (what === "") return head;
  if (!head.includes(" with ")) return `${head} with ${what}`;
  return head.includes(" and ") ? `${head}, ${what}` : `${head} and ${what}`;
}

const hasRole =
  (...roles: readonly Part["role"][]) =>
  (one: JudgedPart): boolean =>
    roles.includes(one.placed.part.role);
const areAlike = (one: JudgedPart, other: JudgedPart): boolean => one.heard.join("|") === other.heard.join("|");

/** Voices or choruses of one rank: `Trompette against the Cornet`. */
function peersLabel({ head, placed, full, lead, groundOf }: Sounding, peers: readonly JudgedPart[]): string {
  if (peers.every((one) => areAlike(one, lead))) return fitting([full, placed, head]);
  const [first = "", ...others] = peers.map(groundOf);
  if (others.length === 0 && first.replace(/^the /u, "") === head.toLowerCase()) {
    const keyboards = `${lead.placed.keyboard.name} against ${peers[0]?.placed.keyboard.name}`;
    return fitting([`${full}, ${keyboards}`, `${head}, ${keyboards}`, head]);
  }
  const tail = ` against ${[first, ...others].join(" and ")}`;
  return fitting([`${full}${tail}`, `${placed}${tail}`, `${head}${tail}`, `${head} against ${first}`, head]);
}

/** A solo and what lies under it: `Oboe over two flutes`. */
function soloLabel({ head, placed, full, lead, groundOf, parts }: Sounding, under: JudgedPart): string {
  if (areAlike(under, lead)) return fitting([`${full}, all parts alike`, head]);
  const { part } = lead.placed;
  const ground = groundOf(under);
  const where = part.place === "tenor" ? "in the tenor, with" : part.place === "bass" ? "in the bass, with" : "over";
  const tail = part.hands === "feet" ? ` in the pedal under ${ground}` : ` ${where} ${ground}`;
  const echo = parts.some(hasRole("echo")) ? ", with echo" : "";
  return fitting([`${full}${tail}${echo}`, `${placed}${tail}`, `${head}${tail}`, head]);
}

/** One sound for all hands, with its pedal and its couplers: `Plein jeu with pedal reeds, Positif coupled`. */
function chorusLabel({ head, placed, full, lead, parts, stopsOf }: Sounding): string {
  if (!hasRole("plenum")(lead)) return fitting([full, placed, head]);
  const bass = parts.find((one) => one !== lead && hasRole("bass")(one) && one.placed.keyboard.kind === "pedal");
  const own = bass ? stopsOf(bass).filter((stop) => stop.division === bass.placed.keyboard.name) : [];
  const withPedal = (text: string): string => {
    if (!own.some(isReed)) return text;
    return / reeds$/u.test(text) ? `${text} in hands and feet` : joined(text, "pedal reeds");
  };
  const echo = parts.some(hasRole("echo")) ? ", with echo" : "";
  const coupled = couplerWords(lead);
  const tail = coupled === "" ? "" : `, ${coupled}`;
  const [whole, plain] = [withPedal(full), withPedal(placed)];
  return fitting([`${whole}${tail}${echo}`, `${plain}${tail}${echo}`, `${plain}${tail}`, plain, placed, head]);
}

/**
 * What a musician would call a judged registration: `Oboe over two flutes`, `Full chorus with pedal reeds`,
 * `Trompette against the Cornet`. At most {@link LONGEST_LABEL} characters; the same parts always give the same label.
 *
 * @param parts what each part hears, as a judgement holds it; parts left out of the registration are left out here.
 * @returns `Silence` when nothing is heard.
 */
export function labelOf({ instrument, section }: Labelled, parts: readonly JudgedPart[]): string {
  const { tradition } = section;
  const byId = new Map(instrument.divisions.flatMap((division) => division.stops).map((stop) => [stop.id, stop]));
  const stopsOf = (one: JudgedPart): readonly Stop[] => one.heard.map((id) => byId.get(id) as Stop);
  const heard = parts.filter((one) => one.heard.length > 0);
  const lead = LEADING.map((role) => heard.find(hasRole(role))).find((one) => one);
  if (!lead) return "Silence";
  const head = soundWords(stopsOf(lead), lead.placed.part, tradition);
  const placed = words(head, octaveWords(lead));
  const sounding: Sounding = {
    parts: heard,
    lead,
    head,
    placed,
    full: joined(placed, lead.sound.tremulant === 1 ? "tremulant" : ""),
    stopsOf,
    groundOf: (one) => {
      const all = stopsOf(one);
      // What only a coupler brings along from the leading keyboard is no ground of its own.
      const own = all.filter((stop) => !lead.heard.includes(stop.id));
      return words(groundWords(own.length > 0 ? own : all, one.placed.part, tradition), octaveWords(one));
    },
  };
  const { role } = lead.placed.part;
  const peers = heard.filter((one) => one !== lead && one.placed.part.role === role);
  if (peers.length > 0 && (role === "voice" || role === "plenum")) return peersLabel(sounding, peers);
  const under = heard.find((one) => one !== lead && hasRole("accompaniment", "plenum")(one));
  return under && role !== "plenum" ? soloLabel(sounding, under) : chorusLabel(sounding);
}
