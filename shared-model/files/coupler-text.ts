import { folded } from "./nearest.ts";

/** What a coupler's text says, by the names of divisions. */
export interface CouplerText {
  readonly from: string;
  readonly to: string;
  readonly pitch: 16 | 8 | 4;
}

/** The one way in which a coupler is named: `X to Y`, with 4 or 16 behind it for an octave coupler. */
export const couplerName = ({ from, to, pitch }: CouplerText): string =>
  `${from} to ${to}${pitch === 8 ? "" : ` ${pitch}`}`;

/** A coupler read, or the name in it that no division has, or `null` for text that is no coupler. */
export type CouplerReading = { readonly coupler: CouplerText } | { readonly unknown: string } | null;

/** Reads `X to Y`, `X to Y 4`, `X to Y 16`; case and accents do not count, and divisions may have `to` or a number in their names. */
export function readCouplerText(text: string, divisions: readonly string[]): CouplerReading {
  const named = (name: string): string | undefined => divisions.find((division) => folded(division) === folded(name));
  let unknown: string | null = null;
  for (const joint of text.matchAll(/\s+to\s+/gi)) {
    const left = text.slice(0, joint.index).trim();
    const right = text.slice(joint.index + joint[0].length).trim();
    const end = /^(.*\S)\s+(16|8|4)['’′]?$/.exec(right);
    const from = named(left);
    const plain = named(right);
    const shifted = end ? named(end[1] as string) : undefined;
    const to = plain ?? shifted;
    if (from !== undefined && to !== undefined) {
      const pitch = plain === undefined && end ? (Number(end[2]) as 16 | 8 | 4) : 8;
      return { coupler: { from, to, pitch } };
    }
    unknown ??= from === undefined ? left : (end?.[1] ?? right);
  }
  return unknown === null ? null : { unknown };
}
