/** An invented list in the manner of such prints, and beside it what it reads as in the notation of `../written.ts`. */
export type InventedLists = Readonly<Record<string, readonly [list: string, reads: string]>>;
