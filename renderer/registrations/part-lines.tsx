import type { Part } from "../../shared-model/music/texture.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { inHandOrder } from "../texture/diagram.tsx";
import { HAND_WORDS, HandMark } from "../words/hand-mark.tsx";
import { Typeset } from "../words/typeset.tsx";
import { type Registered, saidPart } from "./part-words.ts";

interface PartLinesProps {
  readonly organ: Instrument;
  readonly registered: Registered;
  readonly music: readonly Part[];
}

/** Who plays where on which stops: right, left, feet. */
export function PartLines({ organ, registered, music }: PartLinesProps) {
  return (
    <ul className="note">
      {inHandOrder(music).map((part) => {
        const said = saidPart(organ, registered, part.id);
        return (
          <li key={part.id}>
            <HandMark hands={part.hands} />
            <span>
              <span className="sr">{HAND_WORDS[part.hands]}: </span>
              {said.keyboard && <i>{said.keyboard} </i>}
              <Typeset>{said.stops}</Typeset>
            </span>
          </li>
        );
      })}
    </ul>
  );
}
