import type { Key } from "../../shared-model/pitch/key.ts";
import type { Division } from "../../shared-model/stoplist/instrument.ts";
import { Plain } from "../words/action.tsx";
import { keyName } from "../words/typeset.tsx";
import type { Edit } from "./editing.ts";

/** Keys on which a keyboard may begin or end. */
const LOWEST: readonly Key[] = [24, 29, 31, 36, 37, 38, 40, 41, 43, 48, 53, 55, 60];
const HIGHEST: readonly Key[] = Array.from({ length: 97 - 47 }, (_, at) => 47 + at);

const withOwn = (keys: readonly Key[], own: Key): readonly Key[] => [...new Set([...keys, own])].sort((a, b) => a - b);

/** What a list often leaves out about a division: how far its keys go, and whether it stands in a box. */
export function DivisionFacts({ division, edit }: { division: Division; edit: Edit }) {
  const { name, compass, box, kind } = division;
  const set = (low: Key, high: Key): boolean =>
    edit(`the keys of the ${name}`, {
      edit: "set-compass",
      division: name,
      compass: { low, high, missing: compass.missing.filter((key) => key > low && key < high) },
    });
  const choice = (what: string, keys: readonly Key[], own: Key, onKey: (key: Key) => void) => (
    <select
      className="pick"
      aria-label={`${what} key of the ${name}`}
      value={own}
      onChange={(event) => onKey(Number(event.target.value))}
    >
      {withOwn(keys, own).map((key) => (
        <option key={key} value={key}>
          {keyName(key)}
        </option>
      ))}
    </select>
  );
  return (
    <p className="note facts-line">
      {choice("Lowest", LOWEST, compass.low, (key) => set(key, compass.high))} to{" "}
      {choice("Highest", HIGHEST, compass.high, (key) => set(compass.low, key))}
      {compass.missing.length > 0 && <span className="quiet"> without {compass.missing.map(keyName).join(", ")}</span>}
      {kind !== "pedal" || box !== null ? (
        <Plain
          chosen
          aria-pressed={box !== null}
          onClick={() => edit(`the box of the ${name}`, { edit: "set-enclosed", division: name, box: box === null })}
        >
          {box === null ? "stands open" : "in a box"}
        </Plain>
      ) : null}
    </p>
  );
}
