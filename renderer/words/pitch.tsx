import type { Foot } from "../../shared-model/pitch/foot.ts";
import { Fraction, roman } from "./typeset.tsx";

/** A pitch in two cells, the whole number right-aligned and the fraction hanging, so that a column of them stands in line. */
function Pitch({ foot }: { foot: Foot }) {
  const whole = Math.floor(foot.over / foot.under);
  const rest = foot.over - whole * foot.under;
  return (
    <span className="ft">
      <b>{whole > 0 ? whole : ""}</b>
      <span>{rest > 0 && <Fraction over={String(rest)} under={String(foot.under)} behindWhole={whole > 0} />}</span>
    </span>
  );
}

/** What a stop prints behind its name: pitch, or ranks where it has none. */
export function PitchOrRanks({ pitch, ranks }: { pitch: Foot | null; ranks: number }) {
  if (pitch) return <Pitch foot={pitch} />;
  return <span className="ft ro">{ranks > 1 ? roman(ranks) : ""}</span>;
}
