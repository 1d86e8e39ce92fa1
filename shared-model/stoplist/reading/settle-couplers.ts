import { type Coupled, divisionsMeant, type PrintedCoupler } from "./couplers.ts";
import type { Questions } from "./drafts.ts";
import type { Reading } from "./reading.ts";

const ROMANS = ["I", "II", "III", "IV", "V", "VI", "VII"];

type ReadCoupler = Reading["couplers"][number];

/** Which end of a coupler written with a sign (`II/I`, `HW+RW`) is played: the second as a rule, the first in some lists. */
type Order = "giver-first" | "receiver-first" | null;

/** The keyboard that others are coupled to when nothing else is said. Common practice. */
function mainOf(manuals: readonly Coupled[]): Coupled | null {
  const numbered = manuals.filter((one) => one.keyboard !== null);
  const great = manuals.find((one) => one.role === "main");
  if (great) return great;
  if (numbered.length === manuals.length && manuals.length > 0) {
    return manuals.reduce((low, one) => ((one.keyboard as number) < (low.keyboard as number) ? one : low));
  }
  return manuals[0] ?? null;
}

/** Couplers by the names of the divisions, with a question for each end that the list leaves open. */
export function settledCouplers(
  printed: readonly PrintedCoupler[],
  divisions: readonly Coupled[],
  questions: Questions,
): ReadCoupler[] {
  const manuals = divisions.filter((one) => one.kind === "manual");
  const pedal = divisions.find((one) => one.kind === "pedal") ?? null;
  const main = mainOf(manuals);
  const couplers: ReadCoupler[] = [];
  /** The first coupler that counts keyboards which the list does not number. */
  let counted: PrintedCoupler | null = null;
  const add = (from: Coupled, to: Coupled, pitches: readonly (16 | 8 | 4)[]): void => {
    for (const pitch of pitches) {
      if (from === to && pitch === 8) continue;
      if (!couplers.some((one) => one.from === from.name && one.to === to.name && one.pitch === pitch))
        couplers.push({ from: from.name, to: to.name, pitch });
    }
  };
  /** The one division meant; otherwise asks and gives the best answer or none. */
  const meant = (words: string, coupler: PrintedCoupler): Coupled | null => {
    const found = divisionsMeant(words, divisions);
    const numeral = /^(?:[IV]{1,3}|[1-7])\.?$/.test(words.trim());
    if (found.length === 1 && numeral && found[0]?.keyboard === null && manuals.length > 1) {
      counted ??= coupler;
    }
    if (found.length !== 1) {
      questions.ask({
        kind: "left-out",
        line: coupler.line,
        text:
          found.length > 1
            ? `The coupler "${coupler.text}" is left out, because ${words} can be more than one division; which is it?`
            : `The coupler "${coupler.text}" is left out, because this list has no ${words}; which division is that?`,
        about: coupler.text,
        choices: (found.length > 1 ? found : divisions).map((one) => one.name),
      });
    }
    return found.length === 1 ? (found[0] ?? null) : null;
  };
  const isPedal = (words: string | null): boolean =>
    words !== null &&
    pedal !== null &&
    divisionsMeant(words, divisions).every((one) => one === pedal) &&
    divisionsMeant(words, divisions).length > 0;
  const orders = new Map<string, Order>();
  for (const coupler of printed) {
    if (coupler.by !== "/" && coupler.by !== "-" && coupler.by !== "+") continue;
    if (isPedal(coupler.first) && !isPedal(coupler.second))
      orders.set(coupler.by, orders.get(coupler.by) ?? "receiver-first");
    if (isPedal(coupler.second) && !isPedal(coupler.first)) orders.set(coupler.by, "giver-first");
  }
  for (const coupler of printed) {
    switch (coupler.by) {
      case "pedal": {
        if (!pedal) {
          questions.ask({
            kind: "left-out",
            line: coupler.line,
            text: `The coupler "${coupler.text}" is left out: it goes to a pedal, and the list has none.`,
            about: coupler.text,
          });
          break;
        }
        const from = coupler.first === null ? main : meant(coupler.first, coupler);
        if (from) add(from, pedal, coupler.pitches);
        if (coupler.first === null && manuals.length > 2) {
          questions.ask({
            kind: "coupler-to-pedal",
            line: coupler.line,
            text: `The coupler "${coupler.text}" does not say which keyboard it brings to the pedal; it is taken as ${from?.name ?? "none"}. Which is it?`,
            about: coupler.text,
            choices: manuals.map((one) => one.name),
          });
        }
        break;
      }
      case "manuals": {
        const others = manuals.filter((one) => one !== main);
        const [other] = others;
        if (main && other && others.length === 1) add(other, main, coupler.pitches);
        else if (manuals.length === 1 && main && pedal) add(main, pedal, coupler.pitches);
        else {
          questions.ask({
            kind: "coupler-ends",
            line: coupler.line,
            text:
              manuals.length < 2
                ? `The coupler "${coupler.text}" is left out: the list has no second keyboard to couple.`
                : `The coupler "${coupler.text}" is left out, because it does not say which keyboards it joins; which are they?`,
            about: coupler.text,
            choices: others.map((one) => `${one.name} to ${main?.name ?? ""}`),
          });
        }
        break;
      }
      case "counted": {
        // As many as there can be: every organist knows which. Common practice.
        // "3 Koppeln" over a list of them is its title.
        if (coupler.second === null && printed.some((one) => one.by !== "counted")) break;
        const others = coupler.second === "pedal" ? [] : manuals.filter((one) => one !== main);
        const usual = others.length + (pedal ? manuals.length : 0);
        if (main && coupler.count === usual) {
          for (const other of others) add(other, main, coupler.pitches);
          if (pedal) for (const manual of manuals) add(manual, pedal, coupler.pitches);
        } else
          questions.ask({
            kind: "left-out",
            line: coupler.line,
            text: `"${coupler.text}" does not say what they couple, so they are left out; which are they?`,
            about: coupler.text,
          });
        break;
      }
      case "self": {
        const own = meant(coupler.first as string, coupler);
        if (own) add(own, own, coupler.pitches);
        break;
      }
      default: {
        const first = meant(coupler.first as string, coupler);
        const second = meant(coupler.second as string, coupler);
        if (!first || !second) break;
        const [from, to] = directed(coupler, first, second);
        add(from, to, coupler.pitches);
      }
    }
  }

  function directed(coupler: PrintedCoupler, first: Coupled, second: Coupled): readonly [Coupled, Coupled] {
    if (coupler.by === "words") return [first, second];
    if (first === pedal) return [second, first];
    if (second === pedal) return [first, second];
    const order = orders.get(coupler.by) ?? null;
    if (order === "receiver-first") return [second, first];
    if (order === "giver-first" || coupler.by === "/") return [first, second];
    if (second === main) return [first, second];
    const numbers = first.keyboard !== null && second.keyboard !== null ? first.keyboard - second.keyboard : 0;
    if (first !== main && numbers >= 0) return [first, second];
    questions.ask({
      kind: "coupler-ends",
      line: coupler.line,
      text: `The coupler "${coupler.text}" does not say which keyboard plays the other; it is taken as ${second.name} to ${first.name}. Is that right?`,
      about: coupler.text,
      choices: [`${second.name} to ${first.name}`, `${first.name} to ${second.name}`],
    });
    return [second, first];
  }
  const first = counted as PrintedCoupler | null;
  if (first) {
    const order = manuals.map((one, index) => `${ROMANS[index] ?? index + 1} ${one.name}`).join(", ");
    questions.ask({
      kind: "order",
      line: first.line,
      text: `The coupler "${first.text}" counts keyboards that the list does not number; they are taken in printed order (${order}). Is that right?`,
      about: first.text,
      choices: ["yes", "no"],
    });
  }
  return couplers;
}
