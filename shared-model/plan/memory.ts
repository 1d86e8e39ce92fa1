/** One change as the combination memory sees it. Costs are whole numbers, such that impossible changes outweigh all work. */
export interface MemoryChange {
  /** The console after it: changes into equal consoles share a piston. */
  readonly content: string;
  /** What it costs with a general piston, and what by hand with some divisions set by pistons of their own. */
  readonly press: number;
  byHand(divisionsPressed: ReadonlySet<string>): number;
  /** By division that changes: what stands drawn there afterwards. */
  readonly divisions: ReadonlyMap<string, string>;
  /** What going to another memory level right before it costs. */
  readonly levelSwitch: number;
  /** What it costs to press the general that holds another change's console, and to move by hand what then differs. */
  near?(content: string): number;
}

/** What memory there is for the player. */
export interface MemoryRoom {
  /** General pistons on a level. */
  readonly generals: number;
  readonly levels: number;
  /** By division: its own pistons. */
  readonly divisionals: ReadonlyMap<string, number>;
}

/** What to store where. */
export interface MemoryChoice {
  readonly cost: number;
  /** For each change the level (from 0) whose general makes it; `null`: by hand. */
  readonly levelOf: readonly (number | null)[];
  /** For each change whose general holds another console that is near: that content; `null` where it holds its own. */
  readonly nearOf: readonly (string | null)[];
  /** For each change the divisions that a piston of their own sets. */
  readonly divisionsOf: readonly ReadonlySet<string>[];
  /** Whether no other choice costs less; else the search was broken off. */
  readonly exact: boolean;
}

/** Ways looked at before a search for pistons is broken off. */
const MOST_NODES = 60_000;

const NONE: ReadonlySet<string> = new Set();

/** What storing each content of a stretch of changes saves; contents that save nothing are left out. */
function savings(changes: readonly MemoryChange[], from: number, to: number): ReadonlyMap<string, number> {
  const saved = new Map<string, number>();
  for (let at = from; at < to; at++) {
    const { content, press, byHand } = changes[at] as MemoryChange;
    const gain = byHand(NONE) - press;
    if (gain > 0) saved.set(content, (saved.get(content) ?? 0) + gain);
  }
  return saved;
}

/** The contents that save most, at most `room`; equal ones in order of use. */
const dearest = (saved: ReadonlyMap<string, number>, room: number): readonly (readonly [string, number])[] =>
  [...saved].sort((a, b) => b[1] - a[1]).slice(0, room);

/** A stretch of changes on one level: from which change, with which contents. */
interface Run {
  readonly from: number;
  readonly to: number;
  readonly stored: ReadonlySet<string>;
}

/**
 * General pistons alone. On one level each content saves by itself, so those that save most are stored. With more levels the
 * changes are parted into as many stretches, by dynamic programming over the places where a level is left for the next.
 */
function runsOf(changes: readonly MemoryChange[], { generals, levels }: MemoryRoom): readonly Run[] {
  const count = changes.length;
  const whole = savings(changes, 0, count);
  const run = (from: number, to: number): Run => ({
    from,
    to,
    stored: new Set(dearest(savings(changes, from, to), generals).map(([content]) => content)),
  });
  if (whole.size <= generals || levels <= 1 || generals === 0) return [run(0, count)];
  // best[used][to]: the most that the first changes can save with so many levels, and where the last one begins.
  const best: { readonly saved: number; readonly from: number }[][] = [];
  const stretch = (from: number, to: number): number =>
    dearest(savings(changes, from, to), generals).reduce((sum, [, saved]) => sum + saved, 0) -
    (from > 0 ? (changes[from] as MemoryChange).levelSwitch : 0);
  const table = changes.map((_, from) =>
    Array.from({ length: count + 1 }, (__, to) => (to > from ? stretch(from, to) : 0)),
  );
  for (let used = 1; used <= Math.min(levels, count); used++) {
    const row: { readonly saved: number; readonly from: number }[] = [];
    for (let to = 0; to <= count; to++) {
      let entry = { saved: used === 1 ? (table[0]?.[to] ?? 0) : Number.NEGATIVE_INFINITY, from: 0 };
      for (let from = 1; used > 1 && from < to; from++) {
        const saved = (best[used - 2]?.[from]?.saved ?? Number.NEGATIVE_INFINITY) + (table[from]?.[to] ?? 0);
        if (saved > entry.saved) entry = { saved, from };
      }
      row.push(entry);
    }
    best.push(row);
    // A further level that saves nothing is not taken, and then neither is one after it.
    if (used > 1 && (row[count]?.saved ?? 0) <= (best[used - 2]?.[count]?.saved ?? 0)) break;
  }
  let used = best.reduce(
    (most, row, at) => ((row[count]?.saved ?? 0) > (best[most]?.[count]?.saved ?? 0) ? at : most),
    0,
  );
  const runs: Run[] = [];
  for (let to = count; used >= 0; used--) {
    const from = best[used]?.[to]?.from ?? 0;
    runs.unshift(run(from, to));
    to = from;
  }
  return runs;
}

