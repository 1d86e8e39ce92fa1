import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { readPieceFile } from "../../shared-model/files/piece-file.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { Piece } from "../../shared-model/music/piece.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";

/** A mechanical organ of two manuals: Great and Positive at the right, Pedal at the left. */
export const TWO_MANUALS = instrument(`
  - {name: Great, kind: manual, keyboard: 1, stops: [Open Diapason 8, Stopped Diapason 8, Principal 4, Fifteenth 2, Mixture III 2]}
  - {name: Positive, kind: manual, keyboard: 2, stops: [Gedackt 8, Flute 4, Nazard 2 2/3, Oboe 8]}
  - {name: Pedal, kind: pedal, stops: [Bourdon 16, Bass Flute 8]}
couplers: [Positive to Great, Great to Pedal]
`);

/** An organ from its `divisions:` on. */
export function instrument(rest: string): Instrument {
  const { instrument: found, troubles } = readInstrumentFile(
    `registrant: instrument/1\nname: St. Probe\ndivisions:${rest}`,
    "organ.yaml",
  );
  if (!found) throw new Error(troubles.map(troubleLine).join("\n"));
  return found;
}

/** A piece from its keys. */
export function piece(text: string, organ: Instrument): Piece {
  const { piece: found, troubles } = readPieceFile(`registrant: piece/1\n${text}`, "piece.yaml", organ);
  if (!found) throw new Error(troubles.map(troubleLine).join("\n"));
  return found;
}
