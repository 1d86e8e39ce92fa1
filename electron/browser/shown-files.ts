import { randomBytes } from "node:crypto";
import type { ExportRequest } from "../../shared-model/host-api.ts";

/** Files kept at most: one being looked at, and a few before it for who reloads. */
const MOST = 4;

/** Finished PDFs, each under an address of its own for as long as the program runs or until newer ones came. */
export class ShownFiles {
  readonly #files = new Map<string, ExportRequest>();

  /** Keeps a file and gives its path: `shown/<word>/<name>`. */
  keep(file: ExportRequest): string {
    const word = randomBytes(16).toString("base64url");
    this.#files.set(word, file);
    const oldest = this.#files.keys().next().value;
    if (this.#files.size > MOST && oldest !== undefined) this.#files.delete(oldest);
    return `shown/${word}/${encodeURIComponent(file.name)}`;
  }

  /** The file under a path that {@link keep} gave, without `shown/`. */
  find(path: string): ExportRequest | null {
    const [word = "", name = ""] = path.split("/");
    const file = this.#files.get(word);
    return file && encodeURIComponent(file.name) === name ? file : null;
  }
}
