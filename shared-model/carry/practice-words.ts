import { joined } from "../rules/rule.ts";
import { hasPistons, type Instrument } from "../stoplist/instrument.ts";
import type { CarriedPiece, CarriedSection } from "./carry.ts";

const hasPedal = ({ divisions }: Instrument): boolean => divisions.some(({ kind }) => kind === "pedal");
const hasBox = ({ divisions }: Instrument): boolean => divisions.some(({ box }) => box !== null);

/** `The Récit is practised on the Swell, the Positif and the Grand-Orgue on the Great`; `null` where each has its own name. */
export function practisedOn({ keyboards }: CarriedPiece): string | null {
  const others = [...keyboards].filter(([home, here]) => home !== here);
  if (others.length === 0) return null;
  const heres = [...new Set(others.map(([, here]) => here))];
  const words = heres.map((here) => {
    const homes = others.filter((each) => each[1] === here).map(([home]) => `the ${home}`);
    return [joined(homes), `on the ${here}`, homes.length] as const;
  });
  const [[first, where, count] = ["", "", 1], ...rest] = words;
  const head = `${first.charAt(0).toUpperCase()}${first.slice(1)} ${count > 1 ? "are" : "is"} practised ${where}`;
  return [head, ...rest.map(([homes, at]) => `${homes} ${at}`)].join(", ");
}

/** Keyboards of home that are practised on one. */
function sharedKeyboards({ keyboards }: CarriedPiece): readonly string[] {
  const heres = [...new Set(keyboards.values())];
  return heres.flatMap((here) => {
    const homes = [...keyboards].filter((each) => each[1] === here).map(([home]) => home);
    return homes.length > 1 ? [`going between ${joined(homes)}, which are one keyboard here, the ${here}`] : [];
  });
}

/** What of the whole piece cannot be practised on an organ, each for the middle of a sentence; empty for nothing. */
export function neverPractised(carried: CarriedPiece): readonly string[] {
  const { from, to, made } = carried;
  const { sections, changes } = made.before;
  const played = sections.flatMap(({ chosen }) => chosen.entry.placings.map(({ keyboard }) => keyboard));
  const feet = from.divisions.some(({ kind, name }) => kind === "pedal" && played.includes(name));
  const boxes = sections.some(({ chosen }) => [...chosen.entry.state.boxes.values()].some((at) => at !== "open"));
  const pressed = changes.filter(({ means }) => means.by === "general" || means.by === "divisionals").length;
  return [
    ...sharedKeyboards(carried),
    ...(feet && !hasPedal(to) ? ["what the feet play: there is no pedal"] : []),
    ...(boxes && !hasBox(to) ? ["the box: there is none"] : []),
    ...(pressed > 0 && !hasPistons(to.aids)
      ? [`pressing ${pressed === 1 ? "the piston" : `the ${pressed} pistons`} of ${from.name}: there are none`]
      : []),
  ];
}

/** What of a section cannot be practised on an organ, likewise: where the hands, pitch or console are otherwise than at home. */
export function notPractised({ after, missing, differences, between }: CarriedSection): readonly string[] {
  if (!after) return missing.length > 0 ? missing : ["it has no means here"];
  return [...differences, ...between]
    .filter(({ about }) => about !== "sound")
    .map(({ part, text }) => (part === null ? text : `${part}: ${text}`));
}

/**
 * What cannot be practised, section by section, each thing once with the sections that it concerns: `in Verse 1 and Verse 2,
 * bass: built on 8 instead of 16`. Sections without means are told apart and left out here.
 */
export function nowherePractised({ sections }: CarriedPiece): readonly string[] {
  const where = new Map<string, string[]>();
  for (const [at, section] of sections.entries()) {
    const name = section.before.music.section.name ?? `section ${at + 1}`;
    for (const words of section.after ? notPractised(section) : [])
      where.set(words, [...(where.get(words) ?? []), name]);
  }
  const isAll = (names: readonly string[]): boolean => names.length > 2 && names.length === sections.length;
  return [...where].map(([words, names]) => `in ${isAll(names) ? "every section" : joined(names)}, ${words}`);
}
