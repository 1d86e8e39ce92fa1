import { isAidsTitle } from "./accessories.ts";
import { isCouplerTitle } from "./couplers.ts";
import { halfTitle } from "./halves.ts";
import { headingIn } from "./headings.ts";
import type { KnownNames } from "./known-names.ts";
import type { PrintedLine } from "./plain-text.ts";
import { partsOfLine } from "./stop-line.ts";

/** A line in reading order: columns one after the other, cells of one stop parted by tabs. */
export interface Entry {
  readonly line: number;
  readonly text: string;
  /** A blank line or the start of a column stands before it. */
  readonly blankBefore: boolean;
}

/** A cell of a row: where it stands (a column of text, or the number of a tab) and what it can be. */
interface Cell {
  readonly at: number;
  readonly text: string;
  readonly kind: "marks" | "stop" | "name" | "heading" | "number" | "words";
}

interface Row {
  readonly line: number;
  readonly text: string;
  readonly tabbed: boolean;
  readonly cells: readonly Cell[];
}

/** Cells that belong together: a name with its marks, a heading. */
interface Group {
  at: number;
  cells: Cell[];
  /** Enough to be a stop or a heading by itself. */
  whole: boolean;
  heading: boolean;
}

const NUMBERING = /^(?:\(?\d{1,3}[.)]|[*†•+-])$/;

function kindOf(text: string, names: KnownNames): Cell["kind"] {
  if (NUMBERING.test(text)) return "number";
  const heading = headingIn(text);
  if (heading?.exact && !names.isPlainName(text)) return "heading";
  // "Mano izquierda" over one column, "Mano derecha" over the other.
  if (halfTitle(text)?.sure) return "heading";
  // "Koppeln" over a column of them.
  if (isCouplerTitle(text) || isAidsTitle(text)) return "heading";
  if (text.length > 120) return "words";
  const parts = partsOfLine(text.replace(/^\d{1,3}[.)]\s*/, ""), names);
  const [first] = parts;
  if (!first || first.kind === "words") return /^\d{1,3}$/.test(text) ? "number" : "words";
  const { draft } = first;
  const marked = draft.pitches.length > 0 || draft.ranks !== null || draft.composition !== null;
  if (first.kind === "marks") return marked || draft.aside.length > 0 ? "marks" : "words";
  if (marked && (names.acquaintance(draft.name) !== "strange" || draft.pitches.some((mark) => mark.sure)))
    return "stop";
  return names.knows(draft.name) ? "name" : "words";
}

function rowOf({ line, text }: PrintedLine, names: KnownNames): Row {
  const tabbed = text.includes("\t");
  const cells: Cell[] = [];
  const push = (at: number, content: string): void => {
    const cell = content.trim();
    if (cell !== "") cells.push({ at, text: cell, kind: kindOf(cell, names) });
  };
  if (tabbed) for (const [index, content] of text.split("\t").entries()) push(index, content);
  else for (const match of text.matchAll(/\S+(?: \S+)*/g)) push(match.index, match[0]);
  return { line, text, tabbed, cells };
}

function groupsOf(row: Row): Group[] {
  const groups: Group[] = [];
  const marksFirst = row.cells[0]?.kind === "marks" && row.cells.length > 1;
  let open: Group | null = null;
  const begin = (cell: Cell): Group => {
    const group: Group = {
      at: cell.at,
      cells: [cell],
      whole: cell.kind === "stop" || cell.kind === "name" || cell.kind === "heading",
      heading: cell.kind === "heading",
    };
    groups.push(group);
    return group;
  };
  for (const cell of row.cells) {
    if (cell.kind === "number") open = begin(cell);
    else if (cell.kind === "marks") {
      const marked = open?.cells.some(({ kind }) => kind === "marks" || kind === "stop") ?? true;
      if (open && !marksFirst && !open.heading && (!marked || open.cells.at(-1)?.kind === "marks")) {
        open.cells.push(cell);
        open.whole = open.cells.some(({ kind }) => kind !== "number" && kind !== "marks");
      } else open = begin(cell);
    } else {
      const last: Cell["kind"] | undefined = open?.cells.at(-1)?.kind;
      const waits = open && open.cells.length === 1 && (last === "number" || (marksFirst && last === "marks"));
      if (open && waits && cell.kind !== "heading") {
        open.cells.push(cell);
        open.whole = last === "marks" || cell.kind === "stop" || cell.kind === "name";
      } else open = begin(cell);
    }
  }
  return groups;
}

