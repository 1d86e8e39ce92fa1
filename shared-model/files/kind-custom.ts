import type { Foot } from "../pitch/foot.ts";
import { harmonicOf } from "../pitch/harmonics.ts";
import type { Strength } from "../stoplist/instrument.ts";
import type { Family, Kind } from "../stoplist/kind.ts";
import { isOctave } from "./pitch-text.ts";

/** Family and strength of a stop of which only the kind is known. Common practice. */
export const CUSTOM_OF_KIND: Readonly<Record<Kind, { readonly family: Family; readonly strength: Strength }>> = {
  principal: { family: "principal", strength: 3 },
  "stopped-flute": { family: "flute-stopped", strength: 2 },
  "open-flute": { family: "flute-open", strength: 2 },
  "harmonic-flute": { family: "flute-open", strength: 3 },
  string: { family: "string", strength: 2 },
  "soft-string": { family: "string", strength: 1 },
  quintadena: { family: "flute-stopped", strength: 2 },
  celeste: { family: "celeste", strength: 1 },
  twelfth: { family: "mutation", strength: 3 },
  nasard: { family: "mutation", strength: 2 },
  quint: { family: "mutation", strength: 3 },
  tierce: { family: "mutation", strength: 2 },
  larigot: { family: "mutation", strength: 2 },
  septieme: { family: "mutation", strength: 2 },
  none: { family: "mutation", strength: 2 },
  mixture: { family: "mixture", strength: 4 },
  cymbal: { family: "mixture", strength: 4 },
  rauschpfeife: { family: "mixture", strength: 3 },
  sesquialtera: { family: "mixture", strength: 3 },
  tertian: { family: "mixture", strength: 3 },
  cornet: { family: "cornet", strength: 4 },
  trumpet: { family: "reed-chorus", strength: 4 },
  "horizontal-trumpet": { family: "reed-chorus", strength: 5 },
  tuba: { family: "reed-chorus", strength: 5 },
  cornett: { family: "reed-solo", strength: 3 },
  oboe: { family: "reed-solo", strength: 2 },
  clarinet: { family: "reed-solo", strength: 2 },
  bassoon: { family: "reed-solo", strength: 3 },
  horn: { family: "reed-solo", strength: 3 },
  cromorne: { family: "reed-short", strength: 3 },
  dulcian: { family: "reed-short", strength: 2 },
  regal: { family: "reed-short", strength: 2 },
  schalmei: { family: "reed-short", strength: 3 },
  "voix-humaine": { family: "reed-short", strength: 2 },
  musette: { family: "reed-short", strength: 2 },
  percussion: { family: "percussion", strength: 3 },
  effect: { family: "effect", strength: 3 },
};

/**
 * What a rank of one kind serves as when it is drawn at a pitch: a stopped flute drawn at 2 2/3' is a nasard, a principal
 * there a twelfth. Octaves leave the kind as it is. Common practice of unit organs.
 */
export function kindAtPitch(kind: Kind, pitch: Foot): Kind {
  if (isOctave(pitch)) return kind;
  let odd = harmonicOf(pitch).over;
  while (odd % 2 === 0) odd /= 2;
  if (odd === 5) return "tierce";
  if (odd === 7) return "septieme";
  if (odd === 9) return "none";
  if (odd !== 3) return kind;
  const { over, under } = harmonicOf(pitch);
  if (under !== 1) return "quint";
  if (over === 3) return kind === "principal" ? "twelfth" : "nasard";
  return kind === "principal" ? "quint" : "larigot";
}
