import type { PartContext } from "./rule.ts";

const LADDERS: ReadonlySet<string> = new Set(["crescendo", "terraced-crescendo"]);
/** Whether the section is one crescendo, answered by ordered steps. */
export const isLadder = (context: PartContext): boolean =>
  context.section.texture !== null && LADDERS.has(context.section.texture);
/** Whether the section is a verse of a hymn that people sing, or what introduces it. */
export const isHymn = (context: PartContext): boolean => context.section.texture?.startsWith("hymn-") === true;
/** Whether the section is one of a set of variations. */
export const isVariation = (context: PartContext): boolean => context.section.texture === "partita-variation";
