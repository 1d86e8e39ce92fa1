import { type RefObject, useEffect, useLayoutEffect, useRef } from "react";

/** A row of the stoplist, and how far below the head of the page it stood, in pixels of the window. */
interface Stood {
  readonly row: Element;
  readonly top: number;
  /** Width of the list. In another width everything breaks otherwise. */
  readonly width: number;
}

/**
 * Keeps the row that a person has touched still under the finger while what is said above it turns longer or shorter:
 * the window is scrolled by as much. Who works elsewhere on the page keeps that in place instead.
 *
 * @param list the stoplist.
 * @param above what stands above it and grows. It does not shrink again under the finger, so that there is less to scroll; the
 * room it does not need is given back where no row moves for it under a finger: out of sight, once the list has been scrolled up
 * to the window's edge, and when the person turns to what stands above the list.
 */
export function useStillList(list: RefObject<HTMLElement | null>, above: RefObject<HTMLElement | null>): void {
  const last = useRef<Stood | null>(null);
  useEffect(() => {
    const element = list.current;
    const { style } = document.documentElement;
    const onFocus = ({ target }: FocusEvent): void => {
      last.current = element && target instanceof Element ? stood(target, element) : null;
    };
    // The browser's own way of keeping things in place would come on top of this.
    style.overflowAnchor = "none";
    element?.addEventListener("focusin", onFocus);
    // In another width, or another size of print, what stands above breaks otherwise and may be lower.
    let width = element?.clientWidth;
    const observer = new ResizeObserver(() => {
      if (element?.clientWidth === width) return;
      width = element?.clientWidth;
      last.current = null;
      if (above.current) above.current.style.minHeight = "";
    });
    if (element) observer.observe(element);
    const strip = above.current?.parentElement;
    const giveBack = (isOutOfSight: boolean): void => {
      const { current: kept } = above;
      if (!element || !kept || kept.style.minHeight === "") return;
      const top = element.getBoundingClientRect().top;
      if (isOutOfSight && top > 0) return;
      kept.style.minHeight = "";
      const room = top - element.getBoundingClientRect().top;
      if (isOutOfSight && room > 0) window.scrollBy({ top: -room, behavior: "instant" });
      const row = last.current?.row;
      last.current = row?.isConnected ? stood(row, element) : null;
    };
    const onScrolled = (): void => giveBack(true);
    const onStrip = (): void => giveBack(false);
    document.addEventListener("scrollend", onScrolled);
    strip?.addEventListener("pointerenter", onStrip);
    strip?.addEventListener("focusin", onStrip);
    return () => {
      document.removeEventListener("scrollend", onScrolled);
      strip?.removeEventListener("pointerenter", onStrip);
      strip?.removeEventListener("focusin", onStrip);
      observer.disconnect();
      style.overflowAnchor = "";
      element?.removeEventListener("focusin", onFocus);
    };
  }, [list, above]);
  useLayoutEffect(() => {
    const row = document.activeElement;
    if (!list.current || !above.current) return;
    const height = `${above.current.offsetHeight}px`;
    if (above.current.style.minHeight !== height) above.current.style.minHeight = height;
    const before = last.current;
    last.current = row && list.current.contains(row) ? stood(row, list.current) : null;
    if (!before || before.row !== last.current?.row || before.width !== last.current.width) return;
    if (before.top !== last.current.top) {
      window.scrollBy({ top: last.current.top - before.top, behavior: "instant" });
    }
  });
}

const stood = (row: Element, list: HTMLElement): Stood => ({
  row,
  top: row.getBoundingClientRect().top + window.scrollY,
  width: list.clientWidth,
});
