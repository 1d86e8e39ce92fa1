import type { Compass } from "../../shared-model/pitch/key.ts";
import type { ConsoleAids, Coupler, Division } from "../../shared-model/stoplist/instrument.ts";
import type { Manner } from "./random-voices.ts";
import type { Draw } from "./seeded-random.ts";

/** A division before it has stops. */
export interface Place {
  readonly name: string;
  readonly kind: Division["kind"];
  readonly keyboard: number | null;
  readonly compass: Compass;
  readonly box: string | null;
  readonly louder: number;
}

const MANUAL_NAMES: Readonly<Record<Manner, readonly string[]>> = {
  baroque: ["Hauptwerk", "Rückpositiv", "Oberwerk", "Brustwerk", "Echo", "Unterwerk", "Kronwerk"],
  romantic: ["Great", "Swell", "Choir", "Solo", "Echo", "Bombarde", "String"],
  unit: ["Great", "Swell", "Choir", "Solo", "Echo", "Bombarde", "String"],
  divided: ["Organo", "Cadireta", "Eco", "Recitativo", "Coro", "Sopra", "Sotto"],
  poor: ["Manual", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh"],
};

function compassOf(draw: Draw, manner: Manner, pedal: boolean): Compass {
  const old = manner === "baroque" || manner === "divided" || manner === "poor";
  const missing = old && draw.chance(0.3) ? draw.one([[37], [37, 39, 42, 44], [37, 39]]) : [];
  if (pedal) return { low: 36, high: draw.one(old ? [48, 57, 60, 62, 65] : [65, 67]), missing: missing.slice(0, 2) };
  if (manner === "poor" && draw.chance(0.1)) return { low: 31, high: 88, missing: [32] };
  return { low: 36, high: draw.one(old ? [81, 84, 86, 89] : [91, 93, 96]), missing };
}

export function places(draw: Draw, manner: Manner, manuals: number, pedal: boolean, stops: number): Place[] {
  const compass = compassOf(draw, manner, false);
  const names = MANUAL_NAMES[manner];
  const boxed = manner === "romantic" || manner === "unit" || draw.chance(0.1);
  const shared = draw.chance(0.3);
  const list: Place[] = [];
  for (let index = 0; index < manuals; index += 1) {
    const name = names[index] as string;
    const small = index >= 2;
    const short = small && manner !== "romantic" && manner !== "unit" && draw.chance(0.3);
    const box = boxed && index > 0 && draw.chance(index === 1 ? 0.9 : 0.5) ? (shared ? "box" : name) : null;
    list.push({
      name,
      kind: "manual",
      keyboard: index + 1,
      box,
      louder: name === "Echo" ? -1 : name === "Solo" ? 1 : 0,
      compass: short ? { low: draw.one([48, 55, 60]), high: compass.high, missing: [] } : compass,
    });
  }
  if (manuals >= 3 && stops > 20 && draw.chance(0.25)) {
    const box = boxed ? "Fernwerk" : null;
    list.push({ name: "Fernwerk", kind: "floating", keyboard: null, box, louder: -1, compass });
  }
  if (pedal) {
    const pedalCompass = compassOf(draw, manner, true);
    list.push({ name: "Pedal", kind: "pedal", keyboard: null, box: null, louder: 0, compass: pedalCompass });
  }
  return list;
}

export function couplersFor(
  draw: Draw,
  manner: Manner,
  list: readonly Place[],
  bareDivisions: ReadonlySet<string>,
): Coupler[] {
  const couplers: Coupler[] = [];
  const through = draw.chance(0.2);
  const late = manner === "romantic" || manner === "unit";
  const add = (from: string, to: string, pitch: 16 | 8 | 4, fixed = false): void => {
    const name = `${from} to ${to}${pitch === 8 ? "" : ` ${pitch}`}`;
    if (couplers.some((coupler) => coupler.name === name)) return;
    couplers.push({ name, from, to, pitch, through: from !== to && (through || draw.chance(0.05)), fixed });
  };
  const manuals = list.filter((place) => place.kind === "manual");
  for (const place of list) {
    for (const other of manuals) {
      if (place === other) {
        if (late && draw.chance(0.2)) add(place.name, place.name, draw.one([4, 16]));
      } else if (place.kind === "floating") {
        if (draw.chance(0.6)) add(place.name, other.name, 8);
      } else if (place.kind === "pedal") {
        const bare = bareDivisions.has(place.name);
        if (draw.chance(late ? 0.8 : 0.5) || (bare && other === manuals[0]))
          add(other.name, place.name, 8, bare && draw.chance(0.7));
        if (late && draw.chance(0.15)) add(other.name, place.name, 4);
      } else if ((place.keyboard as number) > (other.keyboard as number) || draw.chance(0.05)) {
        if (draw.chance(late ? 0.8 : 0.4)) add(place.name, other.name, 8);
        if (late && draw.chance(0.25)) add(place.name, other.name, draw.one([4, 16]));
      }
    }
  }
  return couplers;
}

export function aidsFor(draw: Draw, late: boolean, names: readonly string[]): ConsoleAids {
  if (!late || draw.chance(0.2)) return { generals: 0, divisionals: {}, levels: 0, crescendoPedal: false, ventils: [] };
  const divisionals = Object.fromEntries(
    names.filter(() => draw.chance(0.6)).map((name) => [name, draw.between(2, 8)]),
  );
  return {
    generals: draw.between(0, 12),
    divisionals,
    levels: draw.between(1, 99),
    crescendoPedal: draw.chance(0.5),
    ventils: names.filter(() => draw.chance(0.15)),
  };
}
