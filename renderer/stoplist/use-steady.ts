import { useCallback, useLayoutEffect, useRef } from "react";

/** The same function at every rendering, doing what the latest one does: what is handed it need not be drawn anew. */
export function useSteady<Arguments extends readonly unknown[]>(
  act: (...given: Arguments) => void,
): (...given: Arguments) => void {
  const latest = useRef(act);
  useLayoutEffect(() => {
    latest.current = act;
  });
  return useCallback((...given: Arguments) => latest.current(...given), []);
}
