import { memo } from "react";
import type { Hands } from "../../shared-model/music/texture.ts";
import type { Stop } from "../../shared-model/stoplist/instrument.ts";
import { FAMILY_WORDS } from "../../shared-model/stoplist/kind.ts";
import { FamilySign } from "../words/family-sign.tsx";
import { HAND_WORDS, HandMark } from "../words/hand-mark.tsx";
import { PitchOrRanks } from "../words/pitch.tsx";

interface StopRowProps {
  readonly stop: Stop;
  readonly drawn: boolean;
  /** Whoever sounds it. */
  readonly hands: readonly Hands[];
  readonly suggested: boolean;
  readonly tabIndex: number;
  /** Takes the id of the row. */
  readonly onFocus: (row: string) => void;
  readonly onToggle: (stop: string) => void;
  readonly onPress: (stop: string) => void;
}

/** `sounds in the left hand and the feet`. */
export const handsInWords = (hands: readonly Hands[]): string =>
  hands.length === 0 ? "" : `, sounds in the ${hands.map((each) => HAND_WORDS[each]).join(" and the ")}`;

/** Whether two rows look and act the same. Lists of hands are made anew with every judgement; what is in them counts. */
export function isSame<Props extends { readonly hands: readonly Hands[] }>(one: Props, other: Props): boolean {
  const { hands, ...rest } = one;
  const { hands: otherHands, ...otherRest } = other;
  return (
    hands.join() === otherHands.join() &&
    Object.entries(rest).every(([name, value]) => Object.is(value, (otherRest as Record<string, unknown>)[name]))
  );
}

/** A knob in the stoplist: drawn and put in by a touch. It is drawn anew only when something on it changes. */
export const StopRow = memo(function StopRow({
  stop,
  drawn,
  hands,
  suggested,
  tabIndex,
  onFocus,
  onToggle,
  onPress,
}: StopRowProps) {
  const classes = ["stop", suggested && !drawn ? "suggest" : "", stop.off ? "off" : ""].filter((each) => each !== "");
  return (
    <button
      type="button"
      id={`stop-${stop.id}`}
      data-row={stop.name.toLocaleLowerCase()}
      className={classes.join(" ")}
      aria-pressed={drawn}
      tabIndex={tabIndex}
      onFocus={() => onFocus(`stop-${stop.id}`)}
      onPointerDown={() => onPress(stop.id)}
      onClick={() => onToggle(stop.id)}
    >
      <Marks hands={drawn ? hands : []} />
      <FamilySign family={stop.family} />
      <span className="n">
        {stop.name}
        {stop.half && <small className="half"> {stop.half}</small>}
      </span>
      <PitchOrRanks pitch={stop.pitch} ranks={stop.ranks} />
      <span className="sr">
        , {FAMILY_WORDS[stop.family]}
        {stop.off ? `, off${stop.note ? `: ${stop.note}` : ""}` : ""}
        {drawn ? handsInWords(hands) : ""}
        {suggested && !drawn ? ", suggested" : ""}
      </span>
      {stop.off && <span className="remark">{stop.note ?? "off"}</span>}
    </button>
  );
}, isSame);

/** The half discs that hang in the margin, two where two parts sound a stop. */
export function Marks({ hands }: { hands: readonly Hands[] }) {
  return (
    <span className="marks">
      {hands.map((each) => (
        <HandMark key={each} hands={each} />
      ))}
    </span>
  );
}
