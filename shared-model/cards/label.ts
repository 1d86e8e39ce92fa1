import { type JudgedPart, stopLabel } from "../judging/judge.ts";
import type { Problem } from "../judging/problem.ts";
import type { Part, Tradition } from "../music/texture.ts";
import { compareFeet } from "../pitch/foot.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";

/** No label is longer: it is the head of a card and a row of a list. */
export const LONGEST_LABEL = 60;

/** What a label reads of a judged section. */
export type Labelled = Pick<Problem, "instrument" | "section">;

const FLUTES: readonly Kind[] = [...KIND_GROUPS.flute, "quintadena"];
const WIDE: readonly Kind[] = [...FLUTES, "twelfth", "nasard", "quint", "tierce", "larigot", "septieme", "none"];
const STRINGS: readonly Kind[] = ["string", "soft-string"];
const PRINCIPALS: readonly Kind[] = ["principal", "twelfth", "quint"];
const MIXTURES: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife"];
const THIRDS: readonly Kind[] = ["sesquialtera", "tertian"];

const COMPOUNDS: readonly Kind[] = [...MIXTURES, ...THIRDS, "cornet"];

const isOf = (stop: Stop, kinds: readonly Kind[]): boolean => stop.kinds.some((kind) => kinds.includes(kind));
const areAll = (stops: readonly Stop[], kinds: readonly Kind[]): boolean => stops.every((stop) => isOf(stop, kinds));
const isReed = (stop: Stop): boolean => isOf(stop, KIND_GROUPS.reed);
const isFrench = (tradition: Tradition): boolean => tradition.startsWith("french-");

/** `8 4 2 2/3`: the pitches printed on the knobs, longest first, each once. */
function pitchesOf(stops: readonly Stop[]): string {
  const feet = [...new Set(stops.map((stop) => stop.pitch).filter((pitch) => pitch !== null))];
  return feet
    .toSorted(compareFeet)
    .map((foot) => pitchName(foot))
    .join(" ");
}

/** A compound's name without its number of ranks: `Cornet`, whether the jamb says `Cornet V` or not. */
const plainName = (stop: Stop): string =>
  stop.ranks > 1 ? stop.name.replace(/\s+[IVX]+(?:-[IVX]+)?$/u, "") : stop.name;

/** `Oboe`, but `Posaune 16`: a stop that carries the colour by itself; 8' goes without saying. */
function nameOf(stop: Stop): string {
  const pitch = stop.pitch && !isOf(stop, COMPOUNDS) ? pitchName(stop.pitch) : "8";
  return pitch === "8" ? plainName(stop) : `${stop.name} ${pitch}`;
}

const words = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join(" ");

/** The chorus with its mixture, by the word of the school. */
function chorusWord(tradition: Tradition): string {
  if (isFrench(tradition)) return "Plein jeu";
  if (tradition === "italian-renaissance") return "Ripieno";
  return tradition === "spanish" ? "Lleno" : "Full chorus";
}

function reedWords(stops: readonly Stop[], reeds: readonly Stop[], part: Part, tradition: Tradition): string {
  const [first, second] = reeds as [Stop, Stop | undefined];
  const cornet = stops.find((stop) => stop.kinds.includes("cornet"));
  const flues = stops.filter((stop) => !isReed(stop) && stop !== cornet);
  if (part.role === "plenum") {
    const mixed = stops.some((stop) => isOf(stop, MIXTURES));
    if (mixed && tradition === "french-symphonic") return "Grand chœur";
    if (cornet && !mixed && isFrench(tradition)) return "Grand jeu";
    if (flues.length > 1) {
      const ground = mixed ? chorusWord(tradition) : flueWords(flues, tradition);
      const tongues = cornet ? "reeds and cornet" : reeds.length > 1 ? "reeds" : `the ${nameOf(first)}`;
      return `${ground} with ${tongues}`;
    }
  }
  if (cornet) return reeds.length === 1 ? `${nameOf(first)} and ${nameOf(cornet)}` : "Reeds and cornet";
  if (reeds.length > 2) return words("Reeds", pitchesOf(reeds));
  return second ? `${nameOf(first)} and ${nameOf(second)}` : nameOf(first);
}

/** Flues without a compound or a celeste, by what they have in common. */
function flueWords(stops: readonly Stop[], tradition: Tradition): string {
  const [only] = stops;
  if (only && stops.length === 1) return words(only.name, only.pitch ? pitchName(only.pitch) : "");
  const pitches = pitchesOf(stops);
  if (areAll(stops, WIDE) && stops.some((stop) => isOf(stop, FLUTES))) return words("Flutes", pitches);
  if (areAll(stops, PRINCIPALS)) return words("Principals", pitches);
  if (areAll(stops, STRINGS)) return words("Strings", pitches);
  if (
    areAll(stops, KIND_GROUPS.foundation) &&
    stops.every((stop) => stop.pitch && compareFeet(stop.pitch, FOUR) <= 0)
  ) {
    return words(isFrench(tradition) ? "Fonds" : "Foundations", pitches);
  }
  const chorus = stops.filter((stop) => isOf(stop, PRINCIPALS)).length > 1;
  return words(chorus ? "Chorus" : "Flues", pitches);
}
const FOUR = { over: 4, under: 1 };