/** A thing that may be stored, with the pistons that can hold it. */
interface Item {
  readonly slot: string;
  readonly content: string;
}

/**
 * Generals of one level that may serve changes into consoles near to what they hold as well: which contents to store so that
 * every change, made the cheapest way, costs least in all. Every choice is tried, save those that cannot beat the best one
 * found even if each of the pistons left saved as much as it could alone.
 */
function withNear(changes: readonly MemoryChange[], generals: number): MemoryChoice {
  const contents = [...new Set(changes.map((change) => change.content))];
  const hand = changes.map((change) => change.byHand(NONE));
  const by = contents.map((content) =>
    changes.map((change) => (change.content === content ? change.press : (change.near?.(content) ?? Infinity))),
  );
  const gain = (item: number, now: readonly number[]): number =>
    now.reduce((sum, cost, at) => sum + Math.max(0, cost - ((by[item] as number[])[at] as number)), 0);
  const sumOf = (costs: readonly number[]): number => costs.reduce((sum, cost) => sum + cost, 0);
  const order = contents.map((_, item) => item).sort((a, b) => gain(b, hand) - gain(a, hand) || a - b);
  let best: { cost: number; stored: readonly number[] } = { cost: sumOf(hand), stored: [] };
  let nodes = 0;
  const decide = (from: number, stored: readonly number[], now: readonly number[]): void => {
    nodes += 1;
    if (nodes > MOST_NODES) return;
    const cost = sumOf(now);
    if (cost < best.cost) best = { cost, stored };
    const room = generals - stored.length;
    if (room === 0) return;
    const gains = order.slice(from).map((item) => gain(item, now));
    for (const [index, item] of order.slice(from).entries()) {
      const most = gains
        .slice(index)
        .sort((a, b) => b - a)
        .slice(0, room);
      if (cost - sumOf(most) >= best.cost) return;
      if ((gains[index] as number) <= 0) continue;
      decide(
        from + index + 1,
        [...stored, item],
        now.map((each, at) => Math.min(each, (by[item] as number[])[at] as number)),
      );
    }
  };
  decide(0, [], hand);
  const pressed = changes.map((_, at) => {
    const [item] = [...best.stored].sort(
      (a, b) => ((by[a] as number[])[at] as number) - ((by[b] as number[])[at] as number),
    );
    return item !== undefined && ((by[item] as number[])[at] as number) < (hand[at] as number)
      ? (contents[item] as string)
      : null;
  });
  return {
    cost: best.cost,
    levelOf: pressed.map((content) => (content === null ? null : 0)),
    nearOf: pressed.map((content, at) => (content === changes[at]?.content ? null : content)),
    divisionsOf: changes.map(() => NONE),
    exact: nodes <= MOST_NODES,
  };
}

/**
 * Generals and divisionals of one level together: every choice of what to store is tried, save those that cannot beat the
 * best one found even if all that is still open were stored as well.
 */
