import { type Before, type FreeMoment, LIMBS, type Limb } from "../../shared-model/music/piece.ts";
import { DYNAMICS, type Dynamic } from "../../shared-model/music/texture.ts";
import { textureOf } from "../state/section.ts";
import { useWork } from "../state/use-store.tsx";
import type { DeskSection } from "../state/work.ts";
import { Plain } from "../words/action.tsx";
import { NumberField } from "../words/number-field.tsx";
import { DYNAMIC_WORDS } from "../words/schools.ts";
import { TempoChoice, tempoWords } from "./tempo-choice.tsx";

const LIMB_WORDS: Readonly<Record<Limb, string>> = { left: "left hand", right: "right hand", feet: "feet" };

/** Beats for which a limb has nothing to play before a section, where nobody has said how many. */
const USUAL_FREE = 2;
const USUAL_MOMENT: FreeMoment = { limb: "left", beats: 4, bar: null };

interface SectionMoreProps {
  readonly who: string;
  readonly section: DeskSection;
  readonly index: number;
  /** `run`: steps of the same run are taken back together. */
  readonly set: (words: string, change: Partial<DeskSection>, run: string | null) => void;
}

/** What else a piece's file can say of a section: its loudness, its pace, its bars, and when hands are free. */
export function SectionMore({ who, section, index, set }: SectionMoreProps) {
  const { piece } = useWork();
  const texture = textureOf(section);
  const ofPiece = tempoWords(piece);
  const unsaid = ofPiece ? `as the piece, ${ofPiece}` : texture?.tempo ? `usual, ${texture.tempo}` : "not said";
  return (
    <fieldset className="more">
      <legend className="sr">More of {who}</legend>
      {!texture?.ladder && (
        <label className="before">
          <span className="note quiet">level </span>
          <select
            className="pick"
            aria-label={`Level of ${who}`}
            value={section.dynamic ?? ""}
            onChange={({ target }) => {
              const dynamic = DYNAMICS.find((each): each is Dynamic => each === target.value);
              set(`the level of ${who}`, { dynamic }, null);
            }}
          >
            <option value="">{texture?.dynamic ? `usual, ${texture.dynamic}` : "any"}</option>
            {DYNAMICS.map((each) => (
              <option key={each} value={each}>
                {each}, {DYNAMIC_WORDS[each]}
              </option>
            ))}
          </select>
        </label>
      )}
      <TempoChoice
        who={who}
        said={section}
        unsaid={unsaid}
        onTempo={({ tempo, metronome }) =>
          set(`the tempo of ${who}`, { tempo: tempo ?? undefined, metronome }, `tempo ${section.id}`)
        }
      />
      <NumberField
        label={`Beats in a bar of ${who}`}
        value={section.beatsInBar}
        least={0.5}
        most={64}
        mayBeEmpty
        placeholder={piece.beatsInBar === null ? "?" : String(piece.beatsInBar)}
        onNumber={(beatsInBar) => set(`the beats in a bar of ${who}`, { beatsInBar }, `beats ${section.id}`)}
      >
        beats in a bar
      </NumberField>
      {index > 0 && (
        <>
          {section.before && (
            <Free
              who={who}
              before={section.before}
              onBefore={(before) => set(`the hands free before ${who}`, { before }, `free ${section.id}`)}
            />
          )}
          <label className="check note">
            <input
              type="checkbox"
              checked={section.again}
              onChange={({ target }) => set(`whether ${who} is played again`, { again: target.checked }, null)}
            />
            its bars were played before (da capo)
          </label>
        </>
      )}
      <Moments
        who={who}
        moments={section.moments}
        onMoments={(moments) => set(`when hands rest in ${who}`, { moments }, `moments ${section.id}`)}
      />
    </fieldset>
  );
}

interface FreeProps {
  readonly who: string;
  readonly before: Before;
  readonly onBefore: (before: Before) => void;
}

/** Which limbs have nothing to play before the section, and for how many beats. */
function Free({ who, before, onBefore }: FreeProps) {
  const free = before.free ?? {};
  const put = (limb: Limb, beats: number | null): void => {
    const { [limb]: _, ...rest } = free;
    const next = beats === null ? rest : { ...rest, [limb]: beats };
    onBefore({ ...before, free: Object.keys(next).length > 0 ? next : null });
  };
  return (
    <div className="before">
      <span className="note quiet">free before it</span>
      {LIMBS.map((limb) => (
        <span className="before" key={limb}>
          <label className="check note">
            <input
              type="checkbox"
              checked={free[limb] !== undefined}
              aria-label={`The ${LIMB_WORDS[limb]} free before ${who}`}
              onChange={({ target }) => put(limb, target.checked ? (before.beats ?? USUAL_FREE) : null)}
            />
            {LIMB_WORDS[limb]}
          </label>
          {free[limb] !== undefined && (
            <NumberField
              label={`Beats for which the ${LIMB_WORDS[limb]} is free before ${who}`}
              value={free[limb]}
              least={0}
              most={999}
              onNumber={(beats) => beats !== null && put(limb, beats)}
            >
              beats
            </NumberField>
          )}
        </span>
      ))}
    </div>
  );
}

interface MomentsProps {
  readonly who: string;
  readonly moments: readonly FreeMoment[];
  readonly onMoments: (moments: readonly FreeMoment[]) => void;
}

/** Stretches inside the section in which something can be made ready. */
function Moments({ who, moments, onMoments }: MomentsProps) {
  const put = (at: number, moment: FreeMoment): void =>
    onMoments(moments.map((each, index) => (index === at ? moment : each)));
  return (
    <div className="moments">
      {moments.map((moment, at) => {
        const which = moments.length > 1 ? `${who}, rest ${at + 1}` : who;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a rest that changes is the same rest, and keeps the focus.
          <span className="before" key={at}>
            <label>
              <span className="note quiet">in it </span>
              <select
                className="pick"
                aria-label={`What rests in ${which}`}
                value={moment.limb}
                onChange={({ target }) => {
                  const limb = LIMBS.find((each) => each === target.value);
                  if (limb) put(at, { ...moment, limb });
                }}
              >
                {LIMBS.map((limb) => (
                  <option key={limb} value={limb}>
                    {LIMB_WORDS[limb]}
                  </option>
                ))}
              </select>
            </label>
            <NumberField
              label={`Beats of rest in ${which}`}
              value={moment.beats}
              least={0}
              most={999}
              onNumber={(beats) => beats !== null && put(at, { ...moment, beats })}
            >
              beats free
            </NumberField>
            <label className="note number">
              at bar{" "}
              <input
                aria-label={`Bar of the rest in ${which}`}
                value={moment.bar ?? ""}
                placeholder="?"
                maxLength={12}
                onChange={({ target }) => {
                  const bar = target.value.trim();
                  put(at, { ...moment, bar: bar === "" ? null : bar });
                }}
              />
            </label>
            <Plain
              aria-label={`Take out the rest in ${which}`}
              onClick={() => onMoments(moments.filter((_, index) => index !== at))}
            >
              Take out
            </Plain>
          </span>
        );
      })}
      <Plain
        chosen
        aria-label={`Add a rest in ${who}`}
        disabled={moments.length >= 200}
        onClick={() => onMoments([...moments, USUAL_MOMENT])}
      >
        Add a rest
      </Plain>
    </div>
  );
}
