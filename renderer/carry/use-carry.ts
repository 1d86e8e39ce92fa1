import { useEffect, useState } from "react";
import { modelWorker } from "../registrations/model-worker.ts";
import { Reckoner } from "../registrations/reckoner.ts";
import type { CarryAnswer, CarryAsk, CarryFileAnswer, CarryFileAsk } from "./carrying.ts";

/** The one worker that carries, and writes what it carried. */
const carrier = new Reckoner<
  ({ readonly wants: "carry" } & CarryAsk) | ({ readonly wants: "carried-file" } & CarryFileAsk),
  CarryAnswer | CarryFileAnswer
>(modelWorker);

/** How the carrying stands. */
export type Carrying =
  | { readonly state: "nothing" | "carrying" | "stopped" }
  | { readonly state: "failed"; readonly words: string }
  | { readonly state: "done"; readonly answer: CarryAnswer };

/** Carries a piece as soon as piece and organs are known, and can be stopped. */
export function useCarry(ask: CarryAsk | null): { readonly carrying: Carrying; stop(): void; again(): void } {
  const key = ask === null ? null : JSON.stringify(ask);
  const [told, setTold] = useState<{ readonly key: string; readonly carrying: Carrying } | null>(null);
  const [round, setRound] = useState(0);
  const known = key === null ? null : carrier.known(key);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for all that is asked; another round asks again.
  useEffect(() => {
    if (ask === null || key === null || carrier.known(key)) return undefined;
    setTold({ key, carrying: { state: "carrying" } });
    carrier.ask(key, { wants: "carry", ...ask }, (reply) =>
      setTold({
        key,
        carrying:
          "fault" in reply
            ? { state: "failed", words: `Carrying failed (${reply.fault}). Nothing was changed.` }
            : { state: "done", answer: reply.answer as CarryAnswer },
      }),
    );
    return () => carrier.stop();
  }, [key, round]);

  const carrying: Carrying =
    key === null
      ? { state: "nothing" }
      : known
        ? { state: "done", answer: known as CarryAnswer }
        : told?.key === key
          ? told.carrying
          : { state: "carrying" };
  return {
    carrying,
    stop: () => {
      carrier.stop();
      if (key !== null) setTold({ key, carrying: { state: "stopped" } });
    },
    again: () => setRound((before) => before + 1),
  };
}

/** Has the file of a carried piece written, by the worker that has it before it still. */
export function carriedFile(ask: CarryFileAsk): Promise<CarryFileAnswer> {
  return new Promise((done, fail) => {
    carrier.ask(JSON.stringify(["file", ask]), { wants: "carried-file", ...ask }, (reply) => {
      if ("answer" in reply) done(reply.answer as CarryFileAnswer);
      else fail(new Error(reply.fault));
    });
  });
}
