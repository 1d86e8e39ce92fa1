import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { checkRegistration } from "../../shared-model/check/check.ts";
import { readRegistrationFile } from "../../shared-model/files/registration-file.ts";
import { troubleText } from "../../shared-model/files/trouble-words.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { partsFromHand, sectionOf } from "../../shared-model/music/section.ts";
import type { Texture } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { propose } from "../../shared-model/propose/propose.ts";
import { faultsOf, type PublishedCase } from "./published-case.ts";
import { type PublishedInstrument, publishedCases, publishedInstruments } from "./published-cases.ts";
import { registrationOf } from "./published-registration.ts";

/** What a state draws, in the cases' own words. */
function inCaseWords(organ: PublishedInstrument, drawn: ReadonlySet<string>): Map<string, Set<string>> {
  const words = new Map<string, Set<string>>();
  for (const [division, stops] of organ.stops) {
    words.set(division, new Set([...stops].filter(([, stop]) => drawn.has(stop.id)).map(([name]) => name)));
  }
  return words;
}

/** Why none of the first three proposals is what the source prescribes; empty when one is. */
function faultsOfProposals(published: PublishedCase): readonly string[] {
  const organ = publishedInstruments().get(published.instrument) as PublishedInstrument;
  const texture = textureFor(published.texture as string, published.tradition) as Texture;
  const section = sectionOf(texture, {
    tradition: published.tradition,
    ...(published.dynamic ? { dynamic: published.dynamic } : {}),
  });
  const { proposals } = propose(prepare(organ.instrument, section));
  const faults = proposals
    .slice(0, 3)
    .map((proposal) => faultsOf(published, inCaseWords(organ, proposal.found.state.drawn)));
  if (faults.some((each) => each.length === 0)) return [];
  const at = proposals.findIndex(
    (proposal) => faultsOf(published, inCaseWords(organ, proposal.found.state.drawn)).length === 0,
  );
  const words = proposals.slice(0, 3).map((proposal, index) => {
    const { judgement, found } = proposal;
    const parts = judgement.parts.map(
      (part) => `${part.placing.part}@${part.placing.keyboard}${part.placing.octave || ""}: ${part.heard.join(", ")}`,
    );
    return `#${index + 1} ${found.score} ${judgement.prescription?.id} ${parts.join(" | ")} [${[...found.state.couplers]}] => ${faults[index]?.join("; ")}`;
  });
  return [`met at ${at + 1}`, ...words];
}

describe("one of the first three proposals draws what the source prescribes", () => {
  for (const published of publishedCases().filter((each) => each.texture !== null)) {
    it(`${published.id} (${published.confidence})`, { timeout: 20_000 }, () => {
      expect(faultsOfProposals(published)).toEqual([]);
    });
  }
});

/** Error findings on the source's own registration; empty when the check accepts it. */
function errorsOn(published: PublishedCase): readonly string[] {
  const organ = publishedInstruments().get(published.instrument) as PublishedInstrument;
  const text = stringify(registrationOf(published, organ));
  const { registration, troubles } = readRegistrationFile(text, `${published.id}.yaml`, organ.instrument);
  if (!registration) return troubles.map((trouble) => troubleText(trouble));
  const texture = registration.texture === null ? null : textureFor(registration.texture, published.tradition);
  const section = texture
    ? sectionOf(texture, { tradition: published.tradition })
    : { ...EMPTY, tradition: published.tradition, parts: partsFromHand(registration.parts ?? []) };
  const checked = checkRegistration(prepare(organ.instrument, section), {
    state: registration.state,
    keyboards: registration.keyboards,
    octaves: registration.octaves,
  });
  if ("unplayable" in checked) return [checked.unplayable];
  return checked.findings.filter((each) => each.severity === "error").map((each) => `${each.rule}: ${each.text}`);
}
const EMPTY = { name: null, bars: null, texture: null, dynamic: null, tempo: null };

describe("the check finds no error in the source's own registration", () => {
  for (const published of publishedCases()) {
    it(`${published.id} (${published.confidence})`, () => {
      expect(errorsOn(published)).toEqual([]);
    });
  }
});
