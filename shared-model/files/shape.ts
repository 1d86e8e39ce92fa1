import type * as z from "zod";
import { nearestOf } from "./nearest.ts";
import type { Reporter } from "./reporter.ts";
import type { Located } from "./yaml-text.ts";

/** The place named by a path of keys and numbers: the value there or, when it is missing, the deepest value above it. */
function spotAt(from: Located, path: readonly PropertyKey[]): { readonly node: Located; readonly found: boolean } {
  let node = from;
  for (const step of path) {
    const next = typeof step === "number" ? node.items?.[step] : node.entries?.get(String(step))?.node;
    if (!next) return { node, found: false };
    node = next;
  }
  return { node, found: true };
}

/** Offset of the value behind a key, or of the group itself when the key is not there. */
export const startOf = (node: Located, key: string): number => node.entries?.get(key)?.node.start ?? node.start;

/** A value as a person would name it, short. */
export function valueInWords(value: unknown): string {
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "a group of keys";
  if (value === null || value === undefined) return "nothing";
  const text = String(value);
  return typeof value === "string" ? `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"` : text.slice(0, 40);
}

type Issue = z.core.$ZodIssue;

/** Of a choice of forms, the issues of the one that the value was meant for: whose outermost type is right. */
function meantIssues(issue: Issue): readonly Issue[] | null {
  if (issue.code !== "invalid_union") return null;
  // A form that is wrong only further in is the one that was meant.
  const inner = issue.errors.find((branch) => branch.length > 0 && branch.every(({ path }) => path.length > 0));
  if (inner) return inner;
  const meant = issue.errors.find(
    (branch) => branch.length > 0 && !branch.some((inner) => inner.path.length === 0 && inner.code === "invalid_type"),
  );
  return meant ?? null;
}

function reportIssue(issue: Issue, above: readonly PropertyKey[], node: Located, of: string, reporter: Reporter): void {
  const path = [...above, ...issue.path];
  const meant = meantIssues(issue);
  if (meant) {
    for (const inner of meant) reportIssue(inner, path, node, of, reporter);
    return;
  }
  const spot = spotAt(node, path);
  const named = path.filter((step) => typeof step === "string");
  const key = named.length > 0 ? String(named[named.length - 1]) : of;
  const { value } = spot.node;
  if (!spot.found) {
    const group = named.length > 1 ? `An entry of ${String(named[named.length - 2])}:` : of;
    reporter.report({ code: "key-missing", key, of: group, expected: issue.message }, spot.node.start);
  } else if (path.length === 0) reporter.report({ code: "not-keys", of }, spot.node.start);
  else if (issue.code === "invalid_value" && typeof value === "string") {
    const all = issue.values.map(String);
    reporter.report({ code: "word-unknown", key, found: value, nearest: nearestOf(value, all), all }, spot.node.start);
  } else {
    const found = valueInWords(value);
    reporter.report({ code: "value-wrong", key, expected: issue.message, found }, spot.node.start);
  }
}

/** The part of a zod schema that {@link readShape} needs: that it can be tried. */
type Tried<T> = { readonly safeParse: (value: unknown) => z.ZodSafeParseResult<T> };

/**
 * The value in the form of the schema, or `null` when it has another; then every fault is reported at its place.
 * `of` names what is read, for sentences: "The organ", "The division Swell". Messages of the schema say what is expected.
 */
export function readShape<T>(schema: Tried<T>, node: Located, of: string, reporter: Reporter): T | null {
  const result = schema.safeParse(node.value);
  if (result.success) return result.data;
  for (const issue of result.error.issues) reportIssue(issue, [], node, of, reporter);
  return null;
}

/** Keys that no schema knows, counted so that each is told once, however often it stands in a file. */
export class UnknownKeys {
  readonly #seen = new Map<
    string,
    {
      readonly key: string;
      readonly of: string;
      readonly known: readonly string[];
      readonly offset: number;
      times: number;
    }
  >();

  /** Looks through the keys of one group; `of` names its sort: "A stop". */
  look(node: Located, known: readonly string[], of: string): void {
    for (const [key, entry] of node.entries ?? []) {
      if (known.includes(key)) continue;
      const seen = this.#seen.get(`${of}\n${key}`);
      if (seen) seen.times += 1;
      else if (this.#seen.size < 50) {
        // A key that stands there already is not the one that was meant.
        const free = known.filter((each) => !node.entries?.has(each));
        this.#seen.set(`${of}\n${key}`, { key, of, known: free, offset: entry.keyStart, times: 1 });
      }
    }
  }

  report(reporter: Reporter): void {
    for (const { key, of, known, offset, times } of this.#seen.values()) {
      reporter.report({ code: "key-unknown", key, of, nearest: nearestOf(key, known, 1), times }, offset);
    }
  }
}
