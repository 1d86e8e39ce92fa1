import { useDeferredValue, useMemo } from "react";
import { guessedStops } from "../../shared-model/judging/hearing-report.ts";
import { judge } from "../../shared-model/judging/judge.ts";
import { stopLabel } from "../../shared-model/judging/listening.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { balanceCurves } from "../../shared-model/pictures/balance-curves.ts";
import { ladderColumns, ladderWords, pitchLadder } from "../../shared-model/pictures/pitch-ladder.ts";
import { balanceWords, comparedOf } from "../../shared-model/pictures/registration-picture.ts";
import type { Drawing } from "../../shared-model/pictures/shapes.ts";
import { svgOf } from "../../shared-model/pictures/svg.ts";
import { stateOf } from "../state/section.ts";
import type { DrawnByHand } from "../state/work.ts";
import { Typeset } from "../words/typeset.tsx";
import type { ProposedPart } from "./proposed.ts";

const LADDER_WIDTH = 420;
const BALANCE_WIDTH = 460;

interface PicturesProps {
  readonly problem: Problem;
  readonly drawn: DrawnByHand;
  readonly parts: readonly Pick<ProposedPart, "part" | "keyboard" | "octave">[];
}

/** What is drawn of a registration: the ladder of its pitches, and how its telling part is heard. */
function picturesOf({ problem, drawn, parts }: PicturesProps) {
  const placings = parts.map(({ part, keyboard, octave }) => ({ part, keyboard, octave }));
  const judgement = judge(problem, stateOf(drawn), placings);
  if (!judgement || judgement.parts.every((part) => part.heard.length === 0)) return null;
  const columns = ladderColumns(judgement.parts, problem.stops, stopLabel);
  const compared = comparedOf(judgement.parts);
  return {
    ladder: pitchLadder(columns, LADDER_WIDTH),
    ladderWords: ladderWords(columns),
    balance: compared && balanceCurves(compared, BALANCE_WIDTH),
    head: compared?.second ? `How the ${compared.first.name} is heard` : "What is heard",
    words: compared ? balanceWords(compared) : "",
    guessed: guessedStops(problem, judgement.parts).length > 0,
  };
}

/** The pitch ladder and the balance of a registration, in the ink of the page, with a sentence that says the same. */
export function Pictures(props: PicturesProps) {
  const { problem, drawn, parts } = useDeferredValue(props);
  const pictures = useMemo(() => picturesOf({ problem, drawn, parts }), [problem, drawn, parts]);
  if (!pictures) return null;
  return (
    <div className="pictures">
      <figure>
        <h2 className="cap">What each hand sounds</h2>
        <Ink drawing={pictures.ladder} says={pictures.ladderWords} />
      </figure>
      {pictures.balance && (
        <figure>
          <h2 className="cap">{pictures.head}</h2>
          <Ink drawing={pictures.balance} says={pictures.words} />
          <figcaption>
            <Typeset>{pictures.words}</Typeset>
            {pictures.guessed && " Strengths are guessed from the names of the stops; nobody has listened yet."}
          </figcaption>
        </figure>
      )}
    </div>
  );
}

function Ink({ drawing, says }: { drawing: Drawing; says: string }) {
  return (
    <svg
      className="ink"
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      width={drawing.width}
      role="img"
      aria-label={says}
      // biome-ignore lint/security/noDangerouslySetInnerHtml: drawn by a function of the model, which escapes every name.
      dangerouslySetInnerHTML={{ __html: svgOf(drawing.shapes) }}
    />
  );
}
