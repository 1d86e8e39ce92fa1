import { useDeferredValue, useState } from "react";
import type { Texture, Tradition } from "../../shared-model/music/texture.ts";
import { useSection, useStore } from "../state/use-store.tsx";
import { HAND_WORDS, HandMark } from "../words/hand-mark.tsx";
import { mannerWords, SCHOOL_WORDS } from "../words/schools.ts";
import { Chosen } from "./chosen.tsx";
import { Diagram } from "./diagram.tsx";
import { findTextures, groupsFor, SCHOOLS } from "./finding.ts";

const HANDS = ["right", "left", "both", "feet"] as const;

const headOf = (group: Tradition, school: Tradition): string => {
  if (group !== "neutral") return SCHOOL_WORDS[group];
  return school === "neutral" ? "For any school" : `For any school, in the ${SCHOOL_WORDS[school]} manner`;
};

/** Choosing a texture by what happens at the keyboards. */
export function TexturePage() {
  const store = useStore();
  const section = useSection();
  const [school, setSchool] = useState<Tradition>(section.tradition);
  const [words, setWords] = useState("");
  const asked = useDeferredValue(words.trim());

  const choose = (texture: Texture): void => {
    const [first = "neutral"] = texture.traditions;
    const tradition = texture.traditions.includes(school) || first === "neutral" ? school : first;
    store.act(`choosing ${texture.title}`, (draft) => {
      const own = draft.piece.sections[draft.at];
      if (!own || (own.texture === texture.id && own.tradition === tradition)) return;
      Object.assign(own, {
        texture: texture.id,
        parts: null,
        tradition,
        dynamic: undefined,
        // A counted tempo is the music's own, whatever its texture.
        ...(own.metronome ? {} : { tempo: undefined }),
        registration: null,
      });
    });
  };

  const found = asked === "" ? null : findTextures(asked);
  return (
    <>
      <main className="tex">
        <nav className="schools" aria-label="Schools">
          <h2 className="cap">School</h2>
          <ul>
            {SCHOOLS.map(({ tradition, count }) => (
              <li key={tradition}>
                <button
                  type="button"
                  aria-current={tradition === school}
                  onClick={() => {
                    setSchool(tradition);
                    setWords("");
                  }}
                >
                  <span>{SCHOOL_WORDS[tradition]}</span>
                  <span className="note quiet">{count}</span>
                </button>
              </li>
            ))}
          </ul>
          <ul className="note quiet keyline">
            {HANDS.map((hands) => (
              <li key={hands}>
                <HandMark hands={hands} /> {HAND_WORDS[hands]}
              </li>
            ))}
          </ul>
        </nav>
        <section aria-labelledby="texture-head">
          <div className="opening">
            <h1 id="texture-head">What happens at the keyboards?</h1>
            <div className="end">
              <label className="find">
                <span className="sr">Find a texture</span>
                <input
                  id="find-texture"
                  type="search"
                  placeholder="Find: cornet, hymn, trio …"
                  value={words}
                  onChange={(event) => setWords(event.target.value)}
                />
              </label>
            </div>
          </div>
          <p className="sr" role="status">
            {found ? `${found.length} textures found` : ""}
          </p>
          {found?.length === 0 && (
            <p className="none">
              Nothing in the catalogue is like “{asked}”. Try what the hands do: <i>melody</i>, <i>chorus</i>,{" "}
              <i>echo</i>.
            </p>
          )}
          {found
            ? found.length > 0 && (
                <TextureGroup head="Found" textures={found} chosen={section.texture} onChoose={choose} named />
              )
            : groupsFor(school).map(({ tradition, textures }) => (
                <TextureGroup
                  key={tradition}
                  head={headOf(tradition, school)}
                  textures={textures}
                  chosen={section.texture}
                  onChoose={choose}
                />
              ))}
        </section>
      </main>
      <Chosen manner={mannerWords(section.tradition)} />
    </>
  );
}

interface TextureGroupProps {
  readonly head: string;
  readonly textures: readonly Texture[];
  readonly chosen: string | null;
  readonly onChoose: (texture: Texture) => void;
  /** Says of each to which school it belongs: among things found they stand mixed. */
  readonly named?: boolean;
}

function TextureGroup({ head, textures, chosen, onChoose, named = false }: TextureGroupProps) {
  return (
    <>
      <h2 className="cap gh">{head}</h2>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a grid of equal rows in every browser. */}
      <div className="grid" role="group" aria-label={head}>
        {textures.map((texture) => (
          <button
            type="button"
            className="tx"
            key={texture.id}
            aria-pressed={texture.id === chosen}
            onClick={() => onChoose(texture)}
          >
            <Diagram parts={texture.parts} />
            <span className="tn">{texture.title}</span>
            <span className="note quiet">
              {named && <span className="b">{texture.traditions.map((each) => SCHOOL_WORDS[each]).join(", ")}. </span>}
              {texture.plain}
            </span>
          </button>
        ))}
      </div>
    </>
  );
}
