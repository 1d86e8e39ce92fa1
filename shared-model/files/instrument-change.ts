import type { Compass } from "../pitch/key.ts";
import type { Brightness, ConsoleAids, ConsoleBuild, Room, Strength } from "../stoplist/instrument.ts";
import type { VisitTopic } from "../stoplist/visit-topic.ts";
import type { CouplerText } from "./coupler-text.ts";
import type { YamlValue } from "./yaml-words.ts";

/** A change to an instrument file. Stops are named by their ids, divisions and couplers by their names. */
export type InstrumentEdit =
  | { readonly edit: "rename-stop"; readonly stop: string; readonly name: string }
  | { readonly edit: "rename-division"; readonly division: string; readonly name: string }
  /** `note`: in a few words what is wrong with it. */
  | { readonly edit: "mark-off"; readonly stop: string; readonly note: string | null }
  | { readonly edit: "mark-on"; readonly stop: string }
  /** `null`: back to what the glossary says. */
  | { readonly edit: "set-strength"; readonly stop: string; readonly strength: Strength | null }
  /** `null`: back to what is usual for such a stop. */
  | { readonly edit: "set-brightness"; readonly stop: string; readonly brightness: Brightness | null }
  /** `null`: nobody has said; a medium room is reckoned with. */
  | { readonly edit: "set-room"; readonly room: Room | null }
  /** `stop` in either form of the file; `at` counts from 0, the end when left out. */
  | { readonly edit: "add-stop"; readonly division: string; readonly stop: YamlValue; readonly at?: number }
  | { readonly edit: "remove-stop"; readonly stop: string }
  /** `at`: its place among the stops of the division, itself not counted. */
  | { readonly edit: "move-stop"; readonly stop: string; readonly division: string; readonly at: number }
  /** True, false, or the name of a box. */
  | { readonly edit: "set-enclosed"; readonly division: string; readonly box: boolean | string }
  | { readonly edit: "set-compass"; readonly division: string; readonly compass: Compass }
  | {
      readonly edit: "add-coupler";
      readonly coupler: CouplerText;
      readonly fixed?: boolean;
      readonly through?: boolean;
    }
  | { readonly edit: "remove-coupler"; readonly coupler: string }
  | { readonly edit: "set-name"; readonly name: string }
  /** Divisions, or `all`. */
  | { readonly edit: "set-tremulants"; readonly tremulants: readonly string[] }
  /** The stop has no pipes of its own: `lender` is the id of the one whose pipes it draws, `null` if it has its own. */
  | { readonly edit: "set-same-as"; readonly stop: string; readonly lender: string | null }
  | { readonly edit: "set-aids"; readonly aids: ConsoleAids }
  /** On which side of the player the knobs of a division stand; `null`: nobody has said. */
  | { readonly edit: "set-side"; readonly division: string; readonly side: "left" | "right" | null }
  /** How stops are moved; `null`: nobody has said. */
  | { readonly edit: "set-action"; readonly action: ConsoleBuild["action"] }
  /** Hertz of A4, 370 to 500. */
  | { readonly edit: "set-pitch"; readonly a4: number }
  /** `null`, or nothing but blanks: not answered. */
  | { readonly edit: "set-visit"; readonly topic: VisitTopic; readonly answer: string | null };
