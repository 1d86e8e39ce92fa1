import { applyPatches, type Draft, enablePatches, type Patch, produceWithPatches } from "immer";

enablePatches();

/** A step that can be taken back, with the words in which the button offers it and the place where it was made. */
interface Step<Where> {
  readonly words: string;
  readonly where: Where;
  readonly forth: readonly Patch[];
  readonly back: readonly Patch[];
  /** Steps of one `run` that follow each other closely are taken back together: letters of a word, not each by itself. */
  readonly run: string | null;
}

/** More steps than anyone takes back; older ones are forgotten. */
const MOST_STEPS = 500;

/** A value with its past and its future. Immutable: every change gives a new one. */
export interface History<Value, Where> {
  readonly value: Value;
  readonly past: readonly Step<Where>[];
  readonly future: readonly Step<Where>[];
}

/** A history that begins now. */
export const historyOf = <Value, Where>(value: Value): History<Value, Where> => ({ value, past: [], future: [] });

/**
 * The history after one more step. A recipe that changes nothing leaves it as it is, so that undo never does nothing.
 *
 * @param run steps of the same run become one.
 */
export function stepped<Value, Where>(
  history: History<Value, Where>,
  words: string,
  where: Where,
  recipe: (draft: Draft<Value>) => void,
  run: string | null = null,
): History<Value, Where> {
  const [value, forth, back] = produceWithPatches(history.value, (draft) => {
    recipe(draft);
  });
  if (forth.length === 0) return history;
  const last = history.past.at(-1);
  if (run !== null && last?.run === run && history.future.length === 0) {
    const joined = { ...last, forth: [...last.forth, ...forth], back: [...back, ...last.back] };
    return { value, past: [...history.past.slice(0, -1), joined], future: [] };
  }
  return { value, past: [...history.past, { words, where, forth, back, run }].slice(-MOST_STEPS), future: [] };
}

/** The same history with something else in its value, which no step has made and none takes back. */
export const amended = <Value extends object, Where>(
  history: History<Value, Where>,
  change: Partial<Value>,
): History<Value, Where> => ({ ...history, value: { ...history.value, ...change } });

/** One step back and where it was made; `null` when there is none. */
export function undone<Value extends object, Where>(
  history: History<Value, Where>,
): { readonly history: History<Value, Where>; readonly where: Where } | null {
  const step = history.past.at(-1);
  if (!step) return null;
  const value = applyPatches(history.value, step.back as Patch[]);
  return {
    history: { value, past: history.past.slice(0, -1), future: [step, ...history.future] },
    where: step.where,
  };
}

/** One step forth again; `null` when there is none. */
export function redone<Value extends object, Where>(
  history: History<Value, Where>,
): { readonly history: History<Value, Where>; readonly where: Where } | null {
  const [step, ...future] = history.future;
  if (!step) return null;
  const value = applyPatches(history.value, step.forth as Patch[]);
  return { history: { value, past: [...history.past, step], future }, where: step.where };
}
