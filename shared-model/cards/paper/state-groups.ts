import type { CueCard } from "../cue-card.ts";
import { BOX_WORDS } from "../cue-card-text.ts";
import { drawBlock, handUnits, headBlock } from "./card-blocks.ts";
import type { Block, Group } from "./flow.ts";
import type { Unit } from "./line.ts";
import type { Setter } from "./setter.ts";
import type { SizeName } from "./type.ts";

/** Keyboards in the card's order: divisions with something drawn, then keyboards that sound by couplers only. */
function divisionGroups(card: CueCard, width: number, setter: Setter, size: SizeName): readonly Group[] {
  const handsOn = (name: string): readonly Unit[] =>
    card.hands.filter((hand) => hand.keyboard === name).flatMap((hand) => handUnits(hand, setter));
  const again = setter.units("continued", "sans", "text");
  const group = (name: string, blocks: readonly Block[]): Group => ({
    head: headBlock(name, handsOn(name), width, setter),
    headAgain: headBlock(name, again, width, setter),
    blocks,
  });
  const drawn = card.divisions.map(({ name, stops }) =>
    group(
      name,
      stops.map((stop) => drawBlock([], stop.name, stop.or, width, setter, size)),
    ),
  );
  const named = new Set(card.divisions.map((division) => division.name));
  const bare = [...new Set(card.hands.flatMap((hand) => hand.keyboard ?? []))].filter((name) => !named.has(name));
  const nothing = setter.units("nothing drawn", "sans", "text");
  return [...drawn, ...bare.map((name) => group(name, [setter.block(nothing, "text", width, { tag: "item" })]))];
}

/** Couplers, tremulants and boxes: each with a word for what it is. */
function settingsGroup(card: CueCard, width: number, setter: Setter, size: SizeName): Group {
  const set = (kind: string, name: string): Block =>
    drawBlock(setter.units(kind, "sans", "text"), name, [], width, setter, size);
  const resting = card.hands.filter((hand) => hand.keyboard === null);
  return {
    head: headBlock("Also set", [], width, setter),
    headAgain: headBlock("Also set", setter.units("continued", "sans", "text"), width, setter),
    blocks: [
      ...card.couplers.map((name) => set("couple", name)),
      ...card.unisonOff.map((name) => set("unison off", name)),
      ...card.tremulants.map((name) => set("tremulant", name === "all" ? "the whole organ" : name)),
      ...card.boxes.map(({ name, position }) => set("box", `${name} ${BOX_WORDS[position]}`)),
      ...resting.map((hand) =>
        setter.block([...handUnits(hand, setter), ...setter.units("rest", "sans", "text")], "text", width),
      ),
    ],
  };
}

/** Everything that is drawn at the console: decides how narrow a column may be. */
export const drawnNames = (card: CueCard): readonly string[] => [
  ...card.divisions.flatMap((division) => division.stops.map((stop) => stop.name)),
  ...card.couplers,
  ...card.tremulants,
];

/** How the whole console stands, keyboard by keyboard, with who plays there. */
export const stateGroups = (card: CueCard, width: number, setter: Setter, size: SizeName): readonly Group[] => [
  ...divisionGroups(card, width, setter, size),
  settingsGroup(card, width, setter, size),
];
