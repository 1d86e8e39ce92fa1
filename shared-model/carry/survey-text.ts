import type { Texture, Tradition } from "../music/texture.ts";
import { joined } from "../rules/rule.ts";
import type { SurveyedTexture } from "./survey.ts";

/** What a musician calls the music of a school. */
export const MUSIC_OF: Readonly<Record<Tradition, string>> = {
  neutral: "Music of any school",
  "french-classical": "French classical",
  "italian-renaissance": "Italian, 16th and 17th century",
  "north-german": "North German",
  "central-german": "Central German",
  "english-18c": "English, 18th century",
  "english-cathedral": "English cathedral",
  spanish: "Spanish",
  "french-symphonic": "French symphonic",
  "german-romantic": "German romantic",
};

/** How much of a school an organ can do, best first. */
export type Standing = "at home" | "with compromises" | "in part" | "not its music";

/** An organ's standing in one school, in words. */
export interface SchoolVerdict {
  readonly tradition: Tradition;
  readonly standing: Standing;
  /** How many of the school's textures stand at each level. */
  readonly well: number;
  readonly compromise: number;
  readonly notPossible: number;
  /** Sentences. */
  readonly text: string;
}

/** Kinds of movement as a player thinks of them, in the order in which they are named. */
const GROUPS = ["choruses", "solos", "movements in voices", "quiet movements"] as const;
type Group = (typeof GROUPS)[number];

function groupOf({ parts, colourOf }: Texture): Group {
  const role = parts.find(({ id }) => id === colourOf)?.role ?? parts[0]?.role;
  if (role === "plenum") return "choruses";
  if (role === "voice") return "movements in voices";
  return role === "accompaniment" ? "quiet movements" : "solos";
}

const WORTH = { well: 2, compromise: 1, "not-possible": 0 } as const;

/** From 0, nothing, to 1, everything well: rises with every level that rises. */
const shareOf = (some: readonly SurveyedTexture[]): number =>
  some.reduce((sum, { level }) => sum + WORTH[level], 0) / (2 * Math.max(1, some.length));

function standingOf(share: number): Standing {
  if (share >= 0.8) return "at home";
  if (share >= 0.5) return "with compromises";
  return share >= 0.25 ? "in part" : "not its music";
}

const HEADS: Readonly<Record<Standing, string>> = {
  "at home": "At home",
  "with compromises": "Much of it",
  "in part": "In part",
  "not its music": "Hardly any of it",
};

/** The first few, and how many others. */
const briefly = (words: readonly string[], most: number): string =>
  words.length <= most + 1 ? joined(words) : `${words.slice(0, most).join(", ")} and ${words.length - most} others`;

/** `Petites flûtes` of `Petites flûtes, or flûtes à bec`: a list has room for one name. */
const shortTitle = ({ texture }: SurveyedTexture): string => texture.title.replace(/, or .*$/u, "");

/** Things that most movements miss, at most three: two that name the same stops in another order are one. */
function missedMost(some: readonly SurveyedTexture[]): string {
  const missed = new Map<string, { readonly what: string; readonly titles: Set<string> }>();
  for (const each of some) {
    for (const { what } of each.lacking) {
      const key = what.split(" or ").sort().join(" or ");
      const row = missed.get(key) ?? { what, titles: new Set() };
      row.titles.add(shortTitle(each));
      missed.set(key, row);
    }
  }
  const most = [...missed.values()].toSorted((a, b) => b.titles.size - a.titles.size).slice(0, 3);
  return most
    .map(({ what, titles }) => [what, [...titles]] as const)
    .map(([what, titles]) => `no ${what} (${briefly(titles, 1)})`)
    .join("; ");
}

/** A verdict that a musician might give from the textures of one school. */
export function schoolVerdict(tradition: Tradition, some: readonly SurveyedTexture[]): SchoolVerdict {
  const at = (level: SurveyedTexture["level"]): readonly SurveyedTexture[] =>
    some.filter((each) => each.level === level);
  const [well, compromise, not] = [at("well"), at("compromise"), at("not-possible")];
  const standing = standingOf(shareOf(some));
  const groups = GROUPS.map((group) => [group, some.filter(({ texture }) => groupOf(texture) === group)] as const)
    .filter(([, members]) => members.length > 0)
    .map(([group, members]) => [group, standingOf(shareOf(members))] as const);
  const good = groups.filter(([, each]) => each === "at home").map(([group]) => group);
  const poor = groups.filter(([, each]) => each === "in part" || each === "not its music").map(([group]) => group);
  const head = `${HEADS[standing]}${standing === "with compromises" && compromise.length > 0 ? ", with compromises" : ""}`;
  const uneven = good.length > 0 && good.length < groups.length;
  const best = standing === "not its music" ? ` but its ${joined(good)}` : `; best in its ${joined(good)}`;
  const weak = poor.length > 0 && standing !== "not its music" ? `, weak in its ${joined(poor)}` : "";
  const missed = missedMost([...not, ...compromise]);
  const [cause, ...causes] = new Set(some.map(({ why }) => why.join("; ")));
  const isBeyond = not.length === some.length && causes.length === 0 && cause !== undefined && missed === "";
  const sentences = isBeyond
    ? [`None of it: ${cause}.`]
    : [
        `${head}${uneven ? best + weak : ""}.`,
        ...(not.length > 0 && standing !== "not its music"
          ? [`Out of reach: ${briefly(not.map(shortTitle), 3)}.`]
          : []),
        ...(missed === "" ? [] : [`Missed most: ${missed}.`]),
      ];
  return {
    tradition,
    standing,
    well: well.length,
    compromise: compromise.length,
    notPossible: not.length,
    text: sentences.join(" "),
  };
}
