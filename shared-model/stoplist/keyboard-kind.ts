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

/** Deepest manual principal first, then the larger division: the sign of a main division where names do not tell. */
function weight(division: Division): number {
  let deepest = 0;
  for (const stop of division.stops) {
    if (stop.kinds.includes("principal") && stop.pitch) deepest = Math.max(deepest, stop.pitch.over / stop.pitch.under);
  }
  return deepest * 1000 + division.stops.length;
}

const kindsOfInstrument = new WeakMap<Instrument, ReadonlyMap<string, ReadonlySet<DivisionKind>>>();

/**
 * What each division is, by its heading in any of the six languages, and by size where headings do not tell: every
 * organ with manuals has one main division, and a second manual without a telling name serves as a positive.
 */
export function divisionKinds(instrument: Instrument): ReadonlyMap<string, ReadonlySet<DivisionKind>> {
  const known = kindsOfInstrument.get(instrument);
  if (known) return known;
  const kinds = new Map<string, Set<DivisionKind>>();
  for (const division of instrument.divisions) {
    const name = folded(division.name);
    const found = NAMED.filter(([pattern]) => pattern.test(name)).flatMap(([, what]) => what);
    kinds.set(division.name, new Set(division.kind === "pedal" ? ["pedal"] : found));
  }
  const manuals = instrument.divisions.filter((each) => each.kind === "manual");
  if (manuals.length > 0 && !manuals.some((each) => kinds.get(each.name)?.has("main"))) {
    const free = manuals.filter((each) => kinds.get(each.name)?.size === 0);
    const [main] = [...(free.length > 0 ? free : manuals)].sort((a, b) => weight(b) - weight(a));
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