const OTHER_TITLE =
  /^(?:stops?|register|registername|stop ?name|name|jeux?|registro|registri|stem|pitch|feet|foot|fu(?:ß|ss)(?:lage|zahl)?|lage|length|hauteur|pieds?|piedi|pies|voet(?:maat)?|no\.?|nr\.?|n[°º]|number|nummer|notes?|remarks?|bemerkung(?:en)?|opmerkingen|pipes|material|compass|family|type|familie)$/i;

const joinCells = (cells: readonly Cell[]): string => cells.map(({ text }) => text).join("\t");

const DIVISION_TITLE =
  /^(?:division|werk|manual|clavier|teilwerk|department|keyboard|man\.?|klavier|claviers?|tastiera|teclado)$/i;

/** A column titled for the keyboards, wherever it stands: its cells head the rows that follow in their order. */
function byTitledDivision(rows: readonly Row[], titles: Row | undefined): Entry[] | null {
  const column = titles?.cells.find(({ text }) => DIVISION_TITLE.test(text))?.at;
  if (column === undefined) return null;
  const groups = new Map<string, Entry[]>();
  for (const { line, cells } of rows) {
    const head = cells.find(({ at }) => at === column);
    if (!head) return null;
    const group = groups.get(head.text) ?? [{ line, text: head.text, blankBefore: true }];
    group.push({ line, text: joinCells(cells.filter((cell) => cell !== head)), blankBefore: false });
    groups.set(head.text, group);
  }
  return [...groups.values()].flat();
}

const RANKS_TITLE = /^(?:ranks?|rks?\.?|rangs?|chöre|fach|reihen|file|filas|sterkte|kor)$/i;

/** Figures in a column titled for them are numbers of ranks, whatever lengths they could be. */
function withRanks(rows: readonly Row[], titles: Row | undefined): readonly Row[] {
  const column = titles?.cells.find(({ text }) => RANKS_TITLE.test(text))?.at;
  if (column === undefined) return rows;
  return rows.map((row) => ({
    ...row,
    cells: row.cells.map((cell) =>
      cell.at === column && /^\d{1,2}$/.test(cell.text) ? { ...cell, text: `${cell.text} ranks`, kind: "marks" } : cell,
    ),
  }));
}

/** Text columns whose starts differ by no more are one column. */
const SLACK = 3;

function columnStarts(rows: readonly Row[], tabbed: boolean): number[] {
  const counts = new Map<number, number>();
  for (const row of rows)
    for (const group of groupsOf(row)) if (group.whole) counts.set(group.at, (counts.get(group.at) ?? 0) + 1);
  const enough = Math.max(1, Math.floor(rows.length / 8));
  const starts: { at: number; count: number }[] = [];
  for (const [at, count] of [...counts].sort((a, b) => a[0] - b[0])) {
    const last = starts.at(-1);
    if (last && at - last.at <= (tabbed ? 0 : SLACK)) last.count += count;
    else starts.push({ at, count });
  }
  return starts.filter(({ count }) => count >= enough).map(({ at }) => at);
}

