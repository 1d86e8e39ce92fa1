import type { Division, Instrument } from "./instrument.ts";

/** What a division is among the keyboards of an organ, as recipes of the schools ask for it. */
export type DivisionKind = "main" | "positive" | "choir" | "swell" | "recit" | "echo" | "solo" | "pedal";

/** Headings of the trade by what they are, folded to plain lower-case letters. A division may be several at once. */
const NAMED: readonly (readonly [RegExp, readonly DivisionKind[]])[] = [
  [
    /^(hauptwerk|hauptmanual|hauptwerck|manualwerk|great|grand ?orgue|grand ?choeur|hoofdwerk|hoofdmanuaal|grande? ?organo|organo ?grande|organo ?mayor|organo ?principal|teclado|manuale|manual|first manual|werk)\b/,
    ["main"],
  ],
  [
    /^(ruckpositiv|rugpositief|rugwerk|positiv|positif|positief|positivo|cadereta|chair|choir|organo ?secondo|unterwerk|brustwerk|brustpositiv|borstwerk|oberpositiv|oberwerk|bovenwerk|seitenwerk|kronpositiv|hinterwerk)/,
    ["positive"],
  ],
  [/^choir/, ["choir", "positive"]],
  [/^(swell|schwellwerk|zwelwerk|espressivo|organo ?espressivo|expressivo|expresivo)/, ["swell", "recit"]],
  [/^(recit|recitativo|recitatief)/, ["recit", "swell"]],
  [/^(echo|eco|fernwerk)/, ["echo"]],
  [/^(solo|bombarde|resonance|hochdruck)/, ["solo"]],
];

/** Letters only, without accents, in lower case: `Récit expressif` becomes `recit expressif`. */
const folded = (name: string): string =>
  name
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/ß/g, "ss")
    .toLowerCase()
    .replace(/[^a-z]+/g, " ")
    .trim();

const KEYBOARD_WORDS =
  "manuals?|manuaal|manuale|klavier|clavier|teclado|tastiera|keyboard|klaviatur|werk|mano|organo|orgue";
/** Ordinal words of the six languages, folded; first to fifth. */
const ORDINALS: readonly string[] = [
  "first|erstes?|eerste|premier|primera?|primo|prima|primer",
  "second|zweites?|tweede|deuxieme|secondo|seconda|segundo",
  "third|drittes?|derde|troisieme|terzo|terza|tercero|tercer",
  "fourth|viertes?|vierde|quatrieme|quarto|quarta|cuarto",
  "fifth|fuenftes?|funftes?|vijfde|cinquieme|quinto|quinta",
];
const ROMAN = ["i", "ii", "iii", "iv", "v", "vi", "vii"];
const NUMBER = `${ROMAN.join("|")}|[1-7](?: ?(?:st|nd|rd|th|er|e|eme|o|a|de))?|${ORDINALS.join("|")}`;
const NUMBERED = new RegExp(`^(?:(?:${KEYBOARD_WORDS}) (${NUMBER})|(${NUMBER}) (?:${KEYBOARD_WORDS})|(${NUMBER}))$`);

/** The number of a keyboard that is called by it and by nothing else: `Manual II`, `2e clavier`, `III`. `null` for others. */
function numberOf(name: string): number | null {
  const plain = name
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim();
  const match = NUMBERED.exec(plain);
  const said = match?.[1] ?? match?.[2] ?? match?.[3];
  if (said === undefined) return null;
  const roman = ROMAN.indexOf(said);
  if (roman >= 0) return roman + 1;
  const ordinal = ORDINALS.findIndex((words) => new RegExp(`^(?:${words})$`).test(said));
  return ordinal >= 0 ? ordinal + 1 : Number(said[0]);
}

/** Length of the deepest principal, in feet; 0 where there is none. */
const deepestPrincipal = (division: Division): number =>
  division.stops.reduce(
    (deepest, { kinds, pitch }) =>
      kinds.includes("principal") && pitch ? Math.max(deepest, pitch.over / pitch.under) : deepest,
    0,
  );

/** Deepest manual principal first, then the larger division: the sign of a main division where names do not tell. */
const weight = (division: Division): number => deepestPrincipal(division) * 1000 + division.stops.length;

/**
 * The main one of divisions whose names do not tell. Where keyboards are called by numbers it is the first, as organs of
 * the 19th century number them everywhere; but not where another numbered one has the deeper principal, for then the
 * first is a positive in front (neo-baroque organs of three manuals count so). Common practice.
 */
function mainOf(divisions: readonly Division[]): Division | undefined {
  const byWeight = [...divisions].sort((a, b) => weight(b) - weight(a));
  const numbered = divisions.filter((each) => numberOf(each.name) !== null);
  const first = numbered.find((each) => numberOf(each.name) === 1);
  const deepest = Math.max(...numbered.map(deepestPrincipal));
  return first && deepestPrincipal(first) >= deepest ? first : byWeight[0];
}

const kindsOfInstrument = new WeakMap<Instrument, ReadonlyMap<string, ReadonlySet<DivisionKind>>>();

/**
 * What each division is, by its heading in any of the six languages, and by number or size where headings do not tell:
 * every organ with manuals has one main division, and another manual without a telling name serves as a positive.
 */
export function divisionKinds(instrument: Instrument): ReadonlyMap<string, ReadonlySet<DivisionKind>> {
  const known = kindsOfInstrument.get(instrument);
  if (known) return known;
  const kinds = new Map<string, Set<DivisionKind>>();
  for (const division of instrument.divisions) {
    const name = numberOf(division.name) === null ? folded(division.name) : "";
    const found = NAMED.filter(([pattern]) => pattern.test(name)).flatMap(([, what]) => what);
    kinds.set(division.name, new Set(division.kind === "pedal" ? ["pedal"] : found));
  }
  const manuals = instrument.divisions.filter((each) => each.kind === "manual");
  if (manuals.length > 0 && !manuals.some((each) => kinds.get(each.name)?.has("main"))) {
    const free = manuals.filter((each) => kinds.get(each.name)?.size === 0);
    const main = mainOf(free.length > 0 ? free : manuals);
    if (main) kinds.get(main.name)?.add("main");
  }
  for (const division of manuals) {
    const own = kinds.get(division.name) as Set<DivisionKind>;
    if (own.size === 0) own.add("positive");
    if (division.box !== null && !own.has("main")) own.add("swell");
  }
  kindsOfInstrument.set(instrument, kinds);
  return kinds;
}
