import { cueCard } from "../../shared-model/cards/cue-card.ts";
import { cueCardText } from "../../shared-model/cards/cue-card-text.ts";
import { labelsOf } from "../../shared-model/cards/labels.ts";
import { registrationPages } from "../../shared-model/cards/pages.ts";
import { sparesOf } from "../../shared-model/cards/spares.ts";
import { sectionOfMusic } from "../../shared-model/files/written-section.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import type { Problem } from "../../shared-model/judging/problem.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import { DYNAMICS, type Section, TRADITIONS } from "../../shared-model/music/texture.ts";
import { nearestTextureIds, textureById, textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { registrationDrawing } from "../../shared-model/pictures/registration-picture.ts";
import { lackingFor } from "../../shared-model/propose/lacking.ts";
import { isLadder, ladder } from "../../shared-model/propose/ladder.ts";
import { missingMeans } from "../../shared-model/propose/missing.ts";
import { COLOUR_WINDOW, isFarBehind, propose, USUAL_COUNT } from "../../shared-model/propose/propose.ts";
import { guessWords } from "./guess-words.ts";
import { type Given, oneOf, readOptions, type Usage, wholeNumber } from "./options.ts";
import { readMusic, readOrgan, textureIdOf } from "./organ.ts";
import { drawPicture, PICTURE_OPTION, pictureOrder } from "./picture.ts";
import { either, opposite, wrapped } from "./plain-text.ts";
import { DRAWN_OPTION, PRINT_OPTIONS, PRINT_USAGE, printCards, printOrder } from "./print-cards.ts";
import { decimal, type ListedState, proposalJson } from "./proposal-json.ts";
import { reasonLines, registrationLines } from "./registration-text.ts";
import { DONE, line, Refusal, type Terminal, WRONG } from "./terminal.ts";

export const PROPOSE: Usage = {
  command: "propose",
  line:
    "registrant propose ORGAN.yaml (--texture ID | --section F.yaml) [--tradition T] [--dynamic pp..ff] " +
    `[--count N] [--every] [--reasons] [--card N ${PRINT_USAGE} [--with-picture]] [--picture F.svg] [--json]`,
  does: "Ranks registrations for a texture or a section, each with its reasons.",
  options: {
    texture: { value: "the id of a texture" },
    section: { value: "a section file" },
    tradition: { value: "a tradition" },
    dynamic: { value: "a dynamic" },
    count: { value: "a number" },
    every: "flag",
    reasons: "flag",
    card: { value: "the number of a proposal" },
    ...PRINT_OPTIONS,
    ...DRAWN_OPTION,
    ...PICTURE_OPTION,
    json: "flag",
  },
  operands: ["ORGAN.yaml"],
};

/** More than anyone reads. */
const MOST = 500;

/** Reasons shown for and against each proposal, unless all are asked for. */
const SHOWN = 3;

function sectionAsked(given: Given, terminal: Terminal): Section {
  const [id, file] = [given.value("texture"), given.value("section")];
  if ((id === undefined) === (file === undefined)) {
    throw new Refusal(
      id === undefined
        ? `propose needs --texture with the id of a texture ("registrant textures" lists them) or --section with a file.`
        : "Give --texture or --section, not both.",
    );
  }
  const said = given.value("tradition");
  const tradition = said === undefined ? null : oneOf("tradition", said, TRADITIONS);
  const loud = given.value("dynamic");
  const dynamic = loud === undefined ? null : oneOf("dynamic", loud, DYNAMICS);
  if (file !== undefined) {
    const music = readMusic(file, terminal);
    return sectionOfMusic({
      ...music,
      tradition: tradition ?? music.tradition,
      dynamic: dynamic ?? music.dynamic,
    });
  }
  const texture = textureById(id ?? "");
  if (!texture) {
    const nearest = nearestTextureIds(id ?? "");
    const hint = nearest.length > 0 ? `Did you mean ${either(nearest)}?` : `"registrant textures" lists them.`;
    throw new Refusal(`There is no texture "${id}". ${hint}`);
  }
  const options = { ...(tradition && { tradition }), ...(dynamic && { dynamic }) };
  return sectionOf((tradition && textureFor(texture.id, tradition)) ?? texture, options);
}

/** `melody-over-accompaniment, north-german, mf`: what is registered, in short. */
export function sectionWords(section: Section): string {
  const texture = section.texture ?? `own parts (${section.parts.map((part) => part.id).join(", ")})`;
  return [section.name, texture, section.tradition, section.dynamic, section.tempo]
    .filter((each) => each !== null)
    .join(", ");
}

/** Where what follows is listed because a list has eight places. */
const FAR_BEHIND = `More than ${decimal(COLOUR_WINDOW)} points behind the best, and no answers of the same worth:`;

function proposalLines(problem: Problem, listed: ListedState, all: boolean): readonly string[] {
  const { place, label, state, judgement } = listed;
  const head = `${String(place).padStart(2)}  `;
  const ranked = judgement.reasons.toSorted((a, b) => b.points - a.points);
  const best = ranked.filter((each) => each.points > 0).slice(0, SHOWN);
  const worst = ranked.filter((each) => each.points < 0).slice(-SHOWN);
  return [
    ...opposite(`${head}${label}`, String(decimal(judgement.score))),
    ...registrationLines(problem, state, judgement, "    ", sparesOf(problem, state.drawn)),
    ...reasonLines(all ? ranked : [...best, ...worst], "    ", all),
    "",
  ];
}

/** `registrant propose`. */
export async function proposeCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  const given = readOptions(PROPOSE, words);
  const order = printOrder(given, terminal);
  const picture = pictureOrder(given, terminal);
  const count = wholeNumber(given, "count", MOST);
  const card = wholeNumber(given, "card", MOST);
  if (order && card === null) throw new Refusal("--pdf prints a card; say with --card which proposal it is for.");
  if (card !== null && given.has("json")) throw new Refusal("Give --card or --json, not both.");
  const section = sectionAsked(given, terminal);
  const instrument = readOrgan(given.operands[0] ?? "", terminal);
  const problem = prepare(instrument, section);
  const answer = isLadder(problem)
    ? null
    : propose(problem, { count: Math.max(count ?? USUAL_COUNT, card ?? 0), every: given.has("every") });
  const states =
    answer === null
      ? ladder(problem)
      : answer.proposals.map(({ place, found, judgement }) => ({ place, state: found.state, judgement }));
  if (answer?.proven === false) {
    const words =
      "So many registrations come out about equally good here that going through all of them would take too long. These " +
      "are good ones; that none is better has not been proved.";
    terminal.stderr.write(line(wrapped(words).join("\n")));
  }
  const labels = labelsOf(
    problem,
    states.map((each) => each.judgement.parts),
  );
  const listed = states.map(
    ({ place, state, judgement }, index): ListedState => ({ place, label: labels[index] ?? "", state, judgement }),
  );
  const [best] = listed;
  const asked = listed[(card ?? 1) - 1];
  if (card !== null && best && !asked) {
    throw new Refusal(`There is no proposal ${card}; there ${listed.length === 1 ? "is" : "are"} ${listed.length}.`);
  }
  const drawn = picture !== null && asked ? drawPicture(picture, problem, asked, given.has("replace"), terminal) : null;
  const missing = best ? (isLadder(problem) ? [] : lackingFor(problem, best.judgement)) : missingMeans(problem);
  const status = listed.length > 0 ? DONE : WRONG;
  if (given.has("json")) {
    const shown = {
      instrument: instrument.name,
      texture: textureIdOf(section),
      tradition: section.tradition,
      proposals: listed.map((each) => proposalJson(problem, each)),
      missing,
    };
    terminal.stdout.write(line(JSON.stringify(shown, null, 2)));
    return status;
  }
  if (listed.length === 0) {
    const head = `Nothing on ${instrument.name} serves for ${sectionWords(section)}.`;
    terminal.stdout.write(line([...wrapped(head), ...missing.flatMap(({ text }) => wrapped(text, "- "))].join("\n")));
    return status;
  }
  if (drawn !== null) terminal.stdout.write(line(drawn));
  if (card !== null && asked) {
    const cue = cueCard(problem, asked.state, asked.judgement);
    const drawing = given.has("with-picture") ? registrationDrawing(problem, asked.judgement, asked.label) : null;
    if (order) await printCards(order, (form) => registrationPages(cue, form, drawing), terminal);
    else terminal.stdout.write(cueCardText(cue));
    return status;
  }
  const far = isLadder(problem)
    ? undefined
    : listed.find(({ judgement }) => isFarBehind(judgement.score, listed[0]?.judgement.score ?? 0));
  const lines = [
    ...wrapped(`${instrument.name}: ${sectionWords(section)}`),
    "",
    ...missing.flatMap(({ text }) => wrapped(text)),
    ...(missing.length > 0 ? [""] : []),
    ...listed.flatMap((each) => [
      ...(each === far ? [...wrapped(FAR_BEHIND), ""] : []),
      ...proposalLines(problem, each, given.has("reasons")),
    ]),
    ...(given.has("reasons")
      ? []
      : wrapped("Shown: what speaks most for each and against it. --reasons shows all, with sources.")),
    ...(given.has("every") || isLadder(problem)
      ? []
      : wrapped(
          `Order: the best of each colour and way first, unless more than ${decimal(COLOUR_WINDOW)} points behind ` +
            "the best; then by score. --every shows the plain order.",
        )),
    ...guessWords(
      problem,
      listed.flatMap(({ judgement }) => judgement.parts),
    ),
  ];
  terminal.stdout.write(line(lines.join("\n").trimEnd()));
  return status;
}
