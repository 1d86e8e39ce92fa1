import { type RefObject, useEffect, useLayoutEffect, useRef } from "react";
import type { Finding } from "../../shared-model/check/check.ts";
import type { Division, Instrument } from "../../shared-model/stoplist/instrument.ts";
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

/** The margin beside a division's stops. Where its glosses hang, {@link useHungGlosses} says. */
export function Margin({ glosses }: { glosses: readonly Gloss[] }) {
  return (
    <div className="margin">
      {glosses.map(({ finding, stop }) => (
        <div
          className={`gloss ${SEVERITY_CLASS[finding.severity]}`}
          data-stop={stop}
          key={`${finding.rule} ${finding.text}`}
        >
          <FindingWords finding={finding} />
        </div>
      ))}
    </div>
  );
}

/**
 * Hangs the glosses of a stoplist at the height of their stops, where they push each other down, so that no row moves
 * under the finger when one comes or goes. All heights are read before the first is set: the page is laid out once.
 */
function hang(list: HTMLElement): void {
  const margins = [...list.querySelectorAll<HTMLElement>(".margin")].map((margin) => {
    const rows = new Map(
      [...(margin.parentElement?.querySelectorAll<HTMLElement>(".rows > button") ?? [])].map((row) => [row.id, row]),
    );
    let free = 0;
    const glosses = [...(margin.children as HTMLCollectionOf<HTMLElement>)].map((gloss) => {
      const top = Math.max(free, rows.get(`stop-${gloss.dataset.stop}`)?.offsetTop ?? 0);
      free = top + gloss.offsetHeight;
      return { gloss, top: `${top}px` };
    });
    return { margin, glosses, height: `${free}px` };
  });
  for (const { margin, glosses, height } of margins) {
    for (const { gloss, top } of glosses) if (gloss.style.top !== top) gloss.style.top = top;
    // The margin is as high as what hangs in it, so that the next division begins below.
    if (margin.style.minHeight !== height) margin.style.minHeight = height;
  }
}

/**
 * Keeps glosses where they belong: when there are others, and when rows come or go or turn higher.
 *
 * @param instrument whose stoplist it is: another one has other rows.
 * @param glosses anew whenever there are others.
 * @returns the place for the stoplist that they hang in.
 */
export function useHungGlosses(instrument: Instrument, glosses: unknown): RefObject<HTMLDivElement | null> {
  const list = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: they are hung anew when there are others.
  useLayoutEffect(() => {
    if (list.current) hang(list.current);
  }, [glosses]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the rows are those of the instrument.
  useEffect(() => {
    const element = list.current;
    if (!element) return undefined;
    const observer = new ResizeObserver(() => hang(element));
    for (const rows of element.querySelectorAll(".rows")) observer.observe(rows);
    return () => observer.disconnect();
  }, [instrument]);
  return list;
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
