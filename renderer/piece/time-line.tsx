import type { ChangeCard, PieceCards, TimeLineSection } from "../../shared-model/cards/piece-card.ts";
import type { DeskSection } from "../state/work.ts";

/** Pixels, which hold at every width: only the lengths along the line are shares of it. */
const HEIGHT = 92;
const MIDDLE = 44;
const THIN = 2;
const THICK = 20;
/** The narrowest that the line is ever shown, and what a number, a letter, a bar takes of it. */
const NARROWEST = 560;
const ROOM = { number: 24, letter: 30, bar: 84 };

interface Stretch extends TimeLineSection {
  readonly card: ChangeCard;
  readonly section: number;
  /** Shares of the whole, from 0 to 1. */
  readonly from: number;
  readonly share: number;
}

function stretchesOf({ timeLine, changes }: PieceCards): readonly Stretch[] {
  const all = timeLine.reduce((sum, each) => sum + each.length, 0);
  let from = 0;
  return timeLine.map((each, index) => {
    const share = each.length / all;
    const stretch = { ...each, card: changes[index] as ChangeCard, from, share };
    from += share;
    return stretch;
  });
}

/** How loud, within the piece, in a word. */
function levelWord(level: number): string {
  if (level < 0.05) return "the softest";
  if (level > 0.95) return "the loudest";
  return level < 0.35 ? "soft" : level < 0.65 ? "between soft and loud" : "loud";
}

const percent = (share: number): string => `${Math.round(share * 10_000) / 100}%`;

interface TimeLineProps {
  readonly cards: PieceCards;
  /** The sections that stand in the file, in order. */
  readonly sections: readonly DeskSection[];
}

/** The piece from left to right: the heavier the line, the louder. Letters, numbers and bars say where and how. */
export function TimeLine({ cards, sections }: TimeLineProps) {
  const stretches = stretchesOf(cards);
  const isOpen = (stretch: Stretch): boolean => sections[stretch.section]?.registration === null;
  const begins = stretches.filter((each, index) => each.section !== stretches[index - 1]?.section);
  const lengthOf = ({ section }: Stretch): number =>
    stretches.filter((each) => each.section === section).reduce((sum, each) => sum + each.share, 0);
  const words = begins.map((each) => {
    const name = sections[each.section]?.name ?? `section ${each.section + 1}`;
    const last = stretches.findLast((other) => other.section === each.section) ?? each;
    return `${name}, ${levelWord(each.level)}${last === each ? "" : `, growing until ${levelWord(last.level)}`}`;
  });
  return (
    <figure className="line">
      <svg width="100%" height={HEIGHT} role="img" aria-label={`How loud the piece is: ${words.join("; ")}.`}>
        {stretches.map((each) => {
          const thick = THIN + each.level * (THICK - THIN);
          const box = { x: percent(each.from), width: percent(each.share), y: MIDDLE - thick / 2, height: thick };
          return <rect key={each.number} {...box} className={isOpen(each) ? "open" : "drawn"} />;
        })}
        {begins.map((each) => (
          <Beginning key={each.number} stretch={each} share={lengthOf(each)} />
        ))}
      </svg>
      <figcaption>
        The heavier the line, the louder it sounds within this piece; letters are what the music asks for.
        {stretches.some(isOpen) && " Hollow: not registered yet, as a plan would have it."}
      </figcaption>
    </figure>
  );
}

/** Where a section begins: a hairline, the letter above, its number and first bar below, as far as there is room. */
function Beginning({ stretch, share }: { stretch: Stretch; share: number }) {
  const { from, section, card } = stretch;
  const room = share * NARROWEST;
  const at = { x: percent(from), dx: 5 };
  return (
    <>
      <line x1={percent(from)} x2={percent(from)} y1={4} y2={HEIGHT - 6} />
      {card.dynamic !== null && room >= ROOM.letter && (
        <text {...at} y={24} className="b">
          {card.dynamic}
        </text>
      )}
      {room >= ROOM.number && (
        <text {...at} y={HEIGHT - 10}>
          <tspan className="no">{section + 1}</tspan>
          {card.where !== null && room >= ROOM.bar && <tspan dx={8}>{card.where}</tspan>}
        </text>
      )}
    </>
  );
}
