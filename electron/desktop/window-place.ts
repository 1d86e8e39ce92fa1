import type { WindowPlace } from "../service/settings.ts";

/** A rectangle on the desktop, in pixels. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Size of a first window. */
const FIRST = { width: 1280, height: 860 };
/** So much of the window's upper edge must lie on a screen that it can be taken hold of. */
const HOLD = { width: 120, height: 40 };

const overlap = (from: number, length: number, otherFrom: number, otherLength: number): number =>
  Math.min(from + length, otherFrom + otherLength) - Math.max(from, otherFrom);

/**
 * Where the window opens: where it was, if enough of its upper edge lies on a screen that is still there, and no larger than
 * that screen; else in the middle of the main screen, which is the first.
 *
 * @param screens the parts of each screen that windows may take.
 */
export function placeOn(screens: readonly Rectangle[], last: WindowPlace | null): WindowPlace {
  const screen = last
    ? screens.find(
        (each) =>
          overlap(last.x, last.width, each.x, each.width) >= HOLD.width &&
          overlap(last.y, HOLD.height, each.y, each.height) >= HOLD.height,
      )
    : undefined;
  const on = screen ?? screens[0] ?? { x: 0, y: 0, ...FIRST };
  const size = last ?? FIRST;
  const width = Math.min(size.width, on.width);
  const height = Math.min(size.height, on.height);
  if (last && screen) return { x: last.x, y: last.y, width, height, maximised: last.maximised };
  const x = on.x + Math.floor((on.width - width) / 2);
  const y = on.y + Math.floor((on.height - height) / 2);
  return { x, y, width, height, maximised: last?.maximised ?? false };
}
