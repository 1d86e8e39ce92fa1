import { footText } from "../../pitch/foot.ts";
import type { Reading } from "./reading.ts";

/** A stop in the JSON of `read`. */
export interface StopJson {
  readonly name: string;
  /** What sounds, as rational text (`8/3`). */
  readonly pitch: string | null;
  /** What stands in print. */
  readonly printed: string | null;
  readonly ranks: number | null;
  readonly half: "bass" | "treble" | "both" | null;
  readonly line: number;
}

/** The JSON of `read`: the contract of the command line, nothing beside it. */
export interface ReadingJson {
  readonly name: string | null;
  readonly divisions: readonly {
    readonly name: string | null;
    readonly kind: "manual" | "pedal";
    readonly keyboard: number | null;
    readonly stops: readonly StopJson[];
  }[];
  readonly couplers: readonly { readonly from: string; readonly to: string; readonly pitch: 16 | 8 | 4 }[];
  readonly tremulants: readonly string[];
  readonly questions: readonly { readonly line: number; readonly text: string; readonly about: string }[];
}

/** A reading as the JSON of `read` prints it. Compasses, remarks, borrowing and the choices of questions are left out. */
export function readingJson(reading: Reading): ReadingJson {
  return {
    name: reading.name,
    divisions: reading.divisions.map(({ name, kind, keyboard, stops }) => ({
      name,
      kind,
      keyboard,
      stops: stops.map((stop) => ({
        name: stop.name,
        pitch: stop.pitch ? footText(stop.pitch) : null,
        printed: stop.printed,
        ranks: stop.ranks,
        half: stop.half,
        line: stop.line,
      })),
    })),
    couplers: reading.couplers.map(({ from, to, pitch }) => ({ from, to, pitch })),
    tremulants: [...reading.tremulants],
    questions: reading.questions.map(({ line, text, about }) => ({ line, text, about })),
  };
}
