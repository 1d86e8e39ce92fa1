import { type KeyboardEvent, type ReactNode, useCallback, useMemo, useRef, useState } from "react";
import type { Hands } from "../../shared-model/music/texture.ts";
import type { Division, Instrument } from "../../shared-model/stoplist/instrument.ts";
import { FamilyLegend } from "../words/family-sign.tsx";
import { roman } from "../words/typeset.tsx";
import { StopRow } from "./stop-row.tsx";
import { useSteady } from "./use-steady.ts";
import { WordRow } from "./word-row.tsx";

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
  readonly onCoupler: (coupler: string) => void;
  readonly onTremulant: (tremulant: string) => void;
  /** What stands in the margin beside the stops of a division; the margin is kept free where this is given. */
  readonly margin?: (division: Division) => ReactNode;
  readonly foot?: (division: Division) => ReactNode;
}

/** `I`, `II, in a box`: how a division is reached. */
function divisionFacts({ keyboard, kind, box, name }: Division): string {
  const reached = keyboard !== null ? roman(keyboard) : kind === "floating" ? "floating" : "";
  const boxed = box === null ? "" : box === name ? "in a box" : `in the box of ${box}`;
  return [reached, boxed].filter((each) => each !== "").join(", ");
}

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
 * from column to column, a letter to the next name that begins with it.
 */
export function Stoplist(props: StoplistProps) {
  const { instrument, drawn, couplers, tremulants, soundedBy, suggested, margin, foot } = props;
  const list = useRef<HTMLDivElement>(null);
  const [entered, setEntered] = useState<Readonly<Record<string, string>>>({});

  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    const row = list.current && rowFor(event, list.current);
    if (!row) return;
    event.preventDefault();
    row.focus();
  };

  const divisionOf = useMemo(
    () => new Map(instrument.divisions.flatMap(({ name, stops }) => stops.map((stop) => [stop.id, name] as const))),
    [instrument],
  );
  const onStop = useSteady(props.onStop);
  const enter = useCallback(
    (stop: string): void => {
      const name = divisionOf.get(stop);
      if (name !== undefined) setEntered((before) => ({ ...before, [name]: stop }));
    },
    [divisionOf],
  );
  const homes = useMemo(() => homesOfCouplers(instrument), [instrument]);
  return (
    <div className="stoplist">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the rows are buttons; arrows between them are an addition. */}
      <div
        className={margin ? "disp3" : "disp"}
        data-columns={Math.min(instrument.divisions.length, 5)}
        ref={list}
        onKeyDown={onKeyDown}
      >
        {instrument.divisions.map((division) => {
          const { name, stops } = division;
          const own = instrument.tremulants.filter(
            (each) => each === name || (each === "all" && isLast(instrument, division)),
          );
          const bears = homes.get(name) ?? [];
          const keys = [
            ...stops.map((stop) => stop.id),
            ...own.map((each) => `tremulant ${each}`),
            ...bears.map((each) => `coupler ${each}`),
          ];
          const stopHere = entered[name] !== undefined && keys.includes(entered[name]) ? entered[name] : keys[0];
          const row = (key: string) => ({
            tabIndex: key === stopHere ? 0 : -1,
            onFocus: () => setEntered((before) => ({ ...before, [name]: key })),
          });
          const rows = (
            <div className="rows">
              {stops.map((stop) => (
                <StopRow
                  key={stop.id}
                  stop={stop}
                  drawn={drawn.has(stop.id)}
                  hands={soundedBy.get(stop.id) ?? NOBODY}
                  suggested={suggested?.has(stop.id) ?? false}
                  onToggle={onStop}
                  tabIndex={stop.id === stopHere ? 0 : -1}
                  onFocus={enter}
                />
              ))}
              {own.map((each) => (
                <WordRow
                  key={`tremulant ${each}`}
                  id={`tremulant-${each}`}
                  words={each === "all" ? "Tremulant, whole organ" : "Tremulant"}
                  on={tremulants.has(each)}
                  hands={tremulants.has(each) ? (props.shakes?.get(each) ?? []) : []}
                  onToggle={() => props.onTremulant(each)}
                  {...row(`tremulant ${each}`)}
                />
              ))}
              {bears.length > 0 && <div className="rule" />}
              {bears.map((each) => (
                <WordRow
                  key={`coupler ${each}`}
                  id={`coupler-${each}`}
                  words={each}
                  on={couplers.has(each)}
                  hands={[]}
                  onToggle={() => props.onCoupler(each)}
                  {...row(`coupler ${each}`)}
                />
              ))}
            </div>
          );
          return (
            <section className="div" key={name} aria-label={name}>
              <h3>
                {name}
                <small>{divisionFacts(division)}</small>
              </h3>
              {margin ? (
                <div className="rowsg">
                  {rows}
                  {margin(division)}
                </div>
              ) : (
                rows
              )}
              {foot?.(division)}
            </section>
          );
        })}
      </div>
      <FamilyLegend families={instrument.divisions.flatMap((each) => each.stops.map((stop) => stop.family))} />
    </div>
  );
}

const NOBODY: readonly Hands[] = [];

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
