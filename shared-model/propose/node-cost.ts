import { COSTS } from "../judging/recipe.ts";
import type { Points } from "../rules/rule.ts";
import { type Entry, STANDS_IN } from "./entries.ts";
import type { Node } from "./heard.ts";

/**
 * Writes into `next` what one entry more costs at least, and how it stands to the recipe.
 *
 * @param isFree whether it comes along for nothing.
 * @param isAgain whether something drawn counts for the same item, of which one is asked for.
 */
export function step(node: Node, entry: Entry, isFree: boolean, isAgain: boolean, next: Node): void {
  const { match } = entry;
  next.cost = node.cost;
  next.plain = node.plain;
  next.loyal = node.loyal;
  next.strays = node.strays;
  next.strayItems = node.strayItems;
  next.strayBits = node.strayBits;
  next.strayTwice = node.strayTwice;
  if (isFree) return;
  if (match.status === "asked") {
    if (isAgain) next.cost += COSTS.may;
    return;
  }
  // One that no open item can use has paid for itself already.
  const mayStandIn = match.status === "stray" && (entry.standInItems & ~node.satisfied) !== 0;
  if (match.status === "plain") {
    next.plain += 1;
    if (next.plain > 1) next.cost += match.cost;
  } else if (entry.tremulant === null && !mayStandIn) next.cost += match.cost;
  if (entry.rank === STANDS_IN && mayStandIn) {
    next.strays += 1;
    next.strayItems |= entry.standInItems;
    next.strayBits |= match.standIn;
    next.strayTwice ||= (node.strayBits & match.standIn) !== 0;
  }
  if (match.status === "against" || (match.status === "stray" && entry.standInItems === 0)) next.loyal = false;
}

/**
 * What strays cost that are too many. Each thing not satisfied has one stand-in at most, of so many stops; a stray more than
 * these take doubles one that is there, or stands in for nothing.
 *
 * @param sizes by item: how many stops one stand-in for it takes at most.
 */
export function crowding({ strays, strayItems, strayTwice, satisfied }: Node, sizes: readonly number[]): Points {
  if (strays === 0) return 0;
  const open = strayItems & ~satisfied;
  let room = 0;
  for (let i = 0; i < sizes.length; i++) {
    if (open & (1 << i)) room += sizes[i] as number;
  }
  return (strayTwice ? COSTS.again : COSTS.stray) * Math.max(0, strays - room);
}
