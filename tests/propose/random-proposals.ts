import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import { DYNAMICS, type Section, TRADITIONS } from "../../shared-model/music/texture.ts";
import { TEXTURES, textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { type Proposal, propose } from "../../shared-model/propose/propose.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { Draw } from "../instruments/seeded-random.ts";
import { nonsenseIn } from "./nonsense.ts";

/** A random organ of 4 to 40 stops and a random section for it; the same for the same seed. */
export interface RandomCase {
  readonly seed: number;
  readonly stops: number;
  readonly section: Section;
  /** `seed 17: trio, spanish, mf, 23 stops`: how a report names it. */
  readonly title: string;
}

export function randomCase(seed: number): RandomCase {
  const draw = new Draw(seed * 2654435761 + 17);
  const stops = draw.between(4, 40);
  const texture = draw.one(TEXTURES);
  // Mostly a tradition that the texture belongs to; now and then one that has never heard of it.
  const tradition = draw.chance(0.7) ? draw.one(texture.traditions) : draw.one(TRADITIONS);
  const dynamic = draw.chance(0.3) ? draw.one(DYNAMICS) : null;
  const shaped = textureFor(texture.id, tradition) ?? texture;
  const section = sectionOf(shaped, { tradition, ...(dynamic === null ? {} : { dynamic }) });
  const title = `seed ${seed}: ${texture.id}, ${tradition}${dynamic === null ? "" : `, ${dynamic}`}, ${stops} stops`;
  return { seed, stops, section, title };
}

/** Everything that tells one list of proposals from another, in one text. */
const textOf = (proposals: readonly Proposal[]): string =>
  JSON.stringify(
    proposals.map(({ place, found }) => {
      const { score, state, placings, colour, order, signature } = found;
      const { drawn, couplers, tremulants, boxes } = state;
      const console = [[...drawn], [...couplers], [...tremulants], [...boxes]];
      return [place, score, signature, order, colour.id, placings, console];
    }),
  );

/**
 * How many sets of stops a list may cost here. Nearly every list is proved within it, and ten thousand organs end within
 * an hour or two; what must hold of a list holds whether it is proved the best or not.
 */
const PATIENCE = 20_000;
/** Of how many organs one is asked twice. */
const ASKED_TWICE = 5;

export interface RandomOutcome {
  /** A line for each fault, headed by the case; empty when all is as it must be. */
  readonly faults: readonly string[];
  readonly proposals: number;
  /** Whether the list is proved the best within the patience given. */
  readonly proven: boolean;
}

/** Proposes for a random case and looks for nonsense; now and then once more, with an organ and a problem made afresh. */
export function proposeAtRandom({ seed, stops, section, title }: RandomCase): RandomOutcome {
  const once = () => {
    const problem = prepare(randomInstrument(seed, { stops }), section);
    return { problem, ...propose(problem, { patience: PATIENCE }) };
  };
  const { problem, proposals, proven } = once();
  const faults = [...nonsenseIn(problem, proposals)];
  if (seed % ASKED_TWICE === 0 && textOf(once().proposals) !== textOf(proposals))
    faults.push("the same question has two answers");
  return { faults: faults.map((fault) => `${title}: ${fault}`), proposals: proposals.length, proven };
}
