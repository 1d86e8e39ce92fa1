import { describe, expect, test } from "vitest";
import { judge } from "../../shared-model/judging/judge.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import { TEXTURES } from "../../shared-model/music/textures/catalogue.ts";
import { registrationPicture } from "../../shared-model/pictures/registration-picture.ts";
import { propose } from "../../shared-model/propose/propose.ts";
import { consoleOfExample } from "../../shared-model/rules/example.ts";
import type { Example } from "../../shared-model/rules/rule.ts";
import { DEMO_ORGANS, demoOrgan } from "../instruments/demo-organs.ts";

function drawn(example: Example, label = "A registration"): string {
  const { instrument, section, state, placings } = consoleOfExample(example);
  const problem = prepare(instrument, section);
  const judgement = judge(problem, state, placings);
  if (!judgement) throw new RangeError("The keyboards are coupled in a ring.");
  return registrationPicture(problem, judgement, label);
}

const SOLO: Example = {
  organ: "Swell: Oboe 8 | Great: Gedackt 8, Flöte 4 | Pedal: Subbass 16, Gedackt 8",
  plays: "melody on Swell, accompaniment on Great, bass on Pedal",
};

const SHOWN: ReadonlySet<string> = new Set(["melody-over-accompaniment", "trio", "two-voices", "hymn-verse"]);

/** What is wrong with a picture as XML or as ink on paper. */
function faultsOf(svg: string): readonly string[] {
  const faults: string[] = [];
  const open: string[] = [];
  for (const [tag, close, name, end] of svg.matchAll(/<(\/?)([a-z]+)(?:\s+[a-zA-Z0-9:-]+="[^"<>]*")*\s*(\/?)>/g)) {
    if (close) {
      if (open.pop() !== name) faults.push(`${tag} closes nothing`);
    } else if (!end) open.push(name as string);
  }
  if (open.length > 0) faults.push(`never closed: ${open.join(" ")}`);
  if (/</.test(svg.replace(/<\/?[a-z]+(?:\s+[a-zA-Z0-9:-]+="[^"<>]*")*\s*\/?>/g, ""))) faults.push("a bare <");
  if (/&(?!amp;|lt;|gt;|quot;)/.test(svg)) faults.push("a bare &");
  if (/NaN|undefined|null|Infinity/.test(svg)) faults.push("a number that is none");
  for (const [, colour] of svg.matchAll(/(?:fill|stroke)="([^"]+)"/g)) {
    if (!/^(?:none|#([0-9a-f])\1{2})$/.test(colour as string)) faults.push(`a colour: ${colour}`);
  }
  return faults;
}

describe("the picture of a registration", () => {
  test("says in words what it shows", () => {
    const description = /<desc[^>]*>([^<]*)</.exec(drawn(SOLO))?.[1];
    expect(description).toBe(
      "feet, bass sounds 16 and 8 with Subbass 16 and Gedackt 8. left, accompaniment sounds 8 and 4 with Gedackt 8 and Flöte 4. " +
        "right, melody sounds 8 with Oboe 8. The melody is about as loud as the accompaniment, each by itself; together most of it is heard. " +
        "Strengths and colours are guessed from the names of the stops; nobody has listened yet.",
    );
  });

  test("is well-formed ink on paper, the same each time", () => {
    const svg = drawn(SOLO);
    expect(faultsOf(svg)).toEqual([]);
    expect(drawn(SOLO)).toBe(svg);
    expect(svg).toMatch(/^<svg [^>]*role="img"[^>]*aria-labelledby="picture-title picture-desc"/);
  });

  test("puts each sign on its rung, the rungs low at the foot", () => {
    const svg = drawn({ organ: "Swell: Gedackt 8, Nasat 2 2/3, Quintadena 16", plays: "melody on Swell" });
    const rung = (name: string): number =>
      Number(new RegExp(`<text x="[^"]*" y="([^"]*)"[^>]*>${name}</text>`).exec(svg)?.[1]) - 5;
    const heights = ["octave below", "unison", "octave", "twelfth", "fifteenth"].map(rung);
    expect(heights).toEqual([...heights].sort((a, b) => b - a));
    // The lozenge of a mutation stands on its highest point.
    expect(svg).toMatch(new RegExp(`<polygon points="[0-9.]+,${rung("twelfth") - 6} `));
    expect([...svg.matchAll(/font-weight="bold">(?:octave below|unison|octave|twelfth|fifteenth)</g)]).toHaveLength(3);
  });

  test("shows the pitches inside a compound", () => {
    const description = /<desc[^>]*>([^<]*)</.exec(drawn({ organ: "Récit: Cornet V", plays: "melody on Récit" }))?.[1];
    expect(description).toContain("sounds 8, 4, 2 2/3, 2 and 1 3/5 with Cornet V");
  });

  test("survives names that are no names for XML", () => {
    const svg = drawn(SOLO, `Flöte <8> & "Oboe"\u0000`);
    expect(faultsOf(svg)).toEqual([]);
    expect(svg).toContain("Flöte &lt;8&gt; &amp; &quot;Oboe&quot;");
  });

  test.each(DEMO_ORGANS)("can be drawn for solo, trio, dialogue and chorus on %s", (name) => {
    const instrument = demoOrgan(name);
    const faults = new Set<string>();
    for (const texture of TEXTURES.filter((each) => SHOWN.has(each.id))) {
      const problem = prepare(instrument, sectionOf(texture, {}));
      for (const { judgement } of propose(problem, { count: 1, every: true }).proposals) {
        for (const fault of faultsOf(registrationPicture(problem, judgement, texture.title))) {
          faults.add(`${texture.id}: ${fault}`);
        }
      }
    }
    expect([...faults]).toEqual([]);
  });
});
