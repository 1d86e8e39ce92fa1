import { useId, useState } from "react";
import { byLevel, LEVEL_WORDS } from "../../shared-model/carry/organ-survey.ts";
import type { SurveyedTexture } from "../../shared-model/carry/survey.ts";
import { MUSIC_OF, type SchoolVerdict, schoolVerdict } from "../../shared-model/carry/survey-text.ts";
import type { Tradition } from "../../shared-model/music/texture.ts";
import { useStore } from "../state/use-store.tsx";
import { Plain } from "../words/action.tsx";
import { capital, Typeset } from "../words/typeset.tsx";
import { openTexture } from "./open-texture.ts";
import { Skyline } from "./skyline.tsx";

interface SchoolProps {
  readonly tradition: Tradition;
  /** As far as they are known. */
  readonly textures: readonly SurveyedTexture[];
  /** How many the school has. */
  readonly of: number;
}

/** `11 well, 15 with a compromise, 9 not`. */
const countWords = ({ well, compromise, notPossible }: SchoolVerdict): string =>
  [
    `${well} well`,
    ...(compromise > 0 ? [`${compromise} with a compromise`] : []),
    ...(notPossible > 0 ? [`${notPossible} not`] : []),
  ].join(", ");

/** What the organ can do of one school: the verdict, and texture by texture when it is opened. */
export function School({ tradition, textures, of }: SchoolProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const verdict = textures.length === of ? schoolVerdict(tradition, textures) : null;
  return (
    <section className="school" aria-labelledby={id}>
      <div className="verdict">
        <h2 id={id}>{MUSIC_OF[tradition]}</h2>
        <Skyline textures={textures} of={of} />
        <p className="note count">
          {verdict ? countWords(verdict) : textures.length > 0 ? `${textures.length} of ${of}` : "not looked at yet"}
        </p>
      </div>
      {verdict && (
        <p className="said">
          <Typeset>{verdict.text}</Typeset>
        </p>
      )}
      {textures.length > 0 && (
        <Plain chosen aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? "Close" : "Texture by texture"}
          <span className="sr">, {MUSIC_OF[tradition]}</span>
        </Plain>
      )}
      {open && <Textures textures={textures} />}
    </section>
  );
}

function Textures({ textures }: { textures: readonly SurveyedTexture[] }) {
  return (
    <div className="byLevel">
      {byLevel({ textures }).map(({ level, textures: some }) => (
        <section key={level} aria-label={LEVEL_WORDS[level]}>
          <h3 className="cap">{LEVEL_WORDS[level]}</h3>
          <ul>
            {some.map((each) => (
              <TextureLine key={each.texture.id} surveyed={each} />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

/** One texture: its name opens its registrations, the best of them stands beside it, and under that what it costs. */
function TextureLine({ surveyed }: { surveyed: SurveyedTexture }) {
  const store = useStore();
  const { texture, tradition, label, why, exact, instead } = surveyed;
  return (
    <li className="served">
      <button type="button" onClick={() => openTexture(store, texture, tradition)}>
        {texture.title}
        <span className="sr">, see its registrations</span>
      </button>
      <div>
        {label !== null && (
          <p>
            <Typeset>{label}</Typeset>
          </p>
        )}
        {why.map((each) => (
          <p className="note quiet" key={each}>
            <Typeset>{capital(each)}</Typeset>
          </p>
        ))}
        {!exact && <p className="note quiet">Not every registration was looked at: one may be better.</p>}
        {instead && (
          <p className="note">
            Nearest:{" "}
            {instead.texture.id !== texture.id && (
              <>
                <Plain chosen onClick={() => openTexture(store, instead.texture, "neutral")}>
                  {instead.texture.title}
                </Plain>{" "}
              </>
            )}
            <Typeset>{instead.label}</Typeset>
          </p>
        )}
      </div>
    </li>
  );
}
