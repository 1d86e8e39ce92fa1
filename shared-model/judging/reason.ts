import type { Points, Words } from "../rules/rule.ts";

/** One reason for or against a state. Scores are sums of these and of nothing else. */
export interface Reason {
  readonly rule: string;
  readonly points: Points;
  readonly text: string;
  readonly source: string;
  /** Ids of the parts concerned. */
  readonly parts: readonly string[];
  /** Ids of the stops concerned. */
  readonly stops: readonly string[];
  readonly severity: "praise" | "error" | "warning" | "note";
  readonly remedy: string | null;
}

/** Who speaks: what a reason needs of a rule. */
export interface Speaker {
  readonly id: string;
  readonly source: string;
  readonly severity: "error" | "warning" | "note";
}

/** How a rule's say is shown: what forbids is an error, what earns is praise, a fault that only costs is a warning at most. */
function severityOf(rule: Speaker, points: Points, forbids: boolean): Reason["severity"] {
  if (forbids) return "error";
  if (points > 0) return "praise";
  return points < 0 && rule.severity === "error" ? "warning" : rule.severity;
}

/**
 * A rule's say as a reason.
 *
 * @param stops ids of the stops concerned where the words name none.
 */
export function reasonOf(
  rule: Speaker,
  points: Points,
  words: Words,
  parts: readonly string[],
  stops: readonly string[],
  forbids = false,
): Reason {
  return {
    rule: rule.id,
    points,
    text: words.text,
    source: rule.source,
    parts,
    // Parts that share a keyboard hear the same stops.
    stops: [...new Set(words.stops ?? stops)],
    severity: severityOf(rule, points, forbids),
    remedy: words.remedy ?? null,
  };
}
