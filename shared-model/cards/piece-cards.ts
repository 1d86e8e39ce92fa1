import { strengthOf } from "../acoustics/hearing.ts";
import type { Judgement } from "../judging/judge.ts";
import { barsOf } from "../music/piece.ts";
import { registrationDrawing } from "../pictures/registration-picture.ts";
import type { Move } from "../plan/changes.ts";
import type { Task } from "../plan/crew.ts";
import { VERDICT_WORDS, type Verdict } from "../plan/feasibility.ts";
import type { Station } from "../plan/path.ts";
import type { PlannedChange, PlannedPiece, StoredPiston } from "../plan/planned.ts";
import { settingSheet } from "../plan/setting-sheet.ts";
import { type CueCard, cueCard } from "./cue-card.ts";
import { BOX_WORDS } from "./cue-card-text.ts";
import type {
  CardMove,
  CardPress,
  CardTask,
  CardVerdict,
  ChangeCard,
  PieceCards,
  PistonSetting,
  TimeLineSection,
} from "./piece-card.ts";

function cardMove({ act, what, name, division, to }: Move): CardMove {
  switch (what) {
    case "stop":
      return { act, what: null, division, name };
    case "box":
      return { act: "set", what: "box", division: null, name: to === null ? name : `${name} ${BOX_WORDS[to]}` };
    case "tremulant":
      return { act, what, division: null, name: name === "all" ? "the whole organ" : name };
    case "unison-off":
      return { act, what: "unison off", division: null, name };
    case "coupler":
      return { act, what, division: null, name };
  }
}

/** Stops division by division, then all else; what goes in before what comes out, so that nothing is forgotten. */
function cardMoves(moves: readonly Move[]): readonly CardMove[] {
  const cancelsFirst = (some: readonly Move[]): readonly Move[] => [
    ...some.filter((move) => move.act === "cancel"),
    ...some.filter((move) => move.act === "draw"),
  ];
  const stops = moves.filter((move) => move.what === "stop");
  const divisions = [...new Set(stops.map((move) => move.division))];
  return [
    ...divisions.flatMap((name) => cancelsFirst(stops.filter((move) => move.division === name))),
    ...cancelsFirst(moves.filter((move) => move.what !== "stop")),
  ].map(cardMove);
}

function readyWords(ahead: Task["ahead"]): string | null {
  if (ahead === null) return null;
  if (ahead === "any time") return "at any time before";
  return ahead.bar === null ? "in a rest before" : `in the rest at bar ${ahead.bar}`;
}

/** What is moved by hand; of a general only what it does not move: boxes, and the page. */
function cardTasks({ means, handling, moves, time, assistant }: PlannedChange): readonly CardTask[] {
  if (means.by !== "general" || means.near) {
    return handling.tasks
      .map(
        ({ who, ahead, turns, moves: own }): CardTask => ({
          who,
          ready: readyWords(ahead),
          turnsPage: turns,
          moves: cardMoves(own),
        }),
      )
      .filter((task) => task.moves.length > 0 || task.turnsPage);
  }
  const boxes = moves.filter((move) => move.what === "box");
  const turner = time.turn === "assistant" && assistant !== null ? "assistant" : "left";
  return [
    ...(boxes.length === 0 ? [] : [{ who: "feet" as const, ready: null, turnsPage: false, moves: cardMoves(boxes) }]),
    ...(time.turn === null ? [] : [{ who: turner, ready: null, turnsPage: true, moves: [] } as const]),
  ];
}

function cardPresses({ means }: PlannedChange, levels: number): readonly CardPress[] {
  if (means.by === "general") {
    const level = levels > 1 ? means.level : null;
    return [{ name: "General", number: means.number, level, newLevel: means.newLevel }];
  }
  if (means.by !== "divisionals") return [];
  return means.pistons.map(({ division, number }) => ({ name: division, number, level: null, newLevel: false }));
}

function pressedBy({ means, handling, assistant }: PlannedChange): ChangeCard["pressedBy"] {
  if (means.by !== "general") return null;
  if (assistant !== null) return "assistant";
  return handling.tasks[0]?.who === "feet" ? "toe" : "thumb";
}

const BRIEF: Readonly<Record<Verdict, string>> = {
  easy: "easy",
  brisk: "brisk",
  "needs-assistant": "assistant",
  impossible: "not possible",
};

function cardVerdict({ verdict, handling, alone }: PlannedChange): CardVerdict {
  const [words, brief] = [VERDICT_WORDS[verdict], BRIEF[verdict]];
  const loud = verdict === "needs-assistant" || verdict === "impossible";
  const { need, available } = verdict === "needs-assistant" ? alone : handling;
  if (verdict === "easy" || need === 0 || !Number.isFinite(available)) return { words, brief, loud, detail: null };
  const who = verdict === "needs-assistant" ? "Alone it takes" : "It takes";
  return { words, brief, loud, detail: `${who} ${need.toFixed(1)} s, and the music leaves ${available.toFixed(1)} s.` };
}

const counted = (beats: number): string => `${beats} ${beats === 1 ? "beat" : "beats"}`;

