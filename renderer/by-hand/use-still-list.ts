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
 * @param above what stands above it and grows; it does not shrink again, so that there is less to scroll.
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
    return () => {
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
