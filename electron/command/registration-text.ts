import type { ConsoleState } from "../../shared-model/console/state.ts";
import { stopLabel } from "../../shared-model/files/stop-name.ts";
import type { Judgement } from "../../shared-model/judging/judge.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import type { Reason } from "../../shared-model/judging/reason.ts";
import { citations } from "../../shared-model/music/prescriptions/citation.ts";
import type { Points } from "../../shared-model/rules/rule.ts";
import type { Instrument, Stop } from "../../shared-model/stoplist/instrument.ts";
import { table, wrapped } from "./plain-text.ts";
import { boxesByDivision, couplersOn } from "./proposal-json.ts";

const OCTAVES: Readonly<Record<-1 | 0 | 1, string>> = { [-1]: ", an octave lower", 0: "", 1: ", an octave higher" };
const BOXES = { open: "open", half: "half open", closed: "closed" } as const;

/** Points with their sign, as many places as they have: `+12.5`, `-3`. */
const signed = (points: Points): string => `${points < 0 ? "-" : "+"}${Math.abs(points) / 100}`;

/** What would do as well as a drawn stop, by its id. */
type Spares = ReadonlyMap<string, readonly Stop[]>;

/** `Gedackt 8`, or with what would do as well: `Gedackt 8 (or Lieblich Gedackt 8)`. */
function stopWords(stop: Stop, spares: Spares): string {
  const others = spares.get(stop.id);
  return others ? `${stopLabel(stop)} (or ${others.map(stopLabel).join(" or ")})` : stopLabel(stop);
}

/** The keyboard's own stops, then what couplers bring: by its name alone where another part's row lists its stops. */
function heardWords(
  instrument: Instrument,
  { parts }: Judgement,
  keyboard: string,
  heard: readonly string[],
  spares: Spares,
): string {
  const rows = instrument.divisions.map(({ name, stops }) => ({
    name,
    labels: stops.filter((stop) => heard.includes(stop.id)).map((stop) => stopWords(stop, spares)),
  }));
  const own = rows.find((row) => row.name === keyboard)?.labels ?? [];
  const coupled = rows
    .filter((row) => row.name !== keyboard && row.labels.length > 0)
    .map(({ name, labels }) =>
      parts.some((part) => part.placing.keyboard === name) ? name : `${name} (${labels.join(", ")})`,
    );
  return [own.join(", ") || (coupled.length > 0 ? "" : "nothing"), ...coupled.map((each) => `+ ${each}`)]
    .join(" ")
    .trim();
}

/**
 * What each part is played on and hears, then couplers, tremulants and boxes, a row each.
 *
 * @param spares what would do as well as a drawn stop and is named beside it; nothing by default.
 */
export function registrationLines(
  { instrument, section }: Pick<Problem, "instrument" | "section">,
  state: ConsoleState,
  judgement: Judgement,
  indent: string,
  spares: Spares = new Map(),
): readonly string[] {
  const rows = judgement.parts.map(({ placing, heard }) => {
    return [
      placing.part,
      `${placing.keyboard}${OCTAVES[placing.octave]}`,
      heardWords(instrument, judgement, placing.keyboard, heard, spares),
    ];
  });
  const resting = section.parts.filter((part) => !judgement.parts.some((each) => each.placing.part === part.id));
  const boxes = Object.entries(boxesByDivision(instrument, state, judgement)).filter(([, at]) => at !== "open");
  const tremulants = instrument.tremulants.filter((name) => state.tremulants.has(name));
  const couplers = couplersOn(instrument, state);
  const settings = [
    couplers.length > 0 && ["couple", couplers.join(", ")],
    tremulants.length > 0 && [
      "tremulant",
      tremulants.map((name) => (name === "all" ? "whole organ" : name)).join(", "),
    ],
    state.unisonOff.size > 0 && ["unison off", [...state.unisonOff].join(", ")],
    boxes.length > 0 && ["box", boxes.map(([name, at]) => `${name} ${BOXES[at]}`).join(", ")],
  ].filter((row) => row !== false);
  return [
    ...table([...rows, ...resting.map((part) => [part.id, "rests", ""])], indent),
    ...(settings.length > 0 ? table(settings, indent) : []),
  ];
}

/** Reasons with their points, dearest first; with `sources` also where each comes from. */
export function reasonLines(reasons: readonly Reason[], indent: string, sources: boolean): readonly string[] {
  const ranked = reasons.toSorted((a, b) => Math.abs(b.points) - Math.abs(a.points));
  const width = Math.max(0, ...ranked.map((each) => signed(each.points).length));
  return ranked.flatMap(({ points, text, source }) =>
    wrapped(sources ? `${text} [${citations(source)}]` : text, `${indent}${signed(points).padStart(width)}  `),
  );
}
