/** Where a command prints, and the folder that its paths start from. */
export interface Terminal {
  /** Data. */
  readonly stdout: { write(text: string): unknown };
  /** Words about trouble. */
  readonly stderr: { write(text: string): unknown };
  /** Absolute path. */
  readonly folder: string;
}

/** Exit statuses, fixed: scripts read them. */
export const DONE = 0;
/** Done, and something is wrong: an error finding, an impossible texture, questions left in strict reading. */
export const WRONG = 1;
/** Bad input or usage; nothing was written. */
export const REFUSED = 2;

/** Thrown by a command that cannot go on: its message is one or more sentences for the person, the exit status is 2. */
export class Refusal extends Error {
  /** Exit status. */
  readonly status: number = REFUSED;
}

/** The input is right, and nothing on the organ serves for what it asks. */
export class Impossible extends Refusal {
  override readonly status = WRONG;
}

/** Columns of the plain text that commands print. */
export const COLUMNS = 80;

/** Ends `text` with one line feed. */
export const line = (text: string): string => `${text}\n`;
