import type { Part, Tradition } from "../music/texture.ts";
import { compareFeet } from "../pitch/foot.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";

const FLUTES: readonly Kind[] = [...KIND_GROUPS.flute, "quintadena"];
const WIDE: readonly Kind[] = [...FLUTES, "twelfth", "nasard", "quint", "tierce", "larigot", "septieme", "none"];
const STRINGS: readonly Kind[] = ["string", "soft-string"];
const PRINCIPALS: readonly Kind[] = ["principal", "twelfth", "quint"];
const MIXTURES: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife"];
const THIRDS: readonly Kind[] = ["sesquialtera", "tertian"];
/** The shortest foundation stop. */
const FOUR = { over: 4, under: 1 };
const COMPOUNDS: readonly Kind[] = [...MIXTURES, ...THIRDS, "cornet"];

const isOf = (stop: Stop, kinds: readonly Kind[]): boolean => stop.kinds.some((kind) => kinds.includes(kind));
const areAll = (stops: readonly Stop[], kinds: readonly Kind[]): boolean => stops.every((stop) => isOf(stop, kinds));
/** Whether it speaks by a tongue. */
export const isReed = (stop: Stop): boolean => isOf(stop, KIND_GROUPS.reed);
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
    if (cornet && !mixed && tradition === "french-classical") return "Grand jeu";
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

/** What a part sounds like, as the head of a label. */
export function soundWords(stops: readonly Stop[], part: Part, tradition: Tradition): string {
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
  const third = stops.find((stop) => stop.kinds.includes("tierce"))?.pitch;
  if (third && isFrench(tradition)) return third.over > 2 * third.under ? "Grand jeu de tierce" : "Jeu de tierce";
  const celeste = stops.find((stop) => stop.kinds.includes("celeste"));
  if (celeste) return nameOf(celeste);
  return flueWords(stops, tradition);
}

const COUNTS = ["no", "one", "two", "three", "four", "five", "six"];

/** What lies under or beside the leading part, in the middle of a sentence. */
export function groundWords(stops: readonly Stop[], part: Part, tradition: Tradition): string {
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
