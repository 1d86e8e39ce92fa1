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

/** Pages that follow each other and lie alike. */
function runsOf(pages: readonly Page[]): readonly (readonly Page[])[] {
  const runs: Page[][] = [];
  for (const page of pages) {
    const last = runs.at(-1);
    if (last?.[0]?.width === page.width && last[0].height === page.height) last.push(page);
    else runs.push([page]);
  }
  return runs;
}

/** One sheet with pages in its places, row by row. */
function sheetOf(pages: readonly Page[], imposition: Imposition): Page {
  const { sheet, across, down } = imposition;
  const { width, height } = pages[0] as Page;
  const left = (sheet.width - across * width) / 2;
  const top = (sheet.height - down * height) / 2;
  const laid = pages.map((page, index) => {
    const [right, below] = [left + (index % across) * width, top + Math.floor(index / across) * height];
    const shift = (mark: Mark): Mark => moved(mark, right, below);
    return {
      blocks: page.blocks.map(({ tag, marks }) => ({ tag, marks: marks.map(shift) })),
      ornaments: page.ornaments.map(shift),
    };
  });
  return {
    ...sheet,
    blocks: laid.flatMap((page) => page.blocks),
    ornaments: [...laid.flatMap((page) => page.ornaments), ...cuttingMarks(imposition, { width, height }, left, top)],
  };
}

/**
 * Several pages on each sheet, in reading order, row by row, with marks where to cut. Pages that lie the other way begin
 * a sheet of their own.
 *
 * @returns `null` where no two pages go on such a sheet.
 */
export function imposed({ title, pages }: PrintedCards, paper: Paper): PrintedCards | null {
  const sheets: Page[] = [];
  for (const run of runsOf(pages)) {
    const imposition = impositionFor(run[0] as Page, paper);
    if (imposition === null) return null;
    const each = imposition.across * imposition.down;
    for (let start = 0; start < run.length; start += each) {
      sheets.push(sheetOf(run.slice(start, start + each), imposition));
    }
  }
  return { title, pages: sheets };
}
