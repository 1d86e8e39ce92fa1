import { type Mark, moved, type Page, type PrintedCards } from "./page.ts";
import { type Orientation, type Paper, type Size, sizeOf } from "./paper.ts";

/** How a sheet is filled with pages. */
interface Imposition {
  readonly sheet: Size;
  readonly across: number;
  readonly down: number;
}

/** Millimetres that a page may stand over the sheet's share: half an A5 is a few tenths wider than an A6. */
const GIVE = 0.6;

/** The way of laying the sheet on which most pages stand side by side, upright as they are read; `null` for fewer than two. */
function impositionFor({ width, height }: Size, paper: Paper): Imposition | null {
  const ways = (["tall", "wide"] satisfies readonly Orientation[]).map((orientation) => {
    const sheet = sizeOf(paper, orientation);
    return {
      sheet,
      across: Math.floor((sheet.width + GIVE) / width),
      down: Math.floor((sheet.height + GIVE) / height),
    };
  });
  const [first, second] = ways as [Imposition, Imposition];
  const best = second.across * second.down > first.across * first.down ? second : first;
  return best.across * best.down < 2 ? null : best;
}

/** Length of a cutting mark and its distance from the corner of the pages, in millimetres. */
const TICK = 4;
const WEIGHT = 0.15;

/** Cutting marks: crosses where four pages meet, short strokes where a cut leaves the sheet. */
function cuttingMarks({ sheet, across, down }: Imposition, page: Size, left: number, top: number): readonly Mark[] {
  const xs = Array.from({ length: across + 1 }, (_, index) => left + index * page.width);
  const ys = Array.from({ length: down + 1 }, (_, index) => top + index * page.height);
  const clamp = (value: number, most: number): number => Math.min(most, Math.max(0, value));
  return xs.flatMap((x) =>
    ys.flatMap((y): readonly Mark[] => [
      {
        kind: "line",
        weight: WEIGHT,
        points: [
          [clamp(x - TICK, sheet.width), clamp(y, sheet.height)],
          [clamp(x + TICK, sheet.width), clamp(y, sheet.height)],
        ],
      },
      {
        kind: "line",
        weight: WEIGHT,
        points: [
          [clamp(x, sheet.width), clamp(y - TICK, sheet.height)],
          [clamp(x, sheet.width), clamp(y + TICK, sheet.height)],
        ],
      },
    ]),
  );
}

/**
 * Several pages on each sheet, in reading order, row by row, with marks where to cut.
 *
 * @returns `null` where no two pages go on such a sheet.
 */
export function imposed({ title, pages }: PrintedCards, paper: Paper): PrintedCards | null {
  const [first] = pages;
  const imposition = first ? impositionFor(first, paper) : null;
  if (!first || imposition === null) return null;
  const { sheet, across, down } = imposition;
  const left = (sheet.width - across * first.width) / 2;
  const top = (sheet.height - down * first.height) / 2;
  const marks = cuttingMarks(imposition, first, left, top);
  const sheets: Page[] = [];
  for (let start = 0; start < pages.length; start += across * down) {
    const laid = pages.slice(start, start + across * down).map((page, index) => {
      const [right, below] = [left + (index % across) * first.width, top + Math.floor(index / across) * first.height];
      const shift = (mark: Mark): Mark => moved(mark, right, below);
      return {
        blocks: page.blocks.map(({ tag, marks: own }) => ({ tag, marks: own.map(shift) })),
        ornaments: page.ornaments.map(shift),
      };
    });
    sheets.push({
      ...sheet,
      blocks: laid.flatMap((page) => page.blocks),
      ornaments: [...laid.flatMap((page) => page.ornaments), ...marks],
    });
  }
  return { title, pages: sheets };
}
