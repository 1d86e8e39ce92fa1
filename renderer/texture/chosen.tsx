import { useId, useState } from "react";
import {
  DYNAMICS,
  type Dynamic,
  type Part,
  type Tempo,
  TRADITIONS,
  type Tradition,
} from "../../shared-model/music/texture.ts";
import type { Key } from "../../shared-model/pitch/key.ts";
import { textureOf } from "../state/section.ts";
import { useSection, useStore } from "../state/use-store.tsx";
import type { DeskSection } from "../state/work.ts";
import { Act, Plain } from "../words/action.tsx";
import { HAND_WORDS, HandMark } from "../words/hand-mark.tsx";
import { DYNAMIC_WORDS, SCHOOL_WORDS, TEMPI } from "../words/schools.ts";
import { keyName } from "../words/typeset.tsx";
import { inHandOrder } from "./diagram.tsx";

const AS_USUAL = "as usual";
/** Keys that a part's range may end on: from the lowest C of a keyboard to its highest c. */
const KEYS: readonly Key[] = Array.from({ length: 96 - 36 + 1 }, (_, at) => 36 + at);

/** The texture chosen, with its four options, at the foot of the page. */
export function Chosen({ manner }: { manner: string }) {
  const store = useStore();
  const section = useSection();
  const texture = textureOf(section);
  const [ranges, setRanges] = useState(false);
  if (!texture) {
    return (
      <aside className="chosen" aria-label="The texture chosen">
        <p className="quiet">Choose the picture that is most like your music; ranges, tempo and level come after.</p>
      </aside>
    );
  }
  const set = (words: string, change: Partial<DeskSection>): void =>
    store.act(words, (draft) => {
      const own = draft.piece.sections[draft.at];
      if (own) Object.assign(own, change);
    });
  const parts = inHandOrder(texture.parts);
  return (
    <aside className="chosen" aria-label="The texture chosen">
      {ranges && (
        <div className="ranges">
          {parts.map((part) => (
            <Range
              key={part.id}
              part={part}
              said={section.ranges[part.id]}
              onRange={(range) =>
                set(`the range of the ${part.id}`, {
                  ranges: range
                    ? { ...section.ranges, [part.id]: range }
                    : Object.fromEntries(Object.entries(section.ranges).filter(([id]) => id !== part.id)),
                })
              }
            />
          ))}
        </div>
      )}
      <div className="line">
        <div>
          <span className="note quiet">chosen</span>
          <b>{texture.title}</b>
        </div>
        <div>
          <span className="note quiet">ranges</span>
          <Plain chosen aria-expanded={ranges} onClick={() => setRanges(!ranges)}>
            {Object.keys(section.ranges).length > 0 ? "as you said" : "as usual"}
          </Plain>
        </div>
        <Choice
          name="tempo"
          value={section.tempo === undefined ? AS_USUAL : (section.tempo ?? AS_USUAL)}
          choices={[
            [
              AS_USUAL,
              section.pieceTempo
                ? `as the piece, ${section.pieceTempo}`
                : texture.tempo
                  ? `usual, ${texture.tempo}`
                  : "any",
            ],
            ...TEMPI.map((each) => [each, each] as const),
          ]}
          onChoose={(value) =>
            set("the tempo", { tempo: value === AS_USUAL ? undefined : (value as Tempo), metronome: null })
          }
        />
        {!texture.ladder && (
          <Choice
            name="level"
            value={section.dynamic === undefined ? AS_USUAL : (section.dynamic ?? AS_USUAL)}
            choices={[
              [AS_USUAL, texture.dynamic ? `usual, ${texture.dynamic}` : "any"],
              ...DYNAMICS.map((each) => [each, `${each}, ${DYNAMIC_WORDS[each]}`] as const),
            ]}
            onChoose={(value) => set("the level", { dynamic: value === AS_USUAL ? undefined : (value as Dynamic) })}
          />
        )}
        <Choice
          name="manner"
          value={section.tradition}
          choices={TRADITIONS.map((each) => [each, each === "neutral" ? "no school" : SCHOOL_WORDS[each]] as const)}
          onChoose={(value) => set("the manner", { tradition: value as Tradition })}
          title={manner}
        />
        <Act onClick={() => store.turnTo("registration")}>See registrations</Act>
      </div>
    </aside>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly onChoose: (value: string) => void;
  readonly title?: string;
}

function Choice({ name, value, choices, onChoose, title }: ChoiceProps) {
  const id = useId();
  return (
    <div>
      <label className="note quiet" htmlFor={id}>
        {name}
      </label>
      <select id={id} className="pick" value={value} title={title} onChange={(event) => onChoose(event.target.value)}>
        {choices.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}

interface RangeProps {
  readonly part: Part;
  readonly said: readonly [Key, Key] | undefined;
  readonly onRange: (range: readonly [Key, Key] | null) => void;
}

function Range({ part, said, onRange }: RangeProps) {
  const [low, high] = said ?? [part.low, part.high];
  const who = `${HAND_WORDS[part.hands]}, ${part.id.replace("-", " ")}`;
  const options = KEYS.map((key) => (
    <option key={key} value={key}>
      {keyName(key)}
    </option>
  ));
  return (
    <div className="range">
      <HandMark hands={part.hands} /> <span>{who}</span>
      <label>
        <span className="sr">{who}, lowest key</span>
        <select
          className="pick"
          value={low}
          onChange={(event) => onRange([Number(event.target.value), Math.max(high, Number(event.target.value))])}
        >
          {options}
        </select>
      </label>
      to
      <label>
        <span className="sr">{who}, highest key</span>
        <select
          className="pick"
          value={high}
          onChange={(event) => onRange([Math.min(low, Number(event.target.value)), Number(event.target.value)])}
        >
          {options}
        </select>
      </label>
      {said && <Plain onClick={() => onRange(null)}>As usual</Plain>}
    </div>
  );
}
