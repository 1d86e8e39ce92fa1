/** The cuts of type a card is set in: a serif for what is played and drawn, a sans for captions and remarks. */
export const FACES = ["serif", "serif-bold", "sans", "sans-bold", "dynamic"] as const;
export type Face = (typeof FACES)[number];

/** Length of `text` in millimetres. `size` in points; `fraction` as in a `TextMark`. */
export type Measure = (text: string, face: Face, size: number, fraction: boolean) => number;

/** Millimetres of a point. */
export const POINT = 25.4 / 72;

/** From baseline to baseline, in parts of the size: accents of capitals and descenders of neighbours never meet. */
export const LEADING = 1.25;
/** What stands above the baseline, in parts of the size, accents included. */
export const ABOVE = 0.95;

/** How much larger a fraction is set than its line: its digits are little more than half as tall as others. */
export const FRACTION_SIZE = 1.14;

/**
 * Sizes in points for a desk at 80 cm, as long as nothing is enlarged. 22 points of the serif give capitals of 5.2 mm,
 * 22 minutes of arc, where 20 to 22 are preferred; 15 points of the sans give 3.5 mm, 15 minutes, under which nothing
 * should go. (ISO 9241-3 asks for 16 at least and prefers 20 to 22; from memory of its summaries.)
 */
export const SIZES = { number: 32, title: 28, stop: 22, label: 18, text: 15 } as const;
export type SizeName = keyof typeof SIZES;

/** How much everything may be enlarged where the paper has room, largest first: stops of 32, 28, 25 and 22 points. */
export const SCALES = [1.45, 1.27, 1.13, 1] as const;
