import { type KeyboardEvent, type ReactNode, type RefObject, useMemo, useRef } from "react";
import type { Hands } from "../../shared-model/music/texture.ts";
import type { Division, Instrument } from "../../shared-model/stoplist/instrument.ts";
import { FamilyLegend } from "../words/family-sign.tsx";
import { Column } from "./column.tsx";

/** What of a console state the stoplist shows, and what a touch does. */
export interface StoplistProps {
  readonly instrument: Instrument;
  readonly drawn: ReadonlySet<string>;
  readonly couplers: ReadonlySet<string>;
  readonly tremulants: ReadonlySet<string>;
  /** By stop: who sounds it. */
  readonly soundedBy: ReadonlyMap<string, readonly Hands[]>;
  /** By tremulant: whose sound it shakes. */
  readonly shakes?: ReadonlyMap<string, readonly Hands[]>;
  /** Stops that a remedy would draw. */
  readonly suggested?: ReadonlySet<string>;
  readonly onStop: (stop: string) => void;
  /** A finger goes down on a stop: it will most likely lift there, and what it does then can be reckoned meanwhile. */
  readonly onPress?: (stop: string) => void;
  readonly onCoupler: (coupler: string) => void;
  readonly onTremulant: (tremulant: string) => void;
  /** What stands in the margin beside the stops of a division; the margin is kept free where this is given. */
  readonly margin?: (division: Division) => ReactNode;
  readonly foot?: (division: Division) => ReactNode;
  /** Takes the element of the whole list. */
  readonly place?: RefObject<HTMLDivElement | null>;
}

/** Stops of an organ above which its divisions begin folded: a page of more is no longer looked over. */
const LARGE = 80;

const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 };

/** Buttons of one column, in order. */
const rowsOf = (column: Element | null): readonly HTMLElement[] => [
  ...(column?.querySelectorAll<HTMLElement>("button[data-row]") ?? []),
];

/** The row that a key leads to from the row that has the focus; `null` when the key means something else. */
function rowFor(event: KeyboardEvent<HTMLElement>, list: HTMLElement): HTMLElement | null {
  if (event.altKey || event.ctrlKey || event.metaKey) return null;
  const here = event.target as HTMLElement;
  const column = here.closest(".div");
  const rows = rowsOf(column);
  const at = rows.indexOf(here);
  if (at < 0) return null;
  const step = STEPS[event.key];
  if (step !== undefined) return rows[Math.max(0, Math.min(rows.length - 1, at + step))] ?? null;
  if (event.key === "Home") return rows[0] ?? null;
  if (event.key === "End") return rows.at(-1) ?? null;
  if (event.key === "ArrowLeft" || event.key === "ArrowRight") {
    const columns = [...list.querySelectorAll(".div")];
    const next = columns[columns.indexOf(column as Element) + (event.key === "ArrowRight" ? 1 : -1)];
    const others = rowsOf(next ?? null);
    return others[Math.min(at, others.length - 1)] ?? null;
  }
  if (/^\p{L}$/u.test(event.key)) {
    const all = rowsOf(list);
    const from = all.indexOf(here);
    const letter = event.key.toLocaleLowerCase();
    return [...all.slice(from + 1), ...all.slice(0, from)].find((row) => row.dataset.row?.startsWith(letter)) ?? null;
  }
  return null;
}

/**
 * The stoplist as an opening booklet sets it, a division in each column. A drawn stop is written: the half disc of
 * whoever sounds it hangs in the margin, its name turns bold, a line is ruled under it. Arrows go from row to row and
 * from column to column, a letter to the next name that begins with it. On a large organ each division begins folded to what
 * is drawn of it.
 */
export function Stoplist(props: StoplistProps) {
  const { instrument, margin, place } = props;
  const { divisions, tremulants } = instrument;
  const list = useRef<HTMLDivElement>(null);
  const homes = useMemo(() => homesOfCouplers(instrument), [instrument]);
  const stops = divisions.flatMap((each) => each.stops);

  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    const row = list.current && rowFor(event, list.current);
    if (!row) return;
    event.preventDefault();
    row.focus();
  };

  return (
    <div className="stoplist" ref={place}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the rows are buttons; arrows between them are an addition. */}
      <div
        className={margin ? "disp3" : "disp"}
        data-columns={Math.min(divisions.length, 5)}
        ref={list}
        onKeyDown={onKeyDown}
      >
        {divisions.map((division) => (
          <Column
            key={division.name}
            division={division}
            tremulants={tremulants.filter(
              (each) => each === division.name || (each === "all" && isLast(instrument, division)),
            )}
            couplers={homes.get(division.name) ?? NONE}
            folds={stops.length > LARGE}
            shown={props}
          />
        ))}
      </div>
      <FamilyLegend families={stops.map((stop) => stop.family)} />
    </div>
  );
}

const NONE: readonly string[] = [];

const isLast = (instrument: Instrument, division: Division): boolean => instrument.divisions.at(-1) === division;

/** Couplers by the division whose keys they serve, fixed ones left out: nobody draws them. */
function homesOfCouplers(instrument: Instrument): ReadonlyMap<string, readonly string[]> {
  const homes = new Map<string, string[]>();
  for (const coupler of instrument.couplers) {
    if (coupler.fixed) continue;
    homes.set(coupler.to, [...(homes.get(coupler.to) ?? []), coupler.name]);
  }
  return homes;
}