/** Cells of figures that count the rows (1, 2, 3 ...) are numbers, whatever lengths they could be. */
function withNumbers(rows: readonly Row[]): readonly Row[] {
  const places = new Map<number, number[]>();
  for (const { cells } of rows)
    for (const { at, text } of cells)
      if (/^\d{1,3}[.)]?$/.test(text)) places.set(at, [...(places.get(at) ?? []), Number.parseInt(text, 10)]);
  const counting = [...places].flatMap(([at, numbers]) => {
    const steps = numbers.slice(1).filter((number, index) => number === (numbers[index] as number) + 1).length;
    return numbers.length >= 3 && steps >= (numbers.length - 1) * 0.6 ? [at] : [];
  });
  if (counting.length === 0) return rows;
  return rows.map((row) => ({
    ...row,
    cells: row.cells.map((cell) =>
      counting.includes(cell.at) && /^\d/.test(cell.text) && cell.text.length <= 4 ? { ...cell, kind: "number" } : cell,
    ),
  }));
}

const isColumnTitle = (text: string): boolean =>
  [DIVISION_TITLE, RANKS_TITLE, OTHER_TITLE].some((title) => title.test(text));

/** Whether the row names the columns of a table. */
const isTitles = ({ cells }: Row): boolean => cells.length > 1 && cells.every(({ text }) => isColumnTitle(text));

const NUMBER_TITLE = /^(?:no\.?|nr\.?|n[°º]|#|number|nummer|lfd\.? ?nr\.?)$/i;

/** A column titled as numbers of the stops says nothing else, in whatever order they stand. */
function withoutTitledNumbers(rows: readonly Row[]): readonly Row[] {
  const column = rows.find(isTitles)?.cells.find(({ text }) => NUMBER_TITLE.test(text))?.at;
  if (column === undefined) return rows;
  const isNumber = ({ at, text }: Cell): boolean => at === column && /^\d{1,3}[.)]?$/.test(text);
  return rows.map((row) => ({ ...row, cells: row.cells.filter((cell) => !isNumber(cell)) }));
}

/** Rows of a block, column by column when it has several, each row a line when not. */
function readBlock(printed: readonly Row[]): Entry[] {
  const rows = withNumbers(withoutTitledNumbers(printed));
  const plain = (row: Row): Entry => ({ line: row.line, text: joinCells(row.cells), blankBefore: false });
  const rowsLeft = withRanks(
    rows.filter((row) => !isTitles(row)),
    rows.find(isTitles),
  );
  const divisions = divisionColumn(rowsLeft) ?? byTitledDivision(rowsLeft, rows.find(isTitles));
  if (divisions) return divisions;
  const grouped = rowsLeft.map((row) => ({ row, groups: groupsOf(row) }));
  const several = grouped.filter(({ groups }) => groups.filter(({ whole }) => whole).length >= 2);
  const headed = grouped.some(({ groups }) => groups.filter(({ heading }) => heading).length >= 2);
  const tabbed = rowsLeft.some((row) => row.tabbed);
  if (!headed && several.length < Math.max(2, rowsLeft.length * 0.3)) return rowsLeft.map(plain);
  let starts = columnStarts(rowsLeft, tabbed);
  const most = grouped.reduce((count, { groups }) => Math.max(count, groups.filter(({ whole }) => whole).length), 0);
  if (starts.length < 2) return rowsLeft.map(plain);
  const byOrder = starts.length > most;
  if (byOrder) starts = Array.from({ length: most }, (_, index) => index);
  const columns: Entry[][] = starts.map(() => []);
  for (const { row, groups } of grouped) {
    const heads = groups.filter(({ heading }) => heading);
    const inOrder = byOrder || (heads.length === starts.length && heads.length === groups.length);
    const cells = new Map<number, Cell[]>();
    groups.forEach((group, index) => {
      for (const cell of group.cells) {
        const place = tabbed ? group.at : cell.at;
        const found = inOrder ? index : starts.findLastIndex((start) => start <= place + (tabbed ? 0 : SLACK - 1));
        const column = Math.min(Math.max(found, 0), starts.length - 1);
        cells.set(column, [...(cells.get(column) ?? []), cell]);
      }
    });
    for (const [column, content] of cells) {
      const entries = columns[column] as Entry[];
      entries.push({ line: row.line, text: joinCells(content), blankBefore: entries.length === 0 });
    }
  }
  return columns.flat();
}

