import type { SurveyedTexture, SurveyStep } from "../../shared-model/carry/survey.ts";
import { TRADITIONS, type Tradition } from "../../shared-model/music/texture.ts";
import { texturesOf } from "../../shared-model/music/textures/catalogue.ts";
import type { SurveyAsk } from "./survey-steps.ts";

/** What the worker sends: a texture at a time, then that it is done, or what went wrong. */
type Reply = { readonly step: SurveyStep } | { readonly answer: true } | { readonly fault: string };

/** How the survey of an organ stands. Never changed: each step gives a new one. */
export interface Standing {
  readonly state: "resting" | "looking" | "failed" | "done";
  /** In the order of the catalogue, as far as it has come. */
  readonly surveyed: readonly SurveyedTexture[];
  /** What went wrong, where it failed. */
  readonly fault: string | null;
}

/** How many textures a whole survey looks at. */
export const TEXTURES_IN_ALL: number = TRADITIONS.reduce((sum, each) => sum + texturesOf(each).length, 0);

const NOTHING: Standing = { state: "resting", surveyed: [], fault: null };

/** Organs whose surveys are remembered, for turning back to one. */
const KEPT = 6;

/** Textures of the schools that were looked at to the end: a school that was broken off begins again. */
function wholeSchools(surveyed: readonly SurveyedTexture[]): {
  readonly kept: readonly SurveyedTexture[];
  readonly left: readonly Tradition[];
} {
  const left = TRADITIONS.filter(
    (school) => surveyed.filter(({ tradition }) => tradition === school).length < texturesOf(school).length,
  );
  return { kept: surveyed.filter(({ tradition }) => !left.includes(tradition)), left };
}

/**
 * Has organs surveyed in a worker, one at a time, and remembers what was found: a survey that is stopped, or left for
 * another page, goes on later where it was.
 */
export class Surveyor {
  #worker: Worker | null = null;
  #doing: string | null = null;
  readonly #known = new Map<string, Standing>();
  readonly #listeners = new Set<() => void>();
  readonly #make: () => Worker;

  /** @param make begins a worker that takes a {@link SurveyAsk} and sends a step for each texture. */
  constructor(make: () => Worker) {
    this.#make = make;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** How the survey of the organ stands whose file has this text. */
  standing(organ: string): Standing {
    return this.#known.get(organ) ?? NOTHING;
  }

  /** Begins, or goes on. Nothing is done twice. */
  begin(organ: string): void {
    if (this.#doing === organ) return;
    this.stop();
    const { kept, left } = wholeSchools(this.standing(organ).surveyed);
    if (left.length === 0) return;
    this.#doing = organ;
    this.#tell(organ, { state: "looking", surveyed: kept, fault: null });
    const worker = this.#make();
    this.#worker = worker;
    worker.addEventListener("message", ({ data }: MessageEvent<Reply>) => {
      if (this.#worker === worker) this.#hear(organ, data);
    });
    worker.addEventListener("error", ({ message }) => {
      if (this.#worker === worker) this.#hear(organ, { fault: message });
    });
    const ask: SurveyAsk = { organ, traditions: left };
    worker.postMessage({ number: 0, ask: { wants: "survey", ...ask } });
  }

  /** Breaks off what is being looked at; what was found stays. */
  stop(): void {
    const organ = this.#doing;
    if (organ === null) return;
    this.#end();
    this.#tell(organ, { ...this.standing(organ), state: "resting" });
  }

  #hear(organ: string, reply: Reply): void {
    const now = this.standing(organ);
    if ("step" in reply) {
      this.#tell(organ, { ...now, surveyed: [...now.surveyed, reply.step.surveyed] });
      return;
    }
    this.#end();
    this.#tell(organ, "fault" in reply ? { ...now, state: "failed", fault: reply.fault } : { ...now, state: "done" });
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#doing = null;
  }

  #tell(organ: string, standing: Standing): void {
    this.#known.delete(organ);
    this.#known.set(organ, standing);
    const [oldest] = this.#known.keys();
    if (this.#known.size > KEPT && oldest !== undefined) this.#known.delete(oldest);
    for (const listener of this.#listeners) listener();
  }
}