/** What a part sounds like, as the head of a label. */
function soundWords(stops: readonly Stop[], part: Part, tradition: Tradition): string {
  const reeds = stops.filter(isReed);
  if (reeds.length > 0) return reedWords(stops, reeds, part, tradition);
  const mixtures = stops.filter((stop) => isOf(stop, MIXTURES));
  const [mixture] = mixtures;
  if (mixture) {
    const one = mixtures.length === 1 && part.role !== "plenum" && part.role !== "accompaniment";
    return one ? `Chorus with the ${nameOf(mixture)}` : chorusWord(tradition);
  }
  const telling = stops.find((stop) => stop.kinds.includes("cornet")) ?? stops.find((stop) => isOf(stop, THIRDS));
  if (telling) return nameOf(telling);
  if (isFrench(tradition) && areAll(stops, WIDE) && stops.some((stop) => stop.kinds.includes("tierce")))
    return "Jeu de tierce";
  const celeste = stops.find((stop) => stop.kinds.includes("celeste"));
  if (celeste) return nameOf(celeste);
  return flueWords(stops, tradition);
}

const COUNTS = ["no", "one", "two", "three", "four", "five", "six"];

/** What lies under or beside the leading part, in the middle of a sentence. */
function groundWords(stops: readonly Stop[], part: Part, tradition: Tradition): string {
  const [only] = stops;
  if (only && stops.length === 1) return `the ${nameOf(only)}`;
  const count = COUNTS[stops.length] ?? "many";
  if (stops.every((stop) => stop.pitch && pitchName(stop.pitch) === "8") && !stops.some((stop) => isReed(stop))) {
    const celeste = stops.find((stop) => stop.kinds.includes("celeste"));
    if (celeste) return `the ${nameOf(celeste)}`;
    return `${count} ${areAll(stops, FLUTES) ? "flutes" : areAll(stops, STRINGS) ? "strings" : "8s"}`;
  }
  const telling = soundWords(stops, part, tradition);
  if (stops.some((stop) => `${telling} `.startsWith(`${plainName(stop)} `))) return `the ${telling}`;
  const noun = `${telling.charAt(0).toLowerCase()}${telling.slice(1)}`;
  return telling.startsWith(chorusWord(tradition)) ? `the ${noun}` : noun;
}

const octaveWords = ({ placing }: JudgedPart): string =>
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

function partnerWords(lead: JudgedPart, other: JudgedPart, ground: string): string {
  const { part } = lead.placed;
  if (part.hands === "feet") return ` in the pedal under ${ground}`;
  if (part.place === "tenor") return ` in the tenor, with ${ground}`;
  if (part.place === "bass" && other.placed.part.role !== "voice") return ` in the bass, with ${ground}`;
  return ` over ${ground}`;
}

/**
 * What a musician would call a judged registration: `Oboe over two flutes`, `Full chorus with pedal reeds`,
 * `Trompette against Cornet`. At most {@link LONGEST_LABEL} characters; the same parts always give the same label.
 *
 * @param parts what each part hears, as a judgement holds it; parts left out of the registration are left out here.
 * @returns `Silence` when nothing is heard.
 */
export function labelOf({ instrument, section }: Labelled, parts: readonly JudgedPart[]): string {
  const byId = new Map(instrument.divisions.flatMap((division) => division.stops).map((stop) => [stop.id, stop]));
  const stopsOf = (one: JudgedPart): readonly Stop[] => one.heard.map((id) => byId.get(id) as Stop);
  const sounding = parts.filter((one) => one.heard.length > 0);
  const lead = LEADING.map((role) => sounding.find((one) => one.placed.part.role === role)).find((one) => one);
  if (!lead) return "Silence";
  const { tradition } = section;
  const { role } = lead.placed.part;
  const head = soundWords(stopsOf(lead), lead.placed.part, tradition);
  const raised = words(head, octaveWords(lead));
  const joined = (what: string): string => (head.includes(" with ") ? ` and ${what}` : ` with ${what}`);
  const shaken = lead.sound.tremulant === 1 ? joined("tremulant") : "";
  /** A part without what only a coupler brings along from the leading keyboard. */
  const groundOf = (one: JudgedPart): string => {
    const all = stopsOf(one);
    const own = all.filter((stop) => !lead.heard.includes(stop.id));
    return words(groundWords(own.length > 0 ? own : all, one.placed.part, tradition), octaveWords(one));
  };

  const peers = sounding.filter((one) => one !== lead && one.placed.part.role === role);
  const under = sounding.find((one) => one !== lead && ["accompaniment", "plenum"].includes(one.placed.part.role));
  if (peers.length > 0 && (role === "voice" || role === "plenum")) {
    const others = peers.map(groundOf);
    const sound = (one: JudgedPart): string => one.heard.join("|");
    const tail = peers.every((one) => sound(one) === sound(lead)) ? "" : ` against ${others.join(" and ")}`;
    const first = others[0] ?? "";
    return fitting([
      `${raised}${shaken}${tail}`,
      `${raised}${tail}`,
      `${head}${tail}`,
      `${head} against ${first}`,
      head,
    ]);
  }
  if (under && role !== "plenum") {
    if (under.heard.join("|") === lead.heard.join("|")) return fitting([`${raised}${shaken}, all parts alike`, head]);
    const tail = partnerWords(lead, under, groundOf(under));
    const echo = sounding.some((one) => one.placed.part.role === "echo") ? ", with echo" : "";
    return fitting([`${raised}${shaken}${tail}${echo}`, `${raised}${tail}`, `${head}${tail}`, head]);
  }
  const bass = sounding.find((one) => one !== lead && one.placed.part.role === "bass");
  const pedalReeds =
    role === "plenum" &&
    bass &&
    bass.placed.keyboard.kind === "pedal" &&
    stopsOf(bass).some((stop) => isReed(stop) && stop.division === bass.placed.keyboard.name);
  const pedal = !pedalReeds ? "" : / (?:reeds|anches)$/.test(head) ? " in hands and feet" : joined("pedal reeds");
  const coupled = role === "plenum" ? couplerWords(lead) : "";
  const tail = coupled === "" ? "" : `, ${coupled}`;
  return fitting([`${raised}${shaken}${pedal}${tail}`, `${raised}${pedal}${tail}`, `${raised}${pedal}`, raised, head]);
}

