import { startTransition, useEffect, useState } from "react";

/** The value of the frame before: the latest comes once that frame is painted, at leisure. For what may lag behind a touch. */
export function useAfterPaint<Value>(value: Value): Value {
  const [shown, show] = useState(value);
  useEffect(() => {
    let later: ReturnType<typeof setTimeout> | undefined;
    const frame = requestAnimationFrame(() => {
      later = setTimeout(() => startTransition(() => show(value)));
    });
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(later);
    };
  }, [value]);
  return shown;
}
