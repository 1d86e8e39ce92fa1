import type { Hands, Part } from "../../shared-model/music/texture.ts";
import { HandMark } from "../words/hand-mark.tsx";
import { strandOf } from "./strands.ts";

const ORDER: readonly Hands[] = ["right", "left", "both", "feet"];

/** Parts in the order in which hands are named everywhere: right, left, both, feet. */
export const inHandOrder = (parts: readonly Part[]): readonly Part[] =>
  ORDER.flatMap((hands) => parts.filter((part) => part.hands === hands));

const LANE = 33;

/** A texture by what happens at the keyboards: a lane for each part, parted by hairlines. The title says it in words. */
export function Diagram({ parts }: { parts: readonly Part[] }) {
  const lanes = inHandOrder(parts);
  return (
    <svg className="dia" viewBox={`0 0 232 ${lanes.length * LANE}`} aria-hidden="true">
      {lanes.map((part, at) => {
        const strand = strandOf(part, parts);
        return (
          <g key={part.id} transform={`translate(0 ${at * LANE})`}>
            {at > 0 && <path className="lane" d="M0 0.5H232" />}
            <svg x="2" y="9" width="16" height="16" overflow="visible" aria-hidden="true">
              <HandMark hands={part.hands} />
            </svg>
            <path
              d={strand.path}
              transform="translate(0 2)"
              fill="none"
              stroke="currentColor"
              strokeWidth={strand.width}
              strokeLinecap={strand.dots ? "round" : "butt"}
              strokeDasharray={strand.dots ? "0.1 5" : undefined}
            />
          </g>
        );
      })}
    </svg>
  );
}
