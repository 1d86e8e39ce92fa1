import type { Foot } from "../pitch/foot.ts";
import { pitchName } from "../pitch/reading.ts";
import type { Half } from "../stoplist/instrument.ts";
import { partStopText, romanNumeral } from "./stop-text.ts";
import type { Names } from "./voice.ts";

/** What a stop's text can say in the short form. */
export interface ShortStop {
  readonly name: string;
  /** `null`: not written. */
  readonly ranks: number | null;
  readonly pitch: Foot | null;
  readonly half: Half;
}

/** The short form (`Mixtur IV 1 1/3`), or `null` when reading it again would give something else: then keys must say it. */
export function shortForm({ name, ranks, pitch, half }: ShortStop, pedal: boolean, names: Names): string | null {
  const text = [name, ranks === null ? null : romanNumeral(ranks), pitch && pitchName(pitch), half]
    .filter((word) => word !== null)
    .join(" ");
  const parted = partStopText(text, { half: true, pitch: true, ranks: true });
  const counted = parted.ranks !== null && names.countsRanks(pedal)(parted.name, parted.pitch, parted.ranks, null);
  const read =
    counted || parted.ranks === null ? parted : partStopText(text, { half: true, pitch: true, ranks: false });
  const same = read.name === name && read.pitch === pitch && read.ranks === ranks && read.half === half;
  return same && name !== "" ? text : null;
}
