import type { OrganFacts } from "../../shared-model/stoplist/organ-facts.ts";
import { numberWord } from "./typeset.tsx";

/** `two keyboards and pedal, 1897`. */
export function organWords({ manuals, pedal, year }: OrganFacts): string {
  const keyboards = `${numberWord(manuals)} keyboard${manuals === 1 ? "" : "s"}`;
  const feet = { stops: " and pedal", "pull-down": ", a pedal that pulls down", none: "" }[pedal];
  return `${keyboards}${feet}${year === null ? "" : `, ${year}`}`;
}
