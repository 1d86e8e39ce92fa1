import type { ServerResponse } from "node:http";

/** Milliseconds between signs of life to a window, so that neither side takes the other for gone. */
const PULSE = 15_000;

/** The open windows: each keeps one answer open, on which it is told of changes. */
export class OpenWindows {
  readonly #open = new Set<ServerResponse>();
  readonly #grace: number;
  readonly #onLast: () => void;
  #leaving: NodeJS.Timeout | null = null;
  #closed = false;

  /** @param grace milliseconds after the last window went; a window that is loaded anew comes back within. */
  constructor(grace: number, onLast: () => void) {
    this.#grace = grace;
    this.#onLast = onLast;
  }

  /**
   * Takes a window in and holds its answer open.
   *
   * @param listen begins to listen on its behalf; returns what ends that.
   */
  welcome(response: ServerResponse, listen: (tell: (message: unknown) => void) => () => void): void {
    if (this.#leaving) clearTimeout(this.#leaving);
    this.#leaving = null;
    this.#open.add(response);
    const end = listen((message) => response.write(`data: ${JSON.stringify(message)}\n\n`));
    const pulse = setInterval(() => response.write(":\n\n"), PULSE).unref();
    response.write(":\n\n");
    response.on("close", () => {
      clearInterval(pulse);
      end();
      this.#open.delete(response);
      // Who was sent home is not waited for: that would keep the program from ending.
      if (this.#open.size === 0 && !this.#closed) this.#leaving = setTimeout(this.#onLast, this.#grace);
    });
  }

  /** Sends all home. */
  close(): void {
    this.#closed = true;
    for (const response of this.#open) response.end();
    if (this.#leaving) clearTimeout(this.#leaving);
  }
}
