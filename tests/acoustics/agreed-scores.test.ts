import { expect, test } from "vitest";
import { balanceIn } from "./listening.ts";

/*
 * What the trade agrees on, as scores from 0 to 1 that our measures give by the formulas and within the bands of the
 * model's specification. Bands are set on its own default levels, which differ from ours where our glossary tells more
 * kinds of stop apart: a Salicional is the specification's string, a Gambe is 4 dB louder.
 */

const ramp = (value: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (value - from) / (to - from)));
/** How far a difference of colour makes two persons of two sounds, in dB. */
const contrast = (colour: number): number => 0.3 + 0.7 * ramp(colour, 2, 9);

const PRINCIPALS = "Principal 8, Oktave 4, Superoktave 2";

function soloScore(tune: string, chords: string, box?: "closed"): number {
  const { prominence, margin, colour, lead, otherKept } = balanceIn({
    organ: `Solo: ${tune} | Choir [box]: ${chords}`,
    plays: "melody on Solo, accompaniment on Choir",
    boxes: box ? { Choir: box } : {},
  });
  const heard = ramp(margin / 100, 3, 13);
  const leads = ramp(prominence / 100 + 1.2 * Math.min(10, colour / 100), -6, 14);
  const kept = (1 - ramp(lead / 100, 10, 17.5)) * ramp(otherKept / 100, 0.05, 0.15);
  return Math.sqrt(Math.min(heard, leads) * kept) * contrast(colour / 100) ** 0.25;
}

test.each([
  ["1", "Oboe 8", "Gedackt 8", 0.8, 1],
  ["2", "Gedackt 8", PRINCIPALS, 0, 0.2],
  ["3", "Hohlflöte 8, Waldflöte 4, Nasat 2 2/3", "Gedackt 8", 0.8, 1],
  ["4", "Principal 8, Oktave 4", "Principal 8, Oktave 4", 0, 0.2],
  ["5", "Cornet V", "Salicional 8", 0.7, 1],
  ["5 turned round", "Salicional 8", "Cornet V", 0, 0.2],
  ["6", "Krummhorn 8", "Rohrflöte 8", 0.8, 1],
  ["6c, rather strong", "Trompete 8", "Gedackt 8", 0.3, 0.65],
  ["6d, drowns", `${PRINCIPALS}, Mixtur IV, Trompete 8`, "Gedackt 8", 0, 0.4],
  ["6f, good", "Trompete 8", "Principal 8, Oktave 4", 0.8, 1],
  ["6h, weak", "Oboe 8", "Principal 8, Oktave 4", 0.2, 0.65],
])("solo %s: %s over %s", (_, tune, chords, least, most) => {
  const score = soloScore(tune as string, chords as string);
  expect(score).toBeGreaterThanOrEqual(least as number);
  expect(score).toBeLessThanOrEqual(most as number);
});

test("solo 12: an open flute over a string is clear with the string's box shut, and less so with it open", () => {
  const [shut, open] = [soloScore("Hohlflöte 8", "Salicional 8", "closed"), soloScore("Hohlflöte 8", "Salicional 8")];
  expect(shut).toBeGreaterThan(0.8);
  expect(open).toBeLessThan(shut);
});

function trioScore(one: string, other: string): { readonly score: number; readonly lead: number } {
  const { lead, kept, otherKept, colour } = balanceIn({
    organ: `Great: ${one} | Swell: ${other}`,
    plays: "voice on Great, left-hand voice on Swell",
  });
  const equal = 1 - ramp(Math.abs(lead / 100), 4, 12);
  const both = ramp(Math.min(kept, otherKept) / 100, 0.08, 0.22);
  return { score: Math.min(equal, both) * contrast(colour / 100), lead: lead / 100 };
}

test.each([
  ["7", "Principal 8, Oktave 4", "Hohlflöte 8, Waldflöte 4, Nasat 2 2/3", 0.5, 1],
  ["7b", "Krummhorn 8", "Hohlflöte 8, Waldflöte 4, Waldflöte 2", 0.8, 1],
  ["7c", "Trompete 8", "Gedackt 8", 0, 0.2],
])("trio %s: %s and %s", (_, one, other, least, most) => {
  const { score, lead } = trioScore(one as string, other as string);
  expect(score).toBeGreaterThanOrEqual(least as number);
  expect(score).toBeLessThanOrEqual(most as number);
  if (least === 0.5) expect(Math.abs(lead)).toBeLessThan(6);
});

function pedalScore(bass: string, hands: string, role: "plenum" | "accompaniment"): number {
  const { lead, margin, otherKept } = balanceIn({
    organ: `Great: ${hands} | Pedal: ${bass}`,
    plays: `bass on Pedal, ${role} on Great`,
  });
  const carries = Math.min(ramp(margin / 100, 3, 10), ramp(lead / 100, -34, -24));
  const coversNot = Math.min(1 - ramp(lead / 100, 0, 8), ramp(otherKept / 100, 0.2, 0.5));
  return Math.min(carries, coversNot);
}

test.each([
  ["8, right", "Subbass 16, Gedackt 8", "Hohlflöte 8, Gedackt 8", "accompaniment", 0.8, 1],
  ["9, heavy", "Principal 16, Posaune 16", "Gedackt 8", "accompaniment", 0, 0.2],
  ["9b, thin", "Subbass 16", `${PRINCIPALS}, Mixtur IV, Trompete 8`, "plenum", 0, 0.2],
  ["9c, right", "Principal 16, Oktave 8, Oktave 4, Posaune 16", `${PRINCIPALS}, Mixtur IV`, "plenum", 0.8, 1],
] as const)("pedal %s: %s under %s", (_, bass, hands, role, least, most) => {
  const score = pedalScore(bass, hands, role);
  expect(score).toBeGreaterThanOrEqual(least);
  expect(score).toBeLessThanOrEqual(most);
});