/** What the player goes by; `null` where the piece says nothing of it. */
function cueWords({ time, step }: PlannedChange, steps: number): string | null {
  if (step > 0) return `step ${step + 1} of ${steps + 1}`;
  if (time.assumed) return null;
  switch (time.what) {
    case "rest":
      return `rest of ${counted(Math.round((time.gap / time.beat) * 10) / 10)}`;
    case "page-turn":
      return "page turn";
    case "attacca":
    case "fermata":
    case "pause":
      return time.what;
  }
}

/** `bar 25`; of a step inside a section all its bars, for it comes somewhere among them. */
function whereWords(bars: string | null, step: number): string | null {
  const read = barsOf(bars);
  if (bars === null || read === null) return bars;
  return step === 0 ? `bar ${read.first}` : `bars ${bars}`;
}

/** How a station stands, as a card has it. */
function stationCard({ sections }: PlannedPiece, station: Station): { card: CueCard; judgement: Judgement } {
  const section = sections[station.section] as PlannedPiece["sections"][number];
  const { chosen, candidates } = section;
  const judgement = station.step === 0 ? chosen.judgement : chosen.steps[station.step - 1]?.judgement;
  if (!judgement) throw new RangeError(`There is no step ${station.step} in section ${station.section}.`);
  return { card: cueCard(candidates.problem, station.stand.state, judgement), judgement };
}

function changeCard(plan: PlannedPiece, station: Station, index: number): ChangeCard {
  const change = plan.changes[index - 1];
  const { music, chosen } = plan.sections[station.section] as PlannedPiece["sections"][number];
  const { card } = stationCard(plan, station);
  const advice = change && cardVerdict(change).loud ? change.advice : [];
  return {
    number: index + 1,
    section: music.section.name,
    where: whereWords(music.section.bars, station.step),
    cue: change ? cueWords(change, chosen.steps.length) : null,
    dynamic: station.step === 0 ? music.section.dynamic : null,
    verdict: change ? cardVerdict(change) : null,
    presses: change ? cardPresses(change, plan.instrument.aids.levels) : [],
    pressedBy: change ? pressedBy(change) : null,
    tasks: change ? cardTasks(change) : [],
    whenTime: change ? cardMoves(change.later) : [],
    stays: change ? change.left.map((move) => `${move.name} (${move.division})`) : [],
    state: card,
    warnings: [
      ...card.warnings.filter((warning) => warning.severity === "error"),
      ...advice.map((text) => ({ severity: "warning" as const, text, remedy: null })),
    ],
  };
}

function pistonSetting(plan: PlannedPiece, { division, level, number, station, uses }: StoredPiston): PistonSetting {
  const { card } = stationCard(plan, plan.stations[station] as Station);
  const whole = division === null;
  return {
    press: {
      name: division ?? "General",
      number,
      level: whole && plan.instrument.aids.levels > 1 ? level : null,
      newLevel: false,
    },
    changes: uses.map((use) => use + 2),
    // A piston does not place hands, nor boxes; one of a division stores its stops alone.
    state: {
      ...card,
      hands: [],
      boxes: [],
      divisions: card.divisions.filter((each) => whole || each.name === division),
      couplers: whole ? card.couplers : [],
      tremulants: whole ? card.tremulants : [],
      unisonOff: whole ? card.unisonOff : [],
    },
  };
}

/** Each station's share of the line, in bars where every section has them; its level between the softest and the loudest. */
function timeLineOf(plan: PlannedPiece): readonly TimeLineSection[] {
  const bars = plan.sections.map(({ music }) => barsOf(music.section.bars));
  const known = bars.every((each) => each !== null && each.last >= each.first);
  const levels = plan.stations.map((station) =>
    stationCard(plan, station).judgement.parts.reduce((most, part) => Math.max(most, strengthOf(part.sound.blend)), 0),
  );
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  return plan.stations.map((station, index) => {
    const own = bars[station.section];
    const length = known && own ? own.last - own.first + 1 : 1;
    const share = length / (1 + (plan.sections[station.section]?.chosen.steps.length ?? 0));
    return {
      number: index + 1,
      section: station.section,
      length: share,
      level: high > low ? ((levels[index] as number) - low) / (high - low) : 0.5,
    };
  });
}

/** The cards of a planned piece: one for its beginning and one for each change, in playing order. */
export function pieceCards(plan: PlannedPiece): PieceCards {
  const { piece, crew } = plan.row;
  const generalsFirst = plan.pistons.toSorted(
    (a, b) => Number(a.division !== null) - Number(b.division !== null) || a.level - b.level || a.number - b.number,
  );
  return {
    piece: piece.name ?? "A piece",
    organ: plan.instrument.name,
    changes: plan.stations.map((station, index) => changeCard(plan, station, index)),
    assistant: crew.assistant === "none" ? null : crew.assistant,
    pistons: generalsFirst.map((piston) => pistonSetting(plan, piston)),
    cautions: settingSheet(plan).cautions,
    timeLine: timeLineOf(plan),
    pictures: plan.stations.map((station, index) => {
      const { card, judgement } = stationCard(plan, station);
      const { music, candidates } = plan.sections[station.section] as PlannedPiece["sections"][number];
      const head = music.section.name === null ? "" : `${music.section.name}: `;
      return registrationDrawing(candidates.problem, judgement, `${index + 1}. ${head}${card.label}`);
    }),
  };
}
