import type { Line } from "./line.ts";
import { type Mark, moved, type PageBlock, type Tag } from "./page.ts";

/** Lines that are read together: one stop, one sentence. */
export interface Block {
  readonly tag: Tag;
  readonly lines: readonly Line[];
  /** Millimetres of white above it, unless it stands at the head of a column. */
  readonly before: number;
  /** Millimetres from its lines down to a rule under it; `null` without one. */
  readonly ruled: number | null;
}

/** What stands under one head. Its blocks keep together where that costs no page. */
export interface Group {
  readonly head: Block | null;
  /** Stands in the place of the head where the group goes on in another column or on another page. */
  readonly headAgain: Block | null;
  readonly blocks: readonly Block[];
  /** Whether it begins a column of its own, where there are several. */
  readonly opens?: boolean;
}

/** Groups set side by side in so many columns of equal width. */
export interface Band {
  readonly columns: number;
  /** Millimetres of white above it, unless it stands at the head of a page. */
  readonly before: number;
  readonly groups: readonly Group[];
  /** Whether it must not stand at the foot of a page with nothing of the next band under it. */
  readonly keeps?: boolean;
}

/** White between columns, in millimetres: less than a finger, more than a word. */
const GUTTER = 5;

/** Width of one of so many columns. */
export const columnWidth = (width: number, columns: number): number => (width - (columns - 1) * GUTTER) / columns;

/** What has been set on one page, measured from the upper left corner of its body. */
export interface Body {
  readonly blocks: readonly PageBlock[];
  readonly ornaments: readonly Mark[];
  /** Millimetres of the body that are filled. */
  readonly filled: number;
}

const RULE = 0.25;

const heightOf = (block: Block): number =>
  block.lines.reduce((sum, line) => sum + line.height, 0) + (block.ruled === null ? 0 : block.ruled + RULE);

/** Of a whole group at the head of a column. */
const groupHeight = ({ head, blocks }: Group): number =>
  [...(head ? [head] : []), ...blocks].reduce(
    (sum, block, index) => sum + heightOf(block) + (index === 0 ? 0 : block.before),
    0,
  );

/** Of a head, as it stands first or again, with the tallest thing under it: lower than that a column would lose one of them. */
const partHeight = ({ head, headAgain, blocks }: Group): number =>
  Math.max(0, ...[head, headAgain].map((each) => (each ? heightOf(each) : 0))) +
  Math.max(0, ...blocks.map((block) => block.before + heightOf(block)));

interface Placed {
  readonly block: Block;
  readonly column: number;
  readonly y: number;
}

/** A group, or what is left of one whose head has stood already: it need not stand again where there is no room for it. */
type Rest = Group & { readonly goesOn?: boolean };

interface Filled {
  readonly placed: readonly Placed[];
  readonly rest: readonly Rest[];
  /** Depth of the deepest column. */
  readonly depth: number;
}

/** A block cut after as many lines as go into `room`, at least one. */
function cutBlock(block: Block, room: number): readonly [Block, Block | null] {
  let [count, height] = [0, 0];
  for (const line of block.lines) {
    if (count > 0 && height + line.height > room) break;
    height += line.height;
    count += 1;
  }
  if (count === block.lines.length) return [block, null];
  return [
    { ...block, lines: block.lines.slice(0, count), ruled: null },
    { ...block, lines: block.lines.slice(count), before: 0 },
  ];
}

/** Fills columns of one height with as much as goes in. `whole`: a group that would be parted goes to the next column. */
function fillColumns(groups: readonly Rest[], columns: number, height: number, whole: boolean): Filled {
  const placed: Placed[] = [];
  let [column, y, depth] = [0, 0, 0];
  const isFresh = (): boolean => y === 0;
  const put = (block: Block): void => {
    const top = isFresh() ? 0 : y + block.before;
    placed.push({ block, column, y: top });
    y = top + heightOf(block);
    depth = Math.max(depth, y);
  };
  const needs = (...blocks: readonly (Block | null)[]): number => {
    let sum = 0;
    for (const block of blocks) {
      if (block === null) continue;
      sum += (sum === 0 && isFresh() ? 0 : block.before) + heightOf(block);
    }
    return sum;
  };
  const fits = (...blocks: readonly (Block | null)[]): boolean => y + needs(...blocks) <= height + 1e-6;
  for (const [index, group] of groups.entries()) {
    const { head, headAgain } = group;
    const opens = group.opens === true && columns > 1 && group !== groups[0];
    if (!isFresh() && (opens || (whole && !fits(head, ...group.blocks)))) {
      column += 1;
      y = 0;
    }
    const left = [...group.blocks];
    let title = head;
    let stands = false;
    const later = (): readonly Rest[] => [
      { head: stands ? headAgain : head, headAgain, blocks: left, goesOn: stands || group.goesOn === true },
      ...groups.slice(index + 1),
    ];
    if (column === columns) return { placed, rest: later(), depth };
    while (left.length > 0) {
      const next = left[0] as Block;
      const lead = stands ? null : title;
      if (fits(lead, next)) {
        if (lead) put(lead);
        put(next);
        stands = true;
        left.shift();
        continue;
      }
      if (isFresh()) {
        // Taller than a column: it is parted between its lines, rather than lost.
        if (lead && heightOf(lead) + (next.lines[0]?.height ?? 0) + next.before > height) {
          if (lead === head && !group.goesOn) left.unshift(lead);
          stands = true;
          continue;
        }
        if (lead) put(lead);
        const [first, second] = cutBlock(next, height - y - next.before);
        put(first);
        stands = true;
        left.splice(0, 1, ...(second ? [second] : []));
        if (left.length === 0) continue;
      }
      column += 1;
      y = 0;
      title = stands ? headAgain : head;
      if (column === columns) return { placed, rest: later(), depth };
      stands = stands && headAgain === null;
    }
  }
  return { placed, rest: [], depth };
}

