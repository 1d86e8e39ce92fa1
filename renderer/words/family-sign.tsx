import type { ReactNode } from "react";
import type { Family } from "../../shared-model/stoplist/kind.ts";

/** Signs stand for what a listener tells apart; some families of the trade share one. */
type Sign =
  | "principal"
  | "flute"
  | "stopped"
  | "string"
  | "between"
  | "celeste"
  | "reed"
  | "mutation"
  | "mixture"
  | "other";

const SIGN_OF: Readonly<Record<Family, Sign>> = {
  principal: "principal",
  "flute-open": "flute",
  "flute-stopped": "stopped",
  "flute-half-stopped": "stopped",
  string: "string",
  hybrid: "between",
  celeste: "celeste",
  "reed-chorus": "reed",
  "reed-solo": "reed",
  "reed-short": "reed",
  mutation: "mutation",
  mixture: "mixture",
  cornet: "mixture",
  percussion: "other",
  effect: "other",
};

const SIGN_WORDS: Readonly<Record<Sign, string>> = {
  principal: "principal",
  flute: "flute",
  stopped: "stopped flute",
  string: "string",
  between: "between flute and string",
  celeste: "celeste",
  reed: "reed",
  mutation: "mutation",
  mixture: "mixture, cornet",
  other: "effect",
};

const LINE = { fill: "none", stroke: "currentColor" };

const DRAWING: Readonly<Record<Sign, ReactNode>> = {
  principal: <path d="M5.5 1.5h5v13h-5z" fill="currentColor" />,
  flute: <circle cx="8" cy="8" r="5" strokeWidth="2" {...LINE} />,
  stopped: (
    <>
      <circle cx="8" cy="9.4" r="4.6" strokeWidth="2" {...LINE} />
      <path d="M2.6 2.2h10.8" strokeWidth="2" {...LINE} />
    </>
  ),
  string: <path d="M6 1.5v13M10 1.5v13" strokeWidth="1.6" {...LINE} />,
  between: (
    <>
      <circle cx="8" cy="8" r="5" strokeWidth="1.6" {...LINE} />
      <path d="M8 1v14" strokeWidth="1.6" {...LINE} />
    </>
  ),
  celeste: (
    <path
      d="M5.5 1.5c3 2.2-3 4.3 0 6.5s-3 4.3 0 6.5M10.5 1.5c3 2.2-3 4.3 0 6.5s-3 4.3 0 6.5"
      strokeWidth="1.6"
      {...LINE}
    />
  ),
  reed: <path d="M2 2h12L8 14.5z" fill="currentColor" />,
  mutation: <path d="M8 2l5.5 6L8 14 2.5 8z" strokeWidth="2" {...LINE} />,
  mixture: <path d="M2.5 3.5h11M2.5 8h11M2.5 12.5h11" strokeWidth="2.2" {...LINE} />,
  other: <circle cx="8" cy="8" r="2" fill="currentColor" />,
};

/** The sign of a stop's family; the word stands in the legend and in the name that is read out. */
export function FamilySign({ family }: { family: Family }) {
  return <SignDrawing sign={SIGN_OF[family]} />;
}

function SignDrawing({ sign }: { sign: Sign }) {
  return (
    <svg className={`fam f-${sign}`} viewBox="0 0 16 16" aria-hidden="true">
      {DRAWING[sign]}
    </svg>
  );
}

/** What the signs mean, those that occur. */
export function FamilyLegend({ families }: { families: readonly Family[] }) {
  const occurring = new Set(families.map((family) => SIGN_OF[family]));
  const signs = (Object.keys(SIGN_WORDS) as Sign[]).filter((sign) => occurring.has(sign));
  return (
    <p className="signs">
      {signs.map((sign) => (
        <span key={sign}>
          <SignDrawing sign={sign} />
          {SIGN_WORDS[sign]}
        </span>
      ))}
    </p>
  );
}
