/** Where a fact of the trade stands in print, or in which practice. */
export interface Source {
  /** As a musician cites it in a sentence, without the year: `Dom Bédos`, `Hamburg and Lübeck practice`. */
  readonly cited: string;
  /** `null` for the practice of a school, which the literature sums up and nobody wrote. */
  readonly author: string | null;
  readonly title: string;
  /** Of first publication or writing; `null` where the source is a practice or gives no year. */
  readonly year: number | null;
  /** Pages, preface, headings. */
  readonly where: string;
  /** Where the project read it; `null` when it did not. */
  readonly address: string | null;
  /** `read`: seen by the project; `memory`: known from the literature, not seen. */
  readonly evidence: "read" | "memory";
}
