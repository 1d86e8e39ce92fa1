/** What the worker sends back. */
type Reply<Answer> =
  | { readonly number: number; readonly answer: Answer }
  | { readonly number: number; readonly fault: string };

/** Answers kept for turning back to a section. */
const KEPT = 24;

/**
 * Has something reckoned in a worker. A worker that is busy with something no longer wanted is ended and another is
 * begun: what was asked before never makes the next wait.
 */
export class Reckoner<Ask extends object, Answer> {
  #worker: Worker | null = null;
  #number = 0;
  #done: ((reply: Reply<Answer>) => void) | null = null;
  readonly #known = new Map<string, Answer>();
  readonly #make: () => Worker;

  /** @param make begins a worker that takes `{ number, ask }` and sends `{ number, answer }` or `{ number, fault }`. */
  constructor(make: () => Worker) {
    this.#make = make;
  }

  /** What is known already, without waiting. */
  known(key: string): Answer | null {
    return this.#known.get(key) ?? null;
  }

  /**
   * Begins to reckon. `done` is told once, unless {@link stop} or another question comes first.
   *
   * @param key stands for the question: the same key has the same answer.
   */
  ask(key: string, ask: Ask, done: (reply: { readonly answer: Answer } | { readonly fault: string }) => void): void {
    this.stop();
    this.#number += 1;
    this.#done = (reply) => {
      this.#done = null;
      if ("answer" in reply) {
        this.#known.set(key, reply.answer);
        const [oldest] = this.#known.keys();
        if (this.#known.size > KEPT && oldest !== undefined) this.#known.delete(oldest);
      }
      done(reply);
    };
    this.#open().postMessage({ number: this.#number, ask });
  }

  /** Gives up what is being reckoned. */
  stop(): void {
    if (!this.#done) return;
    this.#done = null;
    this.#worker?.terminate();
    this.#worker = null;
  }

  #open(): Worker {
    if (this.#worker) return this.#worker;
    const worker = this.#make();
    worker.addEventListener("message", ({ data }: MessageEvent<Reply<Answer>>) => {
      if (data.number === this.#number) this.#done?.(data);
    });
    worker.addEventListener("error", (event) => {
      this.#worker = null;
      this.#done?.({ number: this.#number, fault: event.message });
    });
    this.#worker = worker;
    return worker;
  }
}
