import { useEffect, useLayoutEffect, useRef } from "react";
import type { Finding } from "../../shared-model/check/check.ts";
import type { Division } from "../../shared-model/stoplist/instrument.ts";
import { useSteady } from "../stoplist/use-steady.ts";
import { Typeset } from "../words/typeset.tsx";

/** What a finding asks of the player, by its severity; each has a line of its own kind to the stop. */
const SEVERITY_WORDS = { error: "Must change", warning: "Weigh this", note: "Note" } as const;
const SEVERITY_CLASS = { error: "must", warning: "weigh", note: "note" } as const;

/** A finding beside the stop that it is about. */
interface Gloss {
  readonly finding: Finding;
  /** Index in its division of the stop beside which it hangs. */
  readonly row: number;
  readonly stop: string;
}

/** Findings by the division beside which they are told: beside the first stop concerned, each told once. */
export function glossesOf(
  divisions: readonly Division[],
  findings: readonly Finding[],
): { readonly beside: ReadonlyMap<string, readonly Gloss[]>; readonly elsewhere: readonly Finding[] } {
  const beside = new Map<string, Gloss[]>();
  const elsewhere: Finding[] = [];
  for (const finding of findings) {
    const home = divisions.find((division) => division.stops.some((stop) => finding.stops.includes(stop.id)));
    if (!home) {
      elsewhere.push(finding);
      continue;
    }
    const row = home.stops.findIndex((stop) => finding.stops.includes(stop.id));
    const stop = home.stops[row]?.id ?? "";
    beside.set(home.name, [...(beside.get(home.name) ?? []), { finding, row, stop }]);
  }
  for (const glosses of beside.values()) glosses.sort((a, b) => a.row - b.row);
  return { beside, elsewhere };
}

/**
 * The margin beside a division's stops: glosses hang at the height of their stop and push each other down, so that no
 * row moves under the finger when one comes or goes.
 */
export function Margin({ glosses }: { glosses: readonly Gloss[] }) {
  const margin = useRef<HTMLDivElement>(null);
  const place = useSteady(() => {
    const element = margin.current;
    if (!element) return;
    const rows = new Map(
      [...(element.parentElement?.querySelectorAll<HTMLElement>(".rows > button") ?? [])].map((row) => [row.id, row]),
    );
    let free = 0;
    for (const [at, child] of [...element.children].entries()) {
      const gloss = child as HTMLElement;
      const top = Math.max(free, rows.get(`stop-${glosses[at]?.stop}`)?.offsetTop ?? 0);
      gloss.style.top = `${top}px`;
      free = top + gloss.offsetHeight;
    }
    // The margin is as high as what hangs in it, so that the next division begins below.
    element.style.minHeight = `${free}px`;
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: they are placed anew when there are others.
  useLayoutEffect(() => place(), [glosses]);
  useEffect(() => {
    const observer = new ResizeObserver(() => place());
    if (margin.current?.parentElement) observer.observe(margin.current.parentElement);
    return () => observer.disconnect();
  }, [place]);
  return (
    <div className="margin" ref={margin}>
      {glosses.map(({ finding }) => (
        <div className={`gloss ${SEVERITY_CLASS[finding.severity]}`} key={`${finding.rule} ${finding.text}`}>
          <FindingWords finding={finding} />
        </div>
      ))}
    </div>
  );
}

/** A finding in words: what it asks, what is wrong, and what to do. */
export function FindingWords({ finding }: { finding: Finding }) {
  return (
    <>
      <span className={`sev sev-${SEVERITY_CLASS[finding.severity]}`}>{SEVERITY_WORDS[finding.severity]}</span>{" "}
      <Typeset>{finding.text}</Typeset>
      {finding.remedy !== null && (
        <>
          {" "}
          <i>
            <Typeset>{finding.remedy}</Typeset>
          </i>
        </>
      )}
    </>
  );
}
