import { useEffect, useState } from "react";
import { musicKey } from "../state/organ.ts";
import { musicOf } from "../state/section.ts";
import type { DeskSection } from "../state/work.ts";
import { modelWorker } from "./model-worker.ts";
import type { Answer, ProposeAsk } from "./proposed.ts";
import { Reckoner } from "./reckoner.ts";

/** The one worker that proposes. */
const proposer = new Reckoner<{ readonly wants: "proposals" } & ProposeAsk, Answer>(modelWorker);

/** How the search stands. */
export type Looking =
  | { readonly state: "looking"; readonly since: number }
  | { readonly state: "stopped" }
  | { readonly state: "failed"; readonly fault: string }
  | { readonly state: "done"; readonly answer: Answer };

/** Ranked registrations of a section, looked for again whenever organ or music change. */
export function useProposals(
  organ: string,
  section: DeskSection,
  count: number,
  every: boolean,
): { readonly looking: Looking; stop(): void; again(): void } {
  const music = musicKey(section);
  const key = `${count} ${every} ${music} ${organ}`;
  const known = proposer.known(key);
  const [told, setTold] = useState<{ readonly key: string; readonly looking: Looking } | null>(null);
  const [round, setRound] = useState(0);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for organ, music, count and order together; another round asks again.
  useEffect(() => {
    if (proposer.known(key)) return undefined;
    const whole = musicOf(section);
    if (!whole) return undefined;
    setTold({ key, looking: { state: "looking", since: Date.now() } });
    proposer.ask(key, { wants: "proposals", organ, section: whole, count, every }, (reply) => {
      const looking: Looking =
        "fault" in reply ? { state: "failed", fault: reply.fault } : { state: "done", answer: reply.answer };
      setTold({ key, looking });
    });
    return () => proposer.stop();
  }, [key, round]);

  const looking: Looking = known
    ? { state: "done", answer: known }
    : told?.key === key
      ? told.looking
      : { state: "looking", since: Date.now() };
  return {
    looking,
    stop: () => {
      proposer.stop();
      setTold({ key, looking: { state: "stopped" } });
    },
    again: () => setRound((before) => before + 1),
  };
}