/** Fills columns as {@link fillColumns}, keeps groups whole where all goes in all the same, and ends columns alike. */
function bestFilled(groups: readonly Rest[], columns: number, height: number): Filled {
  const whole = fillColumns(groups, columns, height, true);
  // One group alone is parted where it would stand as a single long column beside nothing.
  const isLong = groups.length === 1 && whole.depth > height / 2;
  const isWhole = whole.rest.length === 0 && !isLong;
  let best = isWhole ? whole : fillColumns(groups, columns, height, false);
  if (best.rest.length > 0 || columns === 1) return best;
  // Lower than the highest group a column would part it. Half a millimetre is finer than anyone sees.
  let [low, high] = [Math.max(...groups.map(isWhole ? groupHeight : partHeight)), best.depth];
  while (high - low > 0.5) {
    const middle = (low + high) / 2;
    const tried = fillColumns(groups, columns, middle, isWhole);
    if (tried.rest.length === 0 && tried.depth <= middle + 1e-6) {
      best = tried;
      high = middle;
    } else low = middle;
  }
  return best;
}

/** The height that a band needs at its beginning to make sense: a head and what follows it, and what it must not leave. */
function leastOf({ groups, keeps }: Band, next: Band | undefined): number {
  const [first] = groups;
  const [block] = first?.blocks ?? [];
  const head = first?.head ? heightOf(first.head) + (block?.before ?? 0) : 0;
  const own = head + (block ? heightOf(block) : 0);
  return keeps && next ? own + next.before + leastOf(next, undefined) : own;
}

/**
 * Sets bands one under another on as many pages as they need.
 *
 * @param width of the body in millimetres. Blocks must have been set to the width of their band's columns.
 * @param first height of the body of the first page; a line that is taller than that stands alone and runs over it.
 * @param later the same of all pages that follow.
 */
export function bodiesOf(bands: readonly Band[], width: number, first: number, later = first): readonly Body[] {
  const bodies: { blocks: PageBlock[]; ornaments: Mark[]; filled: number }[] = [];
  const turn = (): { blocks: PageBlock[]; ornaments: Mark[]; filled: number } => {
    const page = { blocks: [], ornaments: [], filled: 0 };
    bodies.push(page);
    return page;
  };
  let page = turn();
  for (const [index, band] of bands.entries()) {
    let groups: readonly Rest[] = band.groups.filter((group) => group.blocks.length > 0);
    let before = page.filled === 0 ? 0 : band.before;
    const wide = columnWidth(width, band.columns);
    while (groups.length > 0) {
      const room = (bodies.length === 1 ? first : later) - page.filled - before;
      if (page.filled > 0 && room < leastOf({ ...band, groups }, bands[index + 1])) {
        page = turn();
        before = 0;
        continue;
      }
      const { placed, rest, depth } = bestFilled(groups, band.columns, room);
      const top = page.filled + before;
      for (const { block, column, y } of placed) {
        const left = column * (wide + GUTTER);
        let down = top + y;
        const marks: Mark[] = [];
        for (const line of block.lines) {
          marks.push(...line.marks.map((mark) => moved(mark, left, down)));
          down += line.height;
        }
        page.blocks.push({ tag: block.tag, marks });
        if (block.ruled !== null) {
          page.ornaments.push({ kind: "rule", x: left, y: down + block.ruled, width: wide, height: RULE });
        }
      }
      page.filled = top + depth;
      groups = [...rest];
      before = 0;
      if (groups.length > 0) page = turn();
    }
  }
  return bodies;
}
