import type { Draft } from "immer";
import type { InstrumentEdit } from "../../shared-model/files/instrument-change.ts";
import { editInstrumentFile } from "../../shared-model/files/instrument-edit.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { ConsoleAids, Instrument } from "../../shared-model/stoplist/instrument.ts";
import { organOf } from "../state/organ.ts";
import type { Store } from "../state/store.ts";
import type { DrawnByHand, Work } from "../state/work.ts";

/** How the parts of the page change the organ: what undo will say, and the change. Returns whether it was done. */
export type Edit = (words: string, edit: InstrumentEdit) => boolean;

/** Changes one thing or another of the console's aids and leaves the rest as it is. */
export const settingAids =
  (aids: ConsoleAids, edit: Edit) =>
  (change: Partial<ConsoleAids>): boolean =>
    edit("the console's aids", { edit: "set-aids", aids: { ...aids, ...change } });

/** Old names to new ones where a stop or a division was renamed or moved: what is drawn follows. */
interface Renamed {
  readonly stops: ReadonlyMap<string, string>;
  readonly divisions: ReadonlyMap<string, string>;
  readonly couplers: ReadonlyMap<string, string>;
}

/** Finds new names by the place in print, which a renaming leaves as it is. */
function renamedBy(edit: InstrumentEdit, before: Instrument, after: Instrument): Renamed | null {
  if (edit.edit !== "rename-stop" && edit.edit !== "rename-division") return null;
  const pairs = <Item>(one: readonly Item[], other: readonly Item[], name: (item: Item) => string) =>
    new Map(one.map((item, at) => [name(item), name(other[at] ?? item)]));
  const stops = (instrument: Instrument) => instrument.divisions.flatMap((division) => division.stops);
  return {
    stops: pairs(stops(before), stops(after), (stop) => stop.id),
    divisions: pairs(before.divisions, after.divisions, (division) => division.name),
    couplers: pairs(before.couplers, after.couplers, (coupler) => coupler.name),
  };
}

function rename(registration: Draft<DrawnByHand>, { stops, divisions, couplers }: Renamed): void {
  const by = (names: ReadonlyMap<string, string>) => (name: string) => names.get(name) ?? name;
  registration.drawn = registration.drawn.map(by(stops));
  registration.couplers = registration.couplers.map(by(couplers));
  registration.tremulants = registration.tremulants.map(by(divisions));
  registration.unisonOff = registration.unisonOff.map(by(divisions));
  registration.boxes = Object.fromEntries(
    Object.entries(registration.boxes).map(([box, position]) => [by(divisions)(box), position]),
  );
  registration.keyboards = Object.fromEntries(
    Object.entries(registration.keyboards).map(([part, keyboard]) => [part, by(divisions)(keyboard)]),
  );
}

/**
 * Changes the organ on the desk, in the text of its file. What cannot be done is told on the page, and nothing is changed.
 *
 * @param run edits of the same run are taken back together.
 * @returns whether it was done.
 */
export function editOrgan(store: Store, words: string, edit: InstrumentEdit, run: string | null = null): boolean {
  const { organ } = store.work;
  if (organ === null) return false;
  const { text, troubles } = editInstrumentFile(organ, [edit], "the organ");
  if (text === null) {
    const said = troubles.filter((each) => each.severity === "error").map(troubleLine);
    store.set({
      trouble: said.map((line) => line.replace(/^the organ, line \d+, column \d+: error: /u, "")).join(" "),
    });
    return false;
  }
  const [before, after] = [organOf(organ).instrument, organOf(text).instrument];
  const renamed = before && after ? renamedBy(edit, before, after) : null;
  store.act(
    words,
    (draft: Draft<Work>) => {
      draft.organ = text;
      for (const { registration, steps } of renamed ? draft.piece.sections : [])
        for (const each of registration ? [registration, ...steps] : steps) if (renamed) rename(each, renamed);
    },
    run,
  );
  return true;
}
