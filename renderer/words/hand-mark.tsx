import type { Hands } from "../../shared-model/music/texture.ts";

/** What the half disc says, in words. */
export const HAND_WORDS: Readonly<Record<Hands, string>> = {
  right: "right hand",
  left: "left hand",
  both: "both hands",
  feet: "feet",
};

/** The same in one word, for the head of a row. */
export const HAND_SHORT: Readonly<Record<Hands, string>> = {
  right: "right",
  left: "left",
  both: "hands",
  feet: "feet",
};

const HALF: Readonly<Record<Hands, string>> = {
  right: "M8 1.4a6.6 6.6 0 0 1 0 13.2z",
  left: "M8 1.4a6.6 6.6 0 0 0 0 13.2z",
  feet: "M1.4 8a6.6 6.6 0 0 0 13.2 0z",
  both: "M1.4 8a6.6 6.6 0 0 1 13.2 0z",
};

/** The sign of who plays: a half disc filled to the right, to the left, below, or above for both hands. Words stand beside it. */
export function HandMark({ hands }: { hands: Hands }) {
  return (
    <svg className="mk" viewBox="0 0 16 16" aria-hidden="true">
      <circle cx="8" cy="8" r="6.6" fill="none" stroke="currentColor" strokeWidth="1.2" />
      <path d={HALF[hands]} fill="currentColor" />
    </svg>
  );
}
