import type { Hands } from "../../shared-model/music/texture.ts";
import type { ProposedPart } from "../registrations/proposed.ts";

const ORDER: readonly Hands[] = ["right", "left", "both", "feet"];

/** By stop: whose hands or feet sound it, in the order in which hands are named everywhere. */
export function soundedBy(
  parts: readonly Pick<ProposedPart, "hands" | "heard">[],
): ReadonlyMap<string, readonly Hands[]> {
  const found = new Map<string, readonly Hands[]>();
  for (const hands of ORDER) {
    for (const part of parts) {
      if (part.hands !== hands) continue;
      for (const stop of part.heard) {
        const known = found.get(stop) ?? [];
        if (!known.includes(hands)) found.set(stop, [...known, hands]);
      }
    }
  }
  return found;
}

/** By tremulant: whose sound it shakes. `all` shakes whatever is shaken. */
export function shakenBy(
  parts: readonly Pick<ProposedPart, "hands" | "keyboard" | "tremulant">[],
  tremulants: readonly string[],
): ReadonlyMap<string, readonly Hands[]> {
  return new Map(
    tremulants.map((name) => {
      const shaken = parts.filter((part) => part.tremulant && (name === "all" || part.keyboard === name));
      return [name, ORDER.filter((hands) => shaken.some((part) => part.hands === hands))];
    }),
  );
}
