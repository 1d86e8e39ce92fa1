import { VISIT_CAUTIONS, type VisitQuestion, visitParts } from "../carry/visit.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import type { Handout, HandoutItem } from "./handout.ts";
import { organLabel } from "./survey-handout.ts";

/** A question with lines to write on; one that is answered with its answer. */
const questionItem = ({ topic, text, lines }: VisitQuestion, { visit }: Instrument): HandoutItem => {
  const answer = visit?.[topic];
  if (answer === undefined) return { lead: null, text, white: lines };
  return { lead: text, text: answer.split(/\s*\n\s*/u).join("; "), white: 0 };
};

/** What to ask, see and hear on a visit to an organ: with lines to write on, or what was answered before. */
export const visitHandout = (instrument: Instrument): Handout => ({
  title: `Visit: ${instrument.name}`,
  label: organLabel(instrument),
  parts: [
    ...visitParts(instrument).map(({ head, questions }) => ({
      head,
      items: questions.map((question) => questionItem(question, instrument)),
    })),
    { head: "Take care", items: VISIT_CAUTIONS.map(({ about, text }) => ({ lead: `${about}:`, text, white: 0 })) },
  ],
  foot: "Back home: into the file of the organ. Leave the organ as you found it.",
});
