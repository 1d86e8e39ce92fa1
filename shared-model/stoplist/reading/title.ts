/** The organ's name as a list prints it, without who made it and when, where a line says these plainly beside it. */
export interface Title {
  readonly name: string;
  readonly builder: string | null;
  readonly year: number | null;
}

const YEAR = "(1[3-9]\\d\\d|20[0-4]\\d)";
/** Words before a builder's name, in the six languages. Common practice. */
const MADE_BY =
  "(?:(?:the |die |de |l['’])?(?:organ|orgel|orgue|organo|órgano) )?(?:built by|by|(?:erbaut |gebaut )?von|construit(?:e)? par|gebouwd door|costruito da|opera di|construido por)";
/** Words between a builder's name and the year. */
const IN = "(?:,|\\s(?:in|im jahre|en|anno|nel|anno domini))?";
/** A name that begins as names of people and firms do; names of saints are names of churches. */
const MAKER = "((?!St\\.|Sankt |Saint|Sainte|San |Santa |S\\.)\\p{Lu}[^\\d()]{1,80}?)";

const IN_BRACKETS = new RegExp(`^(.{3,}?)[\\s,]*\\((?:${MADE_BY} )?(?:${MAKER}${IN}\\s)?${YEAR}\\)$`, "iu");
const FIRM =
  /^(.{3,}?)[\s,]*\(([^()\d]*(?:& (?:sons?|co|söhne|sohn|fils|zn|zonen|figli)|bros|brothers|gebr|gebroeders|frères|fratelli|orgelbau|orgelmakers?|organ builders?)[^()\d]*)\)$/iu;
const BEHIND = new RegExp(`^(.{3,}?)\\s*[-–—,;:]\\s*${MADE_BY} ${MAKER}${IN}\\s\\(?${YEAR}\\)?\\.?$`, "iu");
const ALONE = new RegExp(`^${MADE_BY} ${MAKER}${IN}\\s\\(?${YEAR}\\)?\\.?$`, "iu");

const BUILT = new RegExp(
  `^(?:(?:er|ge)baut|built|construite?|gebouwd|costruito|construido|byggd|bygget)(?: (?:in|im jahre|en|anno|nel))? ${YEAR}\\.?$`,
  "iu",
);

/** No title is longer; longer texts are not parted, so that reading stays bounded. */
const LONGEST = 300;

const tidy = (text: string): string => text.replace(/[\s,;:–—-]+$/u, "").trim();

/**
 * Parts a title from its builder and year: `St. Aldhelm, Fenwick (J. Trask & Son, 1902)`. What is said otherwise, or says
 * more than that, stays in the name.
 */
export function titleIn(text: string): Title {
  const isLong = text.length > LONGEST;
  const [, name, builder, year] = isLong ? [] : (IN_BRACKETS.exec(text) ?? BEHIND.exec(text) ?? FIRM.exec(text) ?? []);
  if (name === undefined) return { name: text, builder: null, year: null };
  const maker = builder === undefined ? null : tidy(builder);
  // Case is ignored for the words around a name, not for the name.
  if (maker !== null && !/^\p{Lu}/u.test(maker)) return { name: text, builder: null, year: null };
  return { name: tidy(name), builder: maker, year: year === undefined ? null : Number(year) };
}

/** A line beneath the title that says who made the organ and when, or when alone; `null` for any other. */
export function makerIn(text: string): Pick<Title, "builder" | "year"> | null {
  if (text.length > LONGEST) return null;
  const [, alone] = BUILT.exec(text.trim()) ?? [];
  if (alone !== undefined) return { builder: null, year: Number(alone) };
  const [, builder, year] = ALONE.exec(text.trim()) ?? [];
  return builder !== undefined && /^\p{Lu}/u.test(builder) ? { builder: tidy(builder), year: Number(year) } : null;
}
