import { type ReactNode, useState } from "react";
import type { Hands } from "../../shared-model/music/texture.ts";
import type { Division } from "../../shared-model/stoplist/instrument.ts";
import { Plain } from "../words/action.tsx";
import { roman } from "../words/typeset.tsx";
import { StopRow } from "./stop-row.tsx";
import type { StoplistProps } from "./stoplist.tsx";
import { useSteady } from "./use-steady.ts";
import { WordRow } from "./word-row.tsx";

interface ColumnProps {
  readonly division: Division;
  readonly tremulants: readonly string[];
  readonly couplers: readonly string[];
  /** Whether the column begins with what is drawn only, as on an organ that would not fit a page. */
  readonly folds: boolean;
  readonly shown: StoplistProps;
}

const NOBODY: readonly Hands[] = [];
const NOTHING: ReadonlySet<string> = new Set();

/** `I`, `II, in a box`: how a division is reached. */
function divisionFacts({ keyboard, kind, box, name }: Division): string {
  const reached = keyboard !== null ? roman(keyboard) : kind === "floating" ? "floating" : "";
  const boxed = box === null ? "" : box === name ? "in a box" : `in the box of ${box}`;
  return [reached, boxed].filter((each) => each !== "").join(", ");
}

/** A division of the stoplist: its stops, its tremulants, and the couplers that serve its keys. */
export function Column({ division, tremulants, couplers, folds, shown }: ColumnProps): ReactNode {
  const { name, stops } = division;
  const { drawn, suggested, soundedBy, shakes, margin, foot } = shown;
  const [isOpen, setOpen] = useState(!folds);
  // What was touched while folded stays: no row goes from under the finger that has put it in.
  const [touched, setTouched] = useState(NOTHING);
  const [entered, setEntered] = useState<string | null>(null);

  const touching = (act: (what: string) => void) => (what: string) => {
    if (!isOpen) setTouched((before) => new Set([...before, what]));
    act(what);
  };
  const onStop = useSteady(touching(shown.onStop));
  const onPress = useSteady((stop: string) => shown.onPress?.(stop));
  const onCoupler = useSteady(touching(shown.onCoupler));
  const onTremulant = useSteady(touching(shown.onTremulant));

  const seen = (what: string, isOn: boolean): boolean => isOpen || isOn || touched.has(what);
  const seenStops = stops.filter(({ id }) => seen(id, drawn.has(id) || (suggested?.has(id) ?? false)));
  const seenTremulants = tremulants.filter((each) => seen(each, shown.tremulants.has(each)));
  const seenCouplers = couplers.filter((each) => seen(each, shown.couplers.has(each)));
  const keys = [
    ...seenStops.map(({ id }) => `stop-${id}`),
    ...seenTremulants.map((each) => `tremulant-${each}`),
    ...seenCouplers.map((each) => `coupler-${each}`),
  ];
  const tabStop = entered !== null && keys.includes(entered) ? entered : keys[0];
  const tabIndex = (key: string): number => (key === tabStop ? 0 : -1);
  const rows = (
    <div className="rows">
      {seenStops.map((stop) => (
        <StopRow
          key={stop.id}
          stop={stop}
          drawn={drawn.has(stop.id)}
          hands={soundedBy.get(stop.id) ?? NOBODY}
          suggested={suggested?.has(stop.id) ?? false}
          onToggle={onStop}
          onPress={onPress}
          tabIndex={tabIndex(`stop-${stop.id}`)}
          onFocus={setEntered}
        />
      ))}
      {seenTremulants.map((each) => (
        <WordRow
          key={`tremulant ${each}`}
          kind="tremulant"
          name={each}
          words={each === "all" ? "Tremulant, whole organ" : "Tremulant"}
          on={shown.tremulants.has(each)}
          hands={shakes?.get(each) ?? NOBODY}
          onToggle={onTremulant}
          tabIndex={tabIndex(`tremulant-${each}`)}
          onFocus={setEntered}
        />
      ))}
      {seenCouplers.length > 0 && <div className="rule" />}
      {seenCouplers.map((each) => (
        <WordRow
          key={`coupler ${each}`}
          kind="coupler"
          name={each}
          words={each}
          on={shown.couplers.has(each)}
          hands={NOBODY}
          onToggle={onCoupler}
          tabIndex={tabIndex(`coupler-${each}`)}
          onFocus={setEntered}
        />
      ))}
    </div>
  );
  return (
    <section className="div" aria-label={name}>
      <h3>
        {name}
        <small>{divisionFacts(division)}</small>
      </h3>
      {folds && (
        <p className="fold">
          <Plain aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
            {isOpen ? "Only what is drawn" : `All ${stops.length} stops`}
            <span className="sr">, {name}</span>
          </Plain>
        </p>
      )}
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
}
