import { LINK_WORDS } from "../music/piece.ts";
import { FILE_KINDS, FILE_VERSION, kindInWords, versionLine } from "./file-kind.ts";
import type { Trouble, TroubleCode, TroubleFacts } from "./trouble.ts";

type Words = { readonly [Code in TroubleCode]: (facts: Extract<TroubleFacts, { readonly code: Code }>) => string };

/** Text of a file may be long or hold signs that upset a terminal: it is shown short and on one line. */
const shown = (text: string): string => {
  const plain = text.replace(/[\p{C}\s]+/gu, " ").trim();
  return `"${plain.length > 60 ? `${plain.slice(0, 60)}…` : plain}"`;
};

const listed = (words: readonly string[], last: "or" | "and"): string =>
  words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1]}`;

const didYouMean = (nearest: readonly string[]): string =>
  nearest.length > 0 ? ` Did you mean ${listed(nearest, "or")}?` : "";

const sayKind = (kinds: readonly string[]): string =>
  kinds.length > 0
    ? ` Say what it is, on the stop: kind: ${listed([...new Set(kinds)], "or")}.`
    : " Say what it is, on the stop, such as kind: stopped-flute (the schema lists all kinds).";

const PLURAL = {
  division: "divisions",
  stop: "stops",
  rank: "ranks",
  box: "boxes",
  part: "parts",
  coupler: "couplers",
  texture: "textures",
  section: "sections",
} as const;

/** Names that a sentence counts up; an organ with more divisions shows its first. */
const MOST_NAMES = 8;

const allThereIs = (what: string, all: readonly string[]): string =>
  all.length === 0
    ? ""
    : all.length === 1
      ? ` The only one is ${all[0]}.`
      : ` The ${what} are ${listed(all.slice(0, MOST_NAMES), "and")}${all.length > MOST_NAMES ? " and others" : ""}.`;

const WORDS: Words = {
  empty: () =>
    `The file is empty. Its first line says what it is: registrant: and ${listed(FILE_KINDS.map(versionLine), "or")}.`,
  "not-text": ({ character }) =>
    `This is not a text file: it holds the sign number ${character}, which no text has. Choose a YAML file.`,
  "not-utf8": () => "The text is not in UTF-8, so some letters are lost here. Save the file again as UTF-8.",
  "too-large": ({ limit }) =>
    `The file is longer than ${limit} characters, more than any organ needs. Is it the right file?`,
  "too-deep": ({ limit }) => `Lists stand within lists more than ${limit} deep here. Is it the right file?`,
  "too-long": ({ limit }) =>
    `The file has more than ${limit} words and signs, more than any organ needs. Is it the right file?`,
  yaml: ({ problem }) => problem,
  "duplicate-key": ({ key, firstLine }) =>
    `${shown(key)} stands here a second time; the first is on line ${firstLine}. Take one of the two away.`,
  "odd-key": () => "A list or a group stands here where the name of a key belongs. Write key: value.",
  "alias-unknown": ({ name }) => `*${name} points to nothing: no &${name} stands before it.`,
  "alias-too-many": ({ limit }) => `More than ${limit} uses of *names. Write the entries out here.`,
  "too-many-troubles": ({ limit }) => `There are more than ${limit} errors; the rest is not shown. Mend these first.`,

  "version-missing": ({ kind, wanted }) =>
    `The first line must say what this file is. For ${kindInWords(kind)} write registrant: ${wanted}.`,
  "version-other": ({ found, kind, wanted }) =>
    `registrant: says ${shown(found)}, but ${kindInWords(kind)} is wanted here. If it is one, write registrant: ${wanted}.`,
  "version-newer": ({ found, wanted }) =>
    `This file is of a newer form, ${shown(found)}; this version of the program knows forms up to ${FILE_VERSION}. Get a newer version, or write registrant: ${wanted} if the file keeps to that form.`,
  "not-keys": ({ of }) => `${of} is written as keys with values, each on its own line as key: value.`,
  "key-missing": ({ key, of, expected }) => `${of} lacks ${key}: (${expected}). Add a line ${key}: with it.`,
  "value-wrong": ({ key, expected, found }) => `${key}: should be ${expected}, not ${found}.`,
  "word-unknown": ({ key, found, nearest, all }) =>
    `${key}: does not know ${shown(found)}.${didYouMean(nearest)}${nearest.length === 0 || all.length < 9 ? ` It takes ${listed(all, "or")}.` : ""}`,
  "key-unknown": ({ key, of, nearest, times }) =>
    `${of} has no key ${shown(key)}${times > 1 ? ` (it stands there ${times} times)` : ""}; it is kept and not used.${didYouMean(nearest)}`,

  "pitch-unreadable": ({ stop, problem }) => `${stop}: ${problem}`,
  "pitch-not-a-pipe": ({ stop, pitch, nearest }) =>
    `${stop}: no organ pipe rank speaks at ${pitch}'; did you mean ${nearest}?`,
  "pitch-missing": ({ stop }) =>
    `${stop} has no pitch, and its name alone does not tell it. Write it behind the name, such as 8 or 2 2/3.`,
  "pitch-implied": ({ stop, pitch }) =>
    `${stop} has no pitch in the file; by custom it is ${pitch}'. Write the pitch if yours differs.`,
  "key-unreadable": ({ text }) =>
    `${shown(text)} is not a key. Write C2 for the lowest C of most keyboards, C4 for middle C, F#4 or Eb5.`,
  "compass-unreadable": ({ text }) =>
    `${shown(text)} is not a compass. Write the lowest and the highest key, such as C2-G6.`,
  "compass-upside-down": ({ low, high }) =>
    `The compass ends at ${high}, below its first key ${low}. Write the lowest key first.`,
  "missing-outside": ({ key, division }) =>
    `${key} is named as missing, but the keyboard of ${division} does not reach it.`,
  "range-upside-down": ({ stop, from, to }) =>
    `${stop} would begin at ${from} and end at ${to}, below it. Change from: or to:.`,
  "range-outside": ({ stop, key, division, compass }) =>
    `${stop} names the key ${key}, outside the keyboard of ${division} (${compass}); it ends where the keyboard ends.`,
  "no-keys": ({ stop }) => `No key of its division plays ${stop}. Change its from:, to: or half:, or the compass.`,
  "treble-by-custom": ({ stop, from, low }) =>
    `${stop} is taken to begin at ${from}, as such stops do by custom. Write from: ${low} on the stop if yours goes through.`,

  "no-divisions": () => "The organ has no division. Add one under divisions: with a name, a kind and its stops.",
  "no-stops": () => "The organ has no stops, so nothing can be drawn.",
  "no-manual": () => "The organ has no keyboard for the hands; only music for the pedal can be registered.",
  "all-off": () => "Every stop is marked off, so nothing can be drawn.",
  "too-many-stops": ({ limit }) => `The organ has more than ${limit} stops. Is it the right file?`,
  "division-twice": ({ name, firstLine }) =>
    `A second division is named ${shown(name)}; the first is on line ${firstLine}. Give each its own name.`,
  "keyboard-counted": ({ division, keyboard }) =>
    `${division} has no keyboard: number; it is counted as manual ${keyboard}. Manuals count from the lowest.`,
  "keyboard-shared": ({ division, other, keyboard }) =>
    `${division} and ${other} are both played from manual ${keyboard}.`,
  "keyboard-needless": ({ division, kind }) =>
    `keyboard: is not used for ${division}: a ${kind} division has no manual of its own.`,
  "stop-form": () => "A stop is written as its name and pitch (Principal 8) or as keys (name: Principal, pitch: 8).",
  "stop-nameless": () => "This stop has no name. Write the name before the pitch.",
  "name-unknown": ({ stop, nearest, kinds }) =>
    `What sort of stop ${stop} is, is not known.${didYouMean(nearest)}${sayKind(kinds)}`,
  "name-ambiguous": ({ stop, choices, kinds }) =>
    `${stop} can be more than one thing: ${listed(choices, "or")}.${sayKind(kinds)}`,
  "pipes-twice": ({ stop, first, second }) =>
    `${stop} has both ${first}: and ${second}:; its pipes can come from one of them only.`,
  "composition-empty": ({ stop }) =>
    `The composition of ${stop} names no pitches. Write it as {C2: [1 1/3, 1, 2/3], C4: [2, 1 1/3, 1]}.`,
  "composition-late": ({ stop, key, from }) =>
    `The composition of ${stop} begins at ${key}, above its lowest key ${from}; below ${key} it is silent.`,
  "ranks-differ": ({ stop, stated, found }) =>
    `${stop} has ranks: ${stated}, but its composition has ${found}; ${found} is used.`,
  "ranks-by-custom": ({ stop, ranks, composition }) =>
    `The number of ranks of ${stop} is not said; ${ranks} are assumed (${composition}). Write ranks: or composition: if you know better.`,
  "rank-twice": ({ id, firstLine }) =>
    `A second rank has the id ${shown(id)}; the first is on line ${firstLine}. Give each its own id.`,
  "rank-idle": ({ id }) => `No stop draws the rank ${id}.`,
  "rank-short": ({ stop, from, to, of }) =>
    `The rank ${of} has no pipes for the keys ${from} to ${to} of ${stop}; they are silent.`,
  "borrowed-short": ({ stop, from, to, of }) =>
    `${of} has no pipes for the keys ${from} to ${to} of ${stop}; they are silent.`,
  "borrows-itself": ({ stop }) =>
    `${stop} borrows its pipes from itself, directly or by way of others. Name a stop that has pipes of its own.`,
  "borrowed-pitch": ({ stop, pitch, of }) =>
    `${stop} has the same pipes as ${of}, so it cannot stand at ${pitch}'. Give it that stop's pitch, or let both draw one rank: of ranks:.`,
  "bass-needs-from": ({ stop }) =>
    `${stop} has bass-from: but no from:. Write from: with the lowest key of its own pipes.`,
  "unknown-name": ({ what, name, where, nearest, all = [] }) =>
    where === null
      ? `There is no ${what} ${shown(name)} ${what === "texture" ? "in the catalogue" : "here"}.${didYouMean(nearest)}${nearest.length === 0 ? allThereIs(PLURAL[what], all) : ""}`
      : nearest.length > 0
        ? `No ${what} ${shown(name)}; ${where} has ${listed(nearest, "and")}.`
        : `No ${what} ${shown(name)} in ${where}. Look up its ${PLURAL[what]} for the name that is meant.`,
  "ambiguous-stop": ({ name, choices }) =>
    `${shown(name)} can be ${listed(choices, "or")}. Write the one that is meant.`,

  "coupler-unreadable": ({ text }) =>
    `${shown(text)} is not a coupler. Write the divisions as X to Y, with 4 or 16 behind it for an octave coupler.`,
  "coupler-to-itself": ({ division }) =>
    `${division} is coupled to itself at the unison, which does nothing. Write 4 or 16 behind it for an octave coupler.`,
  "coupler-twice": ({ name, firstLine }) =>
    `The coupler ${name} stands here a second time; the first is on line ${firstLine}.`,

  "no-music": () => "The file does not say what is played. Add texture: with an id of the catalogue, or parts:.",
  "music-twice": () => "The file has both texture: and parts:. Keep one of the two.",
  "part-id": ({ part, expected }) =>
    `This part is named by its role, ${expected} (with -1, -2 in order where a role occurs twice), not ${shown(part)}.`,
  "part-backwards": ({ part, low, high }) => `${part} goes from ${low} down to ${high}. Write the lowest key first.`,
  "stop-off": ({ stop, note }) => `${stop} is marked off in the instrument${note ? ` (${note})` : ""}.`,
  "no-box": ({ division }) => `${division} stands in no box.`,
  "no-tremulant": ({ name, nearest }) => `There is no tremulant for ${shown(name)}.${didYouMean(nearest)}`,
  "no-unison-off": ({ division }) => `${division} has no unison-off.`,
  "no-keyboard": ({ division }) => `${division} has no keyboard of its own; it is played from others through couplers.`,
  "bars-backwards": ({ bars }) =>
    `The bars ${shown(bars)} run backwards, so nobody knows how long they last. Write the first bar first, as 9-24.`,
  "bars-out-of-order": ({ bars, section, before, barsBefore }) =>
    `${section} has the bars ${shown(bars)}, but ${before} before it has ${shown(barsBefore)}. Put the sections in the order in which they are played; write again: true where bars are played once more.`,
  "section-ambiguous": ({ name, numbers }) =>
    `${shown(name)} is the name of ${numbers.length} sections. Give each its own name, or write the number of the one that is meant: ${listed(numbers.map(String), "or")}.`,
  "link-to-itself": ({ kind, section }) => `${section} cannot be ${LINK_WORDS[kind]} itself. Name another section.`,
  "links-contradict": ({ section, other, kinds }) =>
    `${section} cannot be both ${LINK_WORDS[kinds[0]]} ${other} and ${LINK_WORDS[kinds[1]]} it. Take one of the two away.`,
  "links-in-ring": ({ sections }) =>
    `Each of these sections would have to be softer than the next, all the way round: ${listed(sections, "and")}. Take one of the links away.`,
  "beats-missing": ({ what }) =>
    `How long the ${what === "page-turn" ? "page turn" : what} is, is not said. Add beats: with the beats in which nothing is played, such as {what: ${what}, beats: 2}.`,
  "pin-empty": ({ section }) =>
    `${section} is pinned but has no registration, so there is nothing to keep. Add registration:, or take pinned: away.`,
  "other-organ": ({ organ, here, registered }) =>
    `The registrations of this piece were made on ${organ}, not on ${here}: ${registered === 1 ? "the one" : `all ${registered}`} in it ${registered === 1 ? "is" : "are"} kept in the file and not used here.`,
  "edit-by-hand": ({ what }) => `${what} is written in a way that can only be changed in the file itself, by hand.`,
  "edit-lost": ({ what, name, nearest }) =>
    `The file has no ${what} ${shown(name)} any more, so nothing was changed.${didYouMean(nearest)}`,
  "drawn-twice": ({ stop }) => `${stop} is drawn twice in this list; once is enough.`,
};

/**
 * The trouble as sentences for an organist: what is wrong and what to do, without the place. Every code has its words:
 * the table does not compile without them.
 */
export function troubleText(trouble: TroubleFacts): string {
  const words = WORDS[trouble.code] as (facts: TroubleFacts) => string;
  return words(trouble);
}

/** A trouble as one line with its place: `sampleford.yaml, line 14, column 9: error: ...`. */
export const troubleLine = (trouble: Trouble): string =>
  `${trouble.file}, line ${trouble.line}, column ${trouble.column}: ${trouble.severity}: ${troubleText(trouble)}`;