/** A spreadsheet whose first cells name the division, in every row or where it changes. */
function divisionColumn(rows: readonly Row[]): Entry[] | null {
  const margin = rows.reduce((least, row) => Math.min(least, row.cells[0]?.at ?? least), Number.POSITIVE_INFINITY);
  const first = rows.map((row) => row.cells.find(({ at }) => at === margin));
  const heads = first.filter((cell) => cell?.kind === "heading");
  const beside = rows.filter(
    (row) => row.cells[0]?.at === margin && row.cells[0].kind === "heading" && row.cells.length > 1,
  );
  const others = rows.some((row) => row.cells.slice(1).some(({ kind }) => kind === "heading"));
  if (others || heads.length === 0 || beside.length < Math.max(1, heads.length * 0.8) || beside.length < 2) return null;
  if (first.some((cell) => cell && cell.kind !== "heading" && cell.kind !== "words")) return null;
  const entries: Entry[] = [];
  let current = "";
  for (const row of rows) {
    const head = row.cells[0]?.at === margin && row.cells[0].kind === "heading" ? row.cells[0] : null;
    if (head && head.text !== current) {
      entries.push({ line: row.line, text: head.text, blankBefore: true });
      current = head.text;
    }
    const rest = head ? row.cells.slice(1) : row.cells;
    if (rest.length > 0) entries.push({ line: row.line, text: joinCells(rest), blankBefore: false });
  }
  return entries;
}

/** The cells of a line, parted by a sign that does not stand between quotes; doubled quotes within quotes are one. */
function cellsBetween(text: string, sign: string): string[] {
  const cells: string[] = [];
  let [cell, quoted] = ["", false];
  for (let at = 0; at < text.length; at++) {
    const one = text[at] as string;
    if (one === '"' && (quoted ? text[at + 1] !== '"' : cell.trim() === "")) quoted = !quoted;
    else if (one === sign && !quoted) {
      cells.push(cell.trim());
      cell = "";
    } else {
      if (one === '"' && quoted) at += 1;
      cell += one;
    }
  }
  return [...cells, cell.trim()];
}