function together(changes: readonly MemoryChange[], room: MemoryRoom): MemoryChoice {
  const general = " general";
  const items: Item[] = dearest(savings(changes, 0, changes.length), Number.POSITIVE_INFINITY).map(([content]) => ({
    slot: general,
    content,
  }));
  const seen = new Set<string>();
  for (const { divisions } of changes) {
    for (const [division, content] of divisions) {
      const key = `${division}\n${content}`;
      if (seen.has(key) || !room.divisionals.has(division)) continue;
      seen.add(key);
      items.push({ slot: division, content });
    }
  }
  const stored = new Set<Item>(items);
  const byKey = new Map(items.map((item) => [`${item.slot}\n${item.content}`, item]));
  const pressedBy = (change: MemoryChange): boolean => {
    const item = byKey.get(`${general}\n${change.content}`);
    return item !== undefined && stored.has(item);
  };
  const setBy = (change: MemoryChange): ReadonlySet<string> =>
    new Set(
      [...change.divisions].flatMap(([division, content]) => {
        const item = byKey.get(`${division}\n${content}`);
        return item && stored.has(item) ? [division] : [];
      }),
    );
  const costOf = (change: MemoryChange): number => {
    const hand = change.byHand(setBy(change));
    return pressedBy(change) ? Math.min(change.press, hand) : hand;
  };
  const total = (): number => changes.reduce((sum, change) => sum + costOf(change), 0);
  let best = { cost: Number.POSITIVE_INFINITY, stored: new Set<Item>() };
  let nodes = 0;
  const left = new Map<string, number>([[general, room.generals], ...room.divisionals]);
  const decide = (at: number): void => {
    nodes += 1;
    if (nodes > MOST_NODES) return;
    const bound = total();
    if (bound >= best.cost) return;
    const item = items[at];
    if (!item) {
      best = { cost: bound, stored: new Set(stored) };
      return;
    }
    const free = left.get(item.slot) ?? 0;
    if (free > 0) {
      left.set(item.slot, free - 1);
      decide(at + 1);
      left.set(item.slot, free);
    }
    stored.delete(item);
    decide(at + 1);
    stored.add(item);
  };
  decide(0);
  for (const item of items) if (!best.stored.has(item)) stored.delete(item);
  const pressed = changes.map((change) => pressedBy(change) && change.press <= change.byHand(setBy(change)));
  return {
    cost: total(),
    levelOf: pressed.map((each) => (each ? 0 : null)),
    nearOf: changes.map(() => null),
    divisionsOf: changes.map((change, at) => (pressed[at] ? NONE : setBy(change))),
    exact: nodes <= MOST_NODES,
  };
}

/**
 * Which registrations go on which pistons, for the least work of hands: changes that cannot be made otherwise first, then the
 * work. Exact for generals on one level or several (levels are used one after the other), and unless the search was broken off
 * (`exact` says so) on one level for generals with divisionals, and for generals that serve what is near as well; of these two
 * the better one is taken, they are not mixed.
 */
export function storeBest(changes: readonly MemoryChange[], room: MemoryRoom): MemoryChoice {
  const runs = runsOf(changes, room);
  const levelOf = changes.map((change, at): number | null => {
    const level = runs.findIndex((run) => at >= run.from && at < run.to);
    const pays = change.byHand(NONE) > change.press;
    return pays && runs[level]?.stored.has(change.content) ? level : null;
  });
  const switches = runs.slice(1).reduce((sum, run) => sum + (changes[run.from] as MemoryChange).levelSwitch, 0);
  const cost = changes.reduce(
    (sum, change, at) => sum + (levelOf[at] === null ? change.byHand(NONE) : change.press),
    0,
  );
  const nobody = { nearOf: changes.map(() => null), divisionsOf: changes.map(() => NONE) };
  const plain: MemoryChoice = { cost: cost + switches, levelOf, ...nobody, exact: true };
  const near =
    room.levels <= 1 && room.generals > 0 && changes.some((each) => each.near)
      ? withNear(changes, room.generals)
      : null;
  const generals = near && near.cost < plain.cost ? near : { ...plain, exact: near?.exact ?? true };
  // Where divisionals could not do better even with a piston for everything, they need not be looked at.
  const open = changes.some((change, at) => {
    const now = levelOf[at] === null ? change.byHand(NONE) : change.press;
    return now > Math.min(change.press, change.byHand(new Set(change.divisions.keys())));
  });
  if (!open || room.divisionals.size === 0) return generals;
  const both = together(changes, room);
  const exact = both.exact && generals.exact && room.levels <= 1;
  return { ...(both.cost < generals.cost ? both : generals), exact };
}

/** Numbers for what is stored, in the order of first use: the `numbers` that the player may use, lowest first. */
export function numbered(contents: readonly string[], numbers: readonly number[]): ReadonlyMap<string, number> {
  const given = new Map<string, number>();
  for (const content of contents) {
    const number = numbers[given.size];
    if (!given.has(content) && number !== undefined) given.set(content, number);
  }
  return given;
}
