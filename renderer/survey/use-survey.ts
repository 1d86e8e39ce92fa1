import { useEffect, useSyncExternalStore } from "react";
import { modelWorker } from "../registrations/model-worker.ts";
import { type Standing, Surveyor } from "./surveyor.ts";

/** The one worker that surveys. */
const surveyor = new Surveyor(modelWorker);

/** Organs whose survey the person stopped: coming back to the page does not begin it again. */
const stopped = new Set<string>();

/** The survey of an organ, begun when a page asks for it and broken off when the page is left. */
export function useSurvey(organ: string): { readonly standing: Standing; stop(): void; goOn(): void } {
  const standing = useSyncExternalStore(surveyor.subscribe, () => surveyor.standing(organ));
  useEffect(() => {
    if (!stopped.has(organ) && surveyor.standing(organ).state !== "failed") surveyor.begin(organ);
    return () => surveyor.stop();
  }, [organ]);
  return {
    standing,
    stop: () => {
      stopped.add(organ);
      surveyor.stop();
    },
    goOn: () => {
      stopped.delete(organ);
      surveyor.begin(organ);
    },
  };
}