/** Lists saved with commas or semicolons between cells: the same number of them in nearly every line, a heading or a length in a cell of its own. */
function cellsOfCommas(lines: readonly PrintedLine[]): readonly PrintedLine[] {
  const filled = lines.filter(({ text }) => text.trim() !== "");
  if (filled.length < 3 || filled.some(({ text }) => text.includes("\t"))) return lines;
  for (const sign of [";", ","]) {
    const split = filled.map(({ text }) => cellsBetween(text, sign));
    const width = split[0]?.length ?? 0;
    if (width < 2 || split.filter((cells) => cells.length === width).length < split.length * 0.9) continue;
    const titled = split[0]?.every(isColumnTitle) ?? false;
    const headed = split.filter(([cell = ""]) => headingIn(cell)?.exact).length >= split.length * 0.6;
    const bare =
      split.filter((cells) => cells.slice(1).some((cell) => /^\d+(?: \d\/\d)?['’]?$/.test(cell))).length >=
      split.length * 0.6;
    if (!titled && !(headed && width >= 3) && !(bare && width === 2)) continue;
    let at = 0;
    return lines.map((one) =>
      one.text.trim() === "" ? one : { line: one.line, text: (split[at++] as string[]).join("\t") },
    );
  }
  return lines;
}

/** Headings printed on one line with single blanks between, one over each column that lost its gaps. */
function headsInRow(text: string): number {
  const words = text.trim().split(/\s+/);
  if (words.length < 2 || words.length > 6) return 0;
  return words.every((word) => /^\p{Lu}/u.test(word) && headingIn(word)?.exact && headingIn(word)?.numberOnly === false)
    ? words.length
    : 0;
}

/** Columns that lost their gaps: a row of headings, then rows with as many stops each. */
function lostColumns(rows: readonly PrintedLine[], names: KnownNames): { entries: Entry[]; used: number } | null {
  const [head] = rows;
  const width = head ? headsInRow(head.text) : 0;
  if (!head || width < 2) return null;
  const columns: Entry[][] = head.text
    .trim()
    .split(/\s+/)
    .map((text) => [{ line: head.line, text, blankBefore: true }]);
  let used = 1;
  for (const row of rows.slice(1)) {
    if (row.text.trim() === "") break;
    const starts = partsOfLine(row.text, names).flatMap((part) => (part.kind === "stop" ? [part.draft.at] : []));
    if (starts.length !== width) break;
    starts.forEach((start, index) => {
      (columns[index] as Entry[]).push({
        line: row.line,
        text: row.text.slice(start, starts[index + 1]).trim(),
        blankBefore: false,
      });
    });
    used += 1;
  }
  return used > 1 ? { entries: columns.flat(), used } : null;
}

/** The lines of a list in the order in which a person reads them: down each column, then on to the next. */
export function inReadingOrder(printed: readonly PrintedLine[], names: KnownNames): readonly Entry[] {
  const lines = cellsOfCommas(printed);
  const entries: Entry[] = [];
  let block: Row[] = [];
  let blankBefore = true;
  const flush = (): void => {
    for (const [index, entry] of readBlock(block).entries()) {
      entries.push(index === 0 ? { ...entry, blankBefore: true } : entry);
    }
    block = [];
  };
  const isWide = (line: PrintedLine | undefined): boolean =>
    line !== undefined && (/\t/.test(line.text) || /\S {2,}\S/.test(line.text));
  for (let index = 0; index < lines.length; index++) {
    const line = lines[index] as PrintedLine;
    if (line.text.trim() === "") {
      // A row of headings keeps its rows though a blank line stands between.
      const [only] = block.length === 1 ? block : [];
      const headsOnly =
        only !== undefined && (only.cells.filter(({ kind }) => kind === "heading").length >= 2 || isTitles(only));
      if (block.length > 0 && !headsOnly) flush();
      blankBefore = true;
      continue;
    }
    const inBlock = block.length > 0 && /^\s{4,}\S/.test(line.text);
    if (isWide(line) || inBlock) block.push(rowOf(line, names));
    else if (block.length > 0 && !(headsRow(line.text) && !isWide(lines[index + 1])) && belongs(line, block, names))
      block.push(rowOf(line, names));
    else {
      if (block.length > 0) flush();
      const lost = lostColumns(lines.slice(index, index + 60), names);
      if (lost) {
        entries.push(...lost.entries);
        index += lost.used - 1;
      } else entries.push({ line: line.line, text: line.text.trim(), blankBefore });
    }
    blankBefore = false;
  }
  if (block.length > 0) flush();
  return entries;
}

/** "Pedal: Subbass 16": what is printed below all columns belongs to none of them. */
const headsRow = (text: string): boolean => {
  const lead = /^([^:]{1,60}):\s*\S/.exec(text);
  return lead !== null && (headingIn(lead[1] as string)?.exact ?? false);
};

/** A short line between the rows of a block is a row whose other columns are empty, unless it runs on below them. */
function belongs(line: PrintedLine, block: readonly Row[], names: KnownNames): boolean {
  // "Fifteenth 2'" alone below rows of cells: the first column is longer than the others.
  if (block.some((row) => row.tabbed)) return ["stop", "name"].includes(kindOf(line.text.trim(), names));
  const second = block.reduce((least, row) => Math.min(least, row.cells[1]?.at ?? least), Number.POSITIVE_INFINITY);
  return line.text.length < second;
}
