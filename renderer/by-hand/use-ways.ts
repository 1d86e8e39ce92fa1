import { useEffect, useState } from "react";
import type { Placing } from "../../shared-model/console/state.ts";
import { modelWorker } from "../registrations/model-worker.ts";
import { Reckoner } from "../registrations/reckoner.ts";
import { musicKey } from "../state/organ.ts";
import { musicOf } from "../state/section.ts";
import type { DeskSection, DrawnByHand } from "../state/work.ts";
import type { ImproveAsk, Way } from "./ways.ts";

const improver = new Reckoner<{ readonly wants: "ways" } & ImproveAsk, readonly Way[]>(modelWorker);

/** The best few single changes; `null` while they are being reckoned, which a large organ makes last a moment. */
export function useWays(
  organ: string,
  section: DeskSection,
  drawn: DrawnByHand,
  placings: readonly Placing[],
): readonly Way[] | null {
  const key = JSON.stringify([musicKey(section), drawn, placings, organ]);
  const known = improver.known(key);
  const [, told] = useState<string | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for all that is asked.
  useEffect(() => {
    const music = musicOf(section);
    if (improver.known(key) || !music || placings.length === 0) return undefined;
    improver.ask(key, { wants: "ways", organ, section: music, drawn, placings }, () => told(key));
    return () => improver.stop();
  }, [key]);
  return known;
}
