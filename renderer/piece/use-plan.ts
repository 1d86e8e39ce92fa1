import type { Draft } from "immer";
import { useEffect, useState } from "react";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { modelWorker } from "../registrations/model-worker.ts";
import { Reckoner } from "../registrations/reckoner.ts";
import { musicKey } from "../state/organ.ts";
import { isSaid, pieceTextAfter } from "../state/piece-text.ts";
import { useStore, useWork } from "../state/use-store.tsx";
import type { DeskSection, DrawnByHand, Work } from "../state/work.ts";
import { capital, counted, numberWord, pointsText } from "../words/typeset.tsx";
import type { PlanAnswer, PlanAsk, PlannedLine } from "./planning.ts";

/** The one worker that plans. */
const planner = new Reckoner<{ readonly wants: "plan" } & PlanAsk, PlanAnswer>(modelWorker);

/** What plans had to say, by the work that they left behind: it comes back with undo, and goes when the work is another. */
const told = new Map<string, { readonly words: string; readonly lines: ReadonlyMap<string, PlannedLine> }>();
const KEPT = 24;

/** All of the desk that bears on a plan, but the pins: taking one out makes nothing untrue that a plan said. */
function keyOf({ organ, piece }: Work): string {
  const { title: _, sections, ...aids } = piece;
  return JSON.stringify([
    organ,
    aids,
    sections.map((each) => {
      const { id, bars, before, moments, metronome, beatsInBar, links, registration, steps } = each;
      return [id, musicKey(each), bars, before, moments, metronome, beatsInBar, links, registration, steps];
    }),
  ]);
}

/** Whether a plan's registration is what the desk has: what the desk leaves open is as the plan has it. */
function isSame(desk: DrawnByHand, plan: DrawnByHand): boolean {
  const sets = ["drawn", "couplers", "tremulants", "unisonOff"] as const;
  const row = (said: Readonly<Record<string, unknown>>, usual: unknown): string =>
    JSON.stringify(
      Object.entries(said)
        .filter(([, value]) => value !== usual)
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    );
  return (
    sets.every((key) => desk[key].toSorted().join("\n") === plan[key].toSorted().join("\n")) &&
    row(desk.boxes, "open") === row(plan.boxes, "open") &&
    row(desk.octaves, 0) === row(plan.octaves, 0) &&
    Object.entries(plan.keyboards).every(([part, keyboard]) => (desk.keyboards[part] ?? keyboard) === keyboard)
  );
}

const hasAlready = ({ registration, steps }: DeskSection, line: PlannedLine): boolean =>
  registration !== null &&
  [registration, ...steps].length === 1 + line.steps.length &&
  [line.registration, ...line.steps].every((each, at) => isSame([registration, ...steps][at] as DrawnByHand, each));

/** `Two sections filled, one changed, one pinned. 2.4 points given up for the changes.` */
function outcomeWords(before: readonly DeskSection[], lines: ReadonlyMap<string, PlannedLine>, lost: number): string {
  const planned = before.flatMap((section) => {
    const line = lines.get(section.id);
    return line ? [{ section, line }] : [];
  });
  const free = planned.filter(({ section }) => !(section.pinned && section.registration));
  const filled = free.filter(({ section }) => section.registration === null).length;
  const changed = free.filter(({ section, line }) => section.registration && !hasAlready(section, line)).length;
  const stayed = free.length - filled - changed;
  const pinned = planned.length - free.length;
  const counts = [
    ...(filled > 0 ? [`${numberWord(filled)} filled`] : []),
    ...(changed > 0 ? [`${numberWord(changed)} changed`] : []),
    ...(stayed > 0 ? [`${numberWord(stayed)} left as before`] : []),
    ...(pinned > 0 ? [`${numberWord(pinned)} pinned`] : []),
  ];
  const price = lost > 0 ? ` ${pointsText(lost)} points given up for the whole.` : "";
  return `Planned ${counted(planned.length, "section")}: ${counts.join(", ")}.${price}`;
}

