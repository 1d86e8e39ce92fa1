import { DYNAMICS, type Texture, TRADITIONS, type Tradition } from "../../shared-model/music/texture.ts";
import { TEXTURES, texturesOf } from "../../shared-model/music/textures/catalogue.ts";
import { keyText } from "../../shared-model/pitch/key.ts";
import { oneOf, readOptions, type Usage } from "./options.ts";
import { wrapped } from "./plain-text.ts";
import { DONE, line, type Terminal } from "./terminal.ts";

export const TEXTURES_USAGE: Usage = {
  command: "textures",
  line: "registrant textures [--tradition T] [--json]",
  does: "Lists the textures that can be registered, all or those of one tradition.",
  options: { tradition: { value: "a tradition" }, json: "flag" },
  operands: [],
};

const textureJson = ({ id, title, plain, traditions, ladder, parts }: Texture) => ({
  id,
  title,
  plain,
  traditions,
  ladder,
  parts: parts.map((part) => ({
    part: part.id,
    role: part.role,
    hands: part.hands,
    low: keyText(part.low),
    high: keyText(part.high),
    sounding: part.sounding,
    optional: part.optional,
  })),
});

const textureLines = ({ id, title, plain, parts }: Texture): readonly string[] => [
  id,
  ...wrapped(`${title}. ${plain}`, "    "),
  ...wrapped(`Parts: ${parts.map((part) => (part.optional ? `[${part.id}]` : part.id)).join(", ")}`, "    "),
];

const grouped = (tradition: Tradition | null): readonly (readonly [Tradition, readonly Texture[]])[] =>
  (tradition === null ? TRADITIONS : ([...new Set<Tradition>([tradition, "neutral"])] as const)).map((each) => [
    each,
    texturesOf(each),
  ]);

/** `registrant textures`. */
export function texturesCommand(words: readonly string[], terminal: Terminal): number {
  const given = readOptions(TEXTURES_USAGE, words);
  const said = given.value("tradition");
  const tradition = said === undefined ? null : oneOf("tradition", said, TRADITIONS);
  if (given.has("json")) {
    const shown = tradition === null ? TEXTURES : [...texturesOf(tradition)];
    terminal.stdout.write(line(JSON.stringify({ textures: shown.map(textureJson) }, null, 2)));
    return DONE;
  }
  const lines = grouped(tradition).flatMap(([name, textures]) => [
    name === "neutral" ? "NEUTRAL (serve any tradition)" : name.toUpperCase(),
    "",
    ...textures.flatMap(textureLines),
    "",
  ]);
  const foot = `Parts in brackets can be left out. Traditions: ${TRADITIONS.join(", ")}. Dynamics: ${DYNAMICS.join(" ")}.`;
  terminal.stdout.write(line([...lines, ...wrapped(foot)].join("\n")));
  return DONE;
}
