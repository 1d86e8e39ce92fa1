import { SOURCES } from "./sources.ts";

/** What has no source of its own: every organist does it, and many books say so. */
const COMMON_PRACTICE = "common practice";

/**
 * A source as a musician cites it: `Dom Bédos (1766)`, `Hamburg and Lübeck practice`, `common practice`.
 *
 * @param id an id of `SOURCES` or `common practice`; any other text is given back as it is.
 */
export function citation(id: string): string {
  const source = SOURCES[id];
  if (!source) return id;
  return source.year === null ? source.cited : `${source.cited} (${source.year})`;
}

/**
 * The sources of a reason, cited one after another. One that nobody of the project has seen says so:
 * `Dom Bédos (1766); Michel Corrette (1737), as reported`.
 *
 * @param source ids parted by semicolons, as reasons and rules hold them.
 */
export function citations(source: string): string {
  const cited = source.split("; ").map((id) => {
    const known = SOURCES[id];
    // A practice is a report by its nature.
    return known?.evidence === "memory" && known.author !== null ? `${citation(id)}, as reported` : citation(id);
  });
  return [...new Set(cited)].join("; ");
}

/** Where a sentence takes its authority from, at its beginning: `As Dom Bédos (1766) has it`, `By common practice`. */
export function accordingTo(id: string): string {
  const cited = citation(id);
  if (id === COMMON_PRACTICE || SOURCES[id]?.author === null) return `By ${cited}`;
  return `As ${cited} ${/ and /.test(cited) ? "have" : "has"} it`;
}