/** Puts a plan on the desk as one step; nothing is written where nothing changes. */
export function putOnDesk(draft: Draft<Work>, lines: ReadonlyMap<string, PlannedLine>): void {
  for (const section of draft.piece.sections) {
    const line = lines.get(section.id);
    if (!line || (section.pinned && section.registration) || hasAlready(section, line)) continue;
    section.registration = line.registration as Draft<DrawnByHand>;
    section.steps = [...line.steps] as Draft<DrawnByHand>[];
    section.pinned = false;
  }
}

/** How planning stands, and what was said of the piece as it stands. */
export interface Plan {
  readonly isPlanning: boolean;
  /** What came of it, in a sentence or two; empty when there is nothing to say. */
  readonly words: string;
  /** By section id, what the plan says of it. */
  readonly lines: ReadonlyMap<string, PlannedLine>;
  begin(): void;
  giveUp(): void;
}

const NO_LINES: ReadonlyMap<string, PlannedLine> = new Map();

/** Plans the piece on the desk off the window's thread. A plan for a piece that was changed meanwhile is given up. */
export function usePlan(instrument: Instrument): Plan {
  const store = useStore();
  const work = useWork();
  const [planning, setPlanning] = useState<Work | null>(null);
  const [trouble, setTrouble] = useState<{ readonly key: string; readonly words: string } | null>(null);
  const key = keyOf(work);
  const isStale = planning !== null && (planning.piece !== work.piece || planning.organ !== work.organ);

  useEffect(() => () => planner.stop(), []);
  useEffect(() => {
    if (!isStale) return;
    planner.stop();
    setPlanning(null);
    setTrouble({ key, words: "The piece was changed while it was planned; plan it again." });
  }, [isStale, key]);

  const settle = (asked: Work, answer: PlanAnswer): void => {
    if (store.work.piece !== asked.piece || store.work.organ !== asked.organ) return;
    setPlanning(null);
    if (!answer.sections) {
      setTrouble({ key: keyOf(asked), words: answer.troubles.join(" ") });
      return;
    }
    const inFile = asked.piece.sections.filter(isSaid);
    const lines = new Map(inFile.map((section, at) => [section.id, (answer.sections ?? [])[at] as PlannedLine]));
    const words = outcomeWords(asked.piece.sections, lines, answer.lost);
    store.act("the plan", (draft) => putOnDesk(draft, lines));
    const after = keyOf(store.work);
    told.delete(after);
    told.set(after, { words: capital(words), lines });
    const [oldest] = told.keys();
    if (told.size > KEPT && oldest !== undefined) told.delete(oldest);
  };

  const begin = (): void => {
    const asked = store.work;
    const { text, troubles } = pieceTextAfter(store.work.pieceBase, asked.piece, instrument);
    setTrouble(null);
    if (text === null || asked.organ === null) {
      setTrouble({ key, words: troubles.map(troubleLine).join(" ") });
      return;
    }
    const question = JSON.stringify([asked.organ, text]);
    const known = planner.known(question);
    if (known) {
      settle(asked, known);
      return;
    }
    setPlanning(asked);
    planner.ask(question, { wants: "plan", organ: asked.organ, piece: text }, (reply) => {
      if ("answer" in reply) settle(asked, reply.answer);
      else {
        setPlanning(null);
        setTrouble({ key: keyOf(asked), words: `The plan failed (${reply.fault}). Nothing was changed.` });
      }
    });
  };

  const outcome = told.get(key);
  return {
    isPlanning: planning !== null && !isStale,
    words: trouble?.key === key ? trouble.words : (outcome?.words ?? ""),
    lines: outcome?.lines ?? NO_LINES,
    begin,
    giveUp: () => {
      planner.stop();
      setPlanning(null);
      setTrouble({ key, words: "Given up; nothing was changed." });
    },
  };
}
