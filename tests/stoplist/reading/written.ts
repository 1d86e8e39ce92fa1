import { compassText } from "../../../shared-model/pitch/compass.ts";
import { keyText } from "../../../shared-model/pitch/key.ts";
import { pitchName } from "../../../shared-model/pitch/reading.ts";
import { readStoplist } from "../../../shared-model/stoplist/reading/read-stoplist.ts";
import type { Reading, ReadStop } from "../../../shared-model/stoplist/reading/reading.ts";

const ROMANS = ["0", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"];

function stopText(stop: ReadStop): string {
  const parts = [stop.name];
  if (stop.ranks !== null) parts.push(ROMANS[stop.ranks] ?? String(stop.ranks));
  if (stop.pitch) parts.push(pitchName(stop.pitch));
  if (stop.composition) parts.push(`(${stop.composition.map((foot) => pitchName(foot)).join(" + ")})`);
  if (stop.half) parts.push(stop.half);
  if (stop.from !== null) parts.push(`from ${keyText(stop.from)}`);
  if (stop.row !== null) parts.push(`[${stop.row}]`);
  if (stop.borrowed !== null) parts.push(`<${stop.borrowed}>`);
  if (stop.prepared) parts.push("prepared");
  return parts.join(" ");
}

/**
 * A reading in a notation that an organist can proof-read: a line for each division (`Great II C2-G6 in a box: Open Diapason 8,
 * Mixture IV`; the numeral behind the name is the keyboard, `[A]` behind a stop its row of pipes), the organ's name before, builder and year in brackets behind it; then couplers, tremulants behind `~`, keyboards with a unison off behind `-`, and questions as
 * `? line about`.
 */
export function written(reading: Reading): string {
  const lines = reading.divisions.map((division) => {
    const head = [division.name ?? "-"];
    if (division.kind === "pedal" && !/^(?:p[eé]d|con)/i.test(division.name ?? "")) head.push("(pedal)");
    if (division.keyboard !== null) head.push(ROMANS[division.keyboard] as string);
    if (division.low !== null && division.high !== null)
      head.push(compassText({ low: division.low, high: division.high, missing: division.missing }));
    if (division.enclosed) head.push("in a box");
    return `${head.join(" ")}: ${division.stops.map(stopText).join(", ")}`.trimEnd();
  });
  const made = [reading.builder, reading.year].filter((one) => one !== null).join(", ");
  if (reading.name !== null) lines.unshift(`"${reading.name}"${made === "" ? "" : ` (${made})`}`);
  if (reading.couplers.length > 0)
    lines.push(
      reading.couplers.map(({ from, to, pitch }) => `${from} to ${to}${pitch === 8 ? "" : ` ${pitch}`}`).join("; "),
    );
  if (reading.unisonOff.length > 0) lines.push(`- unison off ${reading.unisonOff.join(", ")}`);
  if (reading.tremulants.length > 0) lines.push(`~ ${reading.tremulants.join(", ")}`);
  for (const { line, about } of reading.questions) lines.push(`? ${line} ${about}`);
  return lines.join("\n");
}

/** Lines of a template without the indentation that the test's own layout gives them. */
export function dedented(text: string): string {
  const lines = text
    .replace(/^\n/, "")
    .replace(/\n\s*$/, "")
    .split("\n");
  const indents = lines.filter((line) => line.trim() !== "").map((line) => line.length - line.trimStart().length);
  const indent = Math.min(...indents);
  return lines.map((line) => line.slice(indent).trimEnd()).join("\n");
}

/** What a list reads as, both in the notation of {@link written}. */
export const read = (list: string): string => written(readStoplist(dedented(list)));
