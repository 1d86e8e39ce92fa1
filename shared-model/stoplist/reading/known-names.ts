import type { Foot } from "../../pitch/foot.ts";
import { type GlossaryEntry, isStopName, nearestNames, understandName } from "../glossary/glossary.ts";
import { foldedSpelling } from "../glossary/spelling.ts";

/** What the glossary makes of a name: known, like a known one, or neither. */
export type Acquaintance = "known" | "like" | "strange";

/** Names of compounds in any spelling that this reading needs before the glossary is asked. Common practice. */
const COMPOUND =
  /mixt|mikst|scharf|scharp|scherp|z[iy]mb|c[iy]mb|cimb|furn|fourn|plein ?jeu|s[ei][sx]?[xkq]+u?i?[au]lt|sesq|corn[eé]tt?[aeo]?(?!in)\b|k?c?ornett?\b|corneta|raus[ch]|tert[sz]?ia+n|ter[tz]ian|tertzian|lleno|ripien|compuest|hintersatz|harmonia aeth|progress|grave mixture|acuta|cymbel|tiercel|nazardos|carillon|aliquot|none-?kornett|jeu de tierce|locatio|petite? fourn|rauschquint|doublet(?=te? i)|septerz|harmonics|sharp mixture|charivari|forniture|schar?ff/i;

/** Names are looked up in sentences, too; beyond this many strangers in one text no likeness is searched. */
const MOST_SEARCHES = 300;

const isPrincipal = (name: string): boolean =>
  /^(?:pr[aä]estant|prestant|princ|prinz|montre|open diap|flautado|diapason)/i.test(name);

function distance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] as number) + 1, (next[j - 1] as number) + 1, (row[j - 1] as number) + cost));
    }
    row = next;
  }
  return row[b.length] as number;
}

/** Where a name stands: enough for the glossary to part things of one name. */
export interface StopPlace {
  readonly pedal: boolean;
  readonly pitch: Foot | null;
  readonly ranks: number | null;
  readonly base: Foot | null;
}

/** What the glossary knows of a name, remembered through one reading. */
export class KnownNames {
  readonly #seen = new Map<string, Acquaintance>();
  readonly #nearest = new Map<string, readonly string[]>();
  #searches = 0;

  /** `known` also with the usual qualifiers; `like` when one or two letters away, or with other words behind. */
  acquaintance(name: string): Acquaintance {
    const text = name.trim();
    const seen = this.#seen.get(text);
    if (seen) return seen;
    const found = this.#meet(text);
    this.#seen.set(text, found);
    return found;
  }

  /** Whether the glossary knows the name, qualifiers taken off. */
  knows(name: string): boolean {
    return this.acquaintance(name) === "known";
  }

  /** Whether the very name is a stop's, with nothing taken off. */
  isPlainName(name: string): boolean {
    return isStopName(name);
  }

  #meet(text: string): Acquaintance {
    if (text.length < 2 || text.length > 60 || !/\p{L}{2}/u.test(text)) return "strange";
    if (isStopName(text)) return "known";
    const bare =
      text.split(/\s+/).length <= 6 ? understandName(text, { pedal: false, pitch: null, ranks: null }) : null;
    if (bare && (bare.sure || bare.why === "ambiguous")) return "known";
    // A known name and a word or two more (`Docena clara`).
    const [first = "", ...more] = text.split(/\s+/);
    if (first.length >= 5 && more.length > 0 && more.length <= 2 && /^\p{Lu}/u.test(first) && isStopName(first))
      return "like";
    const folded = foldedSpelling(text);
    const most = folded.length >= 9 ? 2 : folded.length >= 5 ? 1 : 0;
    if (most === 0) return "strange";
    return this.nearest(text).some((near) => distance(folded, foldedSpelling(near), most) <= most) ? "like" : "strange";
  }

  /** Known names nearest to the text, best first, at most three; none any more when the text holds too many strangers. */
  nearest(text: string): readonly string[] {
    const seen = this.#nearest.get(text);
    if (seen) return seen;
    if (this.#searches >= MOST_SEARCHES) return [];
    this.#searches += 1;
    const found = nearestNames(text.slice(0, 40), 3);
    this.#nearest.set(text, found);
    return found;
  }

  /** The entry in its place, the first of several that share a name; `null` for a stranger. */
  entry(
    name: string,
    place: StopPlace,
  ): { readonly entry: GlossaryEntry; readonly sure: boolean; readonly pitch: Foot | null } | null {
    const asked = {
      pedal: place.pedal,
      pitch: place.pitch,
      ranks: place.ranks,
      ...(place.base ? { base: place.base } : {}),
    };
    const known = understandName(name, asked);
    if (known.sure) return { entry: known.entry, sure: true, pitch: known.pitch };
    const [first] = known.choices;
    return known.why === "ambiguous" && first ? { entry: first, sure: false, pitch: null } : null;
  }

  /** Every entry that the name can mean in its place. */
  entries(name: string, place: StopPlace): readonly GlossaryEntry[] {
    const known = understandName(name, { pedal: place.pedal, pitch: place.pitch, ranks: place.ranks });
    if (known.sure) return [known.entry];
    return known.why === "ambiguous" ? known.choices : [];
  }

  /** Whether a number without mark behind the name is its ranks rather than its length. */
  isCompound(name: string, pedal = false): boolean {
    if (isPrincipal(name)) return false;
    const known = this.entry(name, { pedal, pitch: null, ranks: pedal ? null : 3, base: null });
    if (known?.sure) return known.entry.family === "mixture" || known.entry.family === "cornet";
    return COMPOUND.test(name);
  }
}
