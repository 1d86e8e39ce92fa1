import type { JudgedPart } from "../judging/judge.ts";
import { stopLabel } from "../judging/listening.ts";
import type { PlannedSection } from "../plan/planned.ts";
import { joined } from "../rules/rule.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { FAMILY_WORDS, type Family } from "../stoplist/kind.ts";
import { pairStops } from "./carry-stops.ts";

const withArticle = (noun: string): string => `${/^[aeiou]/u.test(noun) ? "an" : "a"} ${noun}`;
const GENUS: Readonly<Partial<Record<Family, string>>> = {
  "flute-open": "a flute",
  "flute-stopped": "a flute",
  "flute-half-stopped": "a flute",
  "reed-chorus": "a reed",
  "reed-solo": "a reed",
  "reed-short": "a reed",
};
/** A compound with a third is none of the chorus, though lists count it among the mixtures. */
const familyOf = ({ family, kinds }: Stop): string =>
  kinds.includes("sesquialtera") || kinds.includes("tertian") ? "a sesquialtera" : withArticle(FAMILY_WORDS[family]);
const genusOf = (stop: Stop): string => GENUS[stop.family] ?? familyOf(stop);

/** `Hautbois 8 becomes Krummhorn 8: a reed for a reed`; the second half only where it is another thing. */
function became(one: Stop, other: Stop): string {
  const words = `${stopLabel(one)} becomes ${stopLabel(other)}`;
  if (one.kinds.some((kind) => other.kinds.includes(kind))) return words;
  if (genusOf(one) === genusOf(other)) return `${words}: ${genusOf(one)} for ${genusOf(other)}`;
  return `${words}: ${familyOf(other)} for ${familyOf(one)}`;
}

/** What the stops of a part became; `null` where they are the same by the same names on a keyboard of the same name. */
function changedIn(
  ones: readonly Stop[],
  others: readonly Stop[],
  before: JudgedPart,
  after: JudgedPart,
): string | null {
  const pairs = pairStops(ones, others, () => 0).toSorted((a, b) => ones.indexOf(a.one) - ones.indexOf(b.one));
  const renamed = pairs.filter(({ one, other }) => stopLabel(one) !== stopLabel(other));
  const gone = ones.filter((stop) => !pairs.some(({ one }) => one === stop)).map(stopLabel);
  const fresh = others.filter((stop) => !pairs.some(({ other }) => other === stop)).map(stopLabel);
  // A list that prints its headings in capitals names no other keyboard.
  const goes = before.placing.keyboard.toLowerCase() !== after.placing.keyboard.toLowerCase();
  const words = [
    ...(goes ? [`from the ${before.placing.keyboard} to the ${after.placing.keyboard}`] : []),
    ...renamed.map(({ one, other }) => became(one, other)),
    ...(gone.length > 0 ? [`nothing in the place of ${joined(gone)}`] : []),
    ...(fresh.length > 0 ? [`${joined(fresh)} ${fresh.length === 1 ? "comes" : "come"} in`] : []),
  ];
  return words.length > 0 ? words.join("; ") : null;
}

const heardBy = ({ candidates }: PlannedSection, part: JudgedPart): readonly Stop[] =>
  candidates.problem.stops.filter((stop) => part.heard.includes(stop.id));

/** What the keyboards and the stops of each part became on the other organ, a sentence for each part that changed. */
export function changedStops(
  before: PlannedSection,
  after: PlannedSection,
): readonly { readonly part: string; readonly text: string }[] {
  return before.chosen.judgement.parts.flatMap((one) => {
    const { part } = one.placing;
    const other = after.chosen.judgement.parts.find((each) => each.placing.part === part);
    const text = other ? changedIn(heardBy(before, one), heardBy(after, other), one, other) : null;
    return text === null ? [] : [{ part, text }];
  });
}