/** What distinguishes a registration from a twin of the same label, most telling first; empty when nothing can be said. */
function differences(labelled: Labelled, parts: readonly JudgedPart[], twin: readonly JudgedPart[]): readonly string[] {
  const stops = labelled.instrument.divisions.flatMap((division) => division.stops);
  const pedals = new Set(
    labelled.instrument.divisions.filter((each) => each.kind === "pedal").map((each) => each.name),
  );
  const only = (one: readonly JudgedPart[], other: readonly JudgedPart[]): readonly Stop[] => {
    const known = new Set(other.flatMap((part) => part.heard));
    const own = new Set(one.flatMap((part) => part.heard).filter((id) => !known.has(id)));
    return stops.filter((stop) => own.has(stop.id));
  };
  const where = (some: readonly Stop[]): string =>
    some.every((stop) => pedals.has(stop.division)) ? " in the pedal" : "";
  const told = (some: readonly Stop[]): string => `${some.map(stopLabel).join(" and ")}${where(some)}`;
  const [more, less] = [only(parts, twin), only(twin, parts)];
  const found: string[] = [];
  const [added, dropped] = [more.slice(0, 1), less.slice(0, 1)];
  if (more.length === 1 && less.length === 1) {
    found.push(`${added.map(stopLabel)} for ${dropped.map(stopLabel)}${where([...more, ...less])}`);
  }
  if (more.length > 0 && less.length === 0) found.push(`with ${told(more)}`);
  if (more.length === 0 && less.length > 0) found.push(`without ${told(less)}`, `without ${told(dropped)}`);
  if (more.length > 0) found.push(`with ${told(added)}`);
  for (const part of parts) {
    const other = twin.find((each) => each.placing.part === part.placing.part);
    if (!other) found.push(`with ${part.placing.part}`);
    else if (other.placing.keyboard !== part.placing.keyboard)
      found.push(`${part.placed.part.role} on ${part.placing.keyboard}`);
    else if (other.placing.octave !== part.placing.octave) {
      found.push(`${part.placed.part.role} ${octaveWords(part) || "at its place"}`);
    } else if (other.sound.tremulant !== part.sound.tremulant) {
      found.push(part.sound.tremulant === 1 ? "with tremulant" : "without tremulant");
    } else if (other.heard.length !== part.heard.length) {
      found.push(part.heard.length > other.heard.length ? "pedal coupled" : "pedal uncoupled");
    }
  }
  if (twin.some((each) => !parts.some((part) => part.placing.part === each.placing.part))) found.push("fewer parts");
  return found;
}

/**
 * The labels of several registrations of one section, in their order. A registration whose label an earlier one has
 * already says how it differs from that one (`Plein jeu, Positif coupled; with Bourdon 8`), where words can say it.
 */
export function labelsOf(labelled: Labelled, list: readonly (readonly JudgedPart[])[]): readonly string[] {
  const taken = new Map<string, readonly JudgedPart[]>();
  return list.map((parts) => {
    const label = labelOf(labelled, parts);
    const twin = taken.get(label);
    const told = twin
      ? differences(labelled, parts, twin)
          .flatMap((each) => [`${label}; ${each}`, `${label.split(", ")[0]}; ${each}`])
          .find((each) => each.length <= LONGEST_LABEL && !taken.has(each))
      : label;
    const settled = told ?? label;
    if (!taken.has(settled)) taken.set(settled, parts);
    return settled;
  });
}
