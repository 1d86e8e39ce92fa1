import { SOURCES } from "../music/prescriptions/sources.ts";
import { RULES } from "./index.ts";
import type { Example, Rule } from "./rule.ts";

const READS: Readonly<Record<Rule["reads"], string>> = {
  part: "the sound of one part",
  placing: "where a part is played",
  pair: "two parts heard together",
  advice: "the organ at hand, without points",
  steps: "one registration after another",
  recipe: "what is drawn against the recipe",
};
const SEVERITY: Readonly<Record<Rule["severity"], string>> = {
  error: "error: what breaks it is not proposed",
  warning: "warning",
  note: "note",
};

/** A source as a reader looks it up; one that was not seen says so. */
function sourceText(id: string): string {
  const source = SOURCES[id];
  if (!source) return id;
  const year = source.year === null ? "" : ` (${source.year})`;
  const seen = source.evidence === "read" ? "" : "; known from the literature, not seen";
  const author = source.author === null ? "" : `${source.author}, `;
  return `${author}${source.title}${year}, ${source.where}${seen}`;
}

/** How the console of an example stands, in one line: `melody on Swell; with Swell to Great; Swell shut`. */
function standing(example: Example): string {
  const {
    texture,
    tradition,
    dynamic,
    tempo,
    couplers = [],
    tremulants = [],
    boxes = {},
    ranges = {},
    octaves = {},
  } = example;
  const positions = Object.entries(boxes).map(([box, at]) => `box of ${box} ${at}`);
  const away = Object.entries(octaves).filter(([, octave]) => octave !== 0);
  const facts = [
    example.plays,
    texture && `texture ${texture}`,
    tradition,
    dynamic,
    tempo,
    couplers.length > 0 && `couplers ${couplers.join(", ")}`,
    tremulants.length > 0 && `tremulant ${tremulants.join(", ")}`,
    ...positions,
    ...Object.entries(ranges).map(([part, range]) => `${part} ${range}`),
    ...away.map(([part, octave]) => `${part} an octave ${octave < 0 ? "lower" : "higher"}`),
  ];
  return facts.filter((fact) => typeof fact === "string").join("; ");
}

const exampleText = (example: Example): string =>
  `  - \`${example.organ}\` (${standing(example)})${example.says === undefined ? "" : `: “${example.says}”`}`;

function ruleText(rule: Rule): string {
  const [, ...others] = rule.conventions;
  const also = others.length > 0 ? `- Holds convention ${others.join(" and ")} too\n` : "";
  const yields = "yieldsToPrescription" in rule && rule.yieldsToPrescription;
  return (
    `### ${rule.id}\n\n${rule.statement}\n${rule.why}\n\n${also}` +
    `- Reads ${READS[rule.reads]}; ${SEVERITY[rule.severity]}${yields ? "; silent where a published recipe is followed to the letter" : ""}\n` +
    `- Source: ${sourceText(rule.source)}\n` +
    `- Speaks:\n${rule.examples.speaks.map(exampleText).join("\n")}\n` +
    `- Silent:\n${rule.examples.silent.map(exampleText).join("\n")}\n`
  );
}

/**
 * All rules as one Markdown page, by number of convention: statement, reason, source, and the examples with the
 * sentences that they bring forth. Made from the rules themselves, so that it cannot say anything else than they do.
 */
export function rulesReference(): string {
  const numbers = [...new Set(RULES.map((rule) => rule.conventions[0] as number))].sort((a, b) => a - b);
  const chapters = numbers.map((number) => {
    const rules = RULES.filter((rule) => rule.conventions[0] === number);
    return `## Convention ${number}\n\n${rules.map(ruleText).join("\n")}`;
  });
  return (
    "# Rules\n\n" +
    `${RULES.length} rules hold the conventions of the trade. An example gives an organ in one line: divisions parted by bars, ` +
    "stops in brackets not drawn, then who plays where; two registrations in turn are parted by an arrow.\n\n" +
    chapters.join("\n")
  );
}
