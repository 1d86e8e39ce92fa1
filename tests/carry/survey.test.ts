import { describe, expect, test } from "vitest";
import { labelOf } from "../../shared-model/cards/label.ts";
import { observationsOf } from "../../shared-model/carry/observations.ts";
import { byLevel, type SurveyedSchool, surveyingOrgan, surveyOrgan } from "../../shared-model/carry/organ-survey.ts";
import { bestFrom } from "../../shared-model/carry/patient-search.ts";
import { LEVELS, type SurveyedTexture, survey, surveying } from "../../shared-model/carry/survey.ts";
import { schoolVerdict } from "../../shared-model/carry/survey-text.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { sectionOf } from "../../shared-model/music/section.ts";
import { type Texture, TRADITIONS, type Tradition } from "../../shared-model/music/texture.ts";
import { textureFor } from "../../shared-model/music/textures/catalogue.ts";
import { organFrom } from "../../shared-model/rules/example-organ.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { demoOrgan } from "../instruments/demo-organs.ts";
import { randomInstrument } from "../instruments/random-instruments.ts";
import { publishedInstruments } from "../published/published-cases.ts";

const published = (id: string): Instrument => {
  const found = publishedInstruments().get(id);
  if (!found) throw new Error(`No organ is called ${id}.`);
  return found.instrument;
};
const surveyOf = (instrument: Instrument, ...traditions: readonly Tradition[]) =>
  survey(instrument, { traditions, labelOf });
const levelsOf = (some: readonly SurveyedTexture[]) =>
  Object.fromEntries(some.map(({ texture, level }) => [texture.id, level]));

describe("a four-keyboard French organ of the 18th century", () => {
  const organ = published("stmaximin-1774");

  test("is at home in the French classical catalogue", () => {
    const some = surveyOf(organ, "french-classical");
    const { standing, text, notPossible } = schoolVerdict("french-classical", some);
    expect([standing, notPossible]).toEqual(["at home", 1]);
    // Petits oiseaux wants a high flute beside the nazard, which no keyboard here has.
    expect(text).toContain("Out of reach: Petits oiseaux.");
    expect(levelsOf(some)).toMatchObject({
      "plein-jeu": "well",
      "grand-jeu": "well",
      "recit-de-cromorne": "well",
      "tierce-en-taille": "well",
      "dialogue-with-echo": "well",
    });
  });

  test("lacks the strings and the swell of the symphonic one", () => {
    const some = surveyOf(organ, "french-symphonic");
    expect(schoolVerdict("french-symphonic", some).standing).not.toBe("at home");
    const levels = levelsOf(some);
    expect(levels).toMatchObject({ "grand-choeur-symphonic": "not-possible", "fonds-8": "not-possible" });
    expect(levels["voix-celeste"]).not.toBe("well");
    const missing = some.flatMap(({ lacking }) => lacking.map(({ what }) => what));
    expect(missing).toContain("harmonic flute 8");
    expect(missing).toContain("celeste 8");
  });
});

describe("a twelve-register Italian organ", () => {
  const organ = published("brescia-duomo-1608");
  const italian = surveyOf(organ, "italian-renaissance");

  test("does ripieno and elevation, and no fiffaro without its beating rank", () => {
    expect(levelsOf(italian)).toMatchObject({ ripieno: "well", elevation: "well", fiffaro: "not-possible" });
    expect(schoolVerdict("italian-renaissance", italian).standing).toBe("at home");
  });

  test("does no trio, for want of a second keyboard, and says so", () => {
    const trio = surveyOf(organ, "neutral").find(({ texture }) => texture.id === "trio");
    expect(trio?.level).toBe("not-possible");
    expect(trio?.why).toContain("the hands need 2 keyboards, of which there is 1");
    expect(trio?.label).toBeNull();
  });

  test("does nothing for two keyboards of which neither would be heard apart", () => {
    const german = levelsOf(surveyOf(organ, "north-german"));
    expect(german).toMatchObject({ bicinium: "not-possible", "echo-fantasia": "not-possible" });
    expect(levelsOf(surveyOf(organ, "neutral"))).toMatchObject({ dialogue: "not-possible" });
  });

  test("says that its mixture is of single rows, and out of reach what is, without a word against itself", () => {
    const told = observationsOf(organ).map(({ text }) => text);
    expect(told[0]).toBe("One keyboard with undivided stops: the hands have one sound at a time.");
    expect(told[1]).toBe("Manuale: principals 8, 4, 2, 1 1/3, 1, 2/3, 1/2, 1/3, the mixture in single rows.");
    expect(schoolVerdict("italian-renaissance", italian).text).toBe(
      "At home. Out of reach: Fiffaro. Missed most: no celeste 8 (Fiffaro).",
    );
  });

  test("is not told of compromises where none of the music needs one", () => {
    const served = (level: SurveyedTexture["level"]) => italian.find((each) => each.level === level) as SurveyedTexture;
    const [well, not] = [served("well"), served("not-possible")];
    const verdict = (...some: readonly SurveyedTexture[]) => schoolVerdict("italian-renaissance", some).text;
    expect(verdict(well, well, not)).toMatch(/^Much of it[.;]/);
    expect(verdict(well, { ...not, level: "compromise" }, not)).toMatch(/^Much of it, with compromises[.;]/);
  });

  test("has a pedal that plays the manual's stops, and no reed", () => {
    const told = observationsOf(organ).map(({ text }) => text);
    expect(told).toContain("The pedal has no stop of its own and plays those of the Manuale.");
    expect(told).toContain(
      "No reed and no mutation for a solo: a tune is told from its accompaniment by keyboard, pitch or strength alone.",
    );
  });
});

describe("the survey", () => {
  test("can be watched and stopped", () => {
    const steps = surveying(demoOrgan("torrevana"), { traditions: ["italian-renaissance"], labelOf });
    const first = steps.next().value;
    expect(first).toMatchObject({ done: 1, of: 9, surveyed: { texture: { id: "ripieno" }, level: "well" } });
    steps.return();
    expect(steps.next().done).toBe(true);
  });

  test("of an organ is told school by school, can be stopped and gone on with, and is the same as all at once", () => {
    const [organ, options] = [
      demoOrgan("torrevana"),
      { traditions: ["spanish", "italian-renaissance"], labelOf },
    ] as const;
    const steps = surveyingOrgan(organ, options);
    const told: string[] = [];
    let step = steps.next();
    for (let done = 1; !step.done; done++, step = steps.next()) {
      expect(step.value.done).toBe(done);
      if (step.value.school) told.push(`${step.value.school.tradition} ${done} of ${step.value.of}`);
    }
    expect(told).toEqual(["spanish 8 of 17", "italian-renaissance 17 of 17"]);
    expect(step.value).toEqual(surveyOrgan(organ, options));
    const [school] = step.value.schools;
    expect(byLevel(school as SurveyedSchool).flatMap(({ textures }) => textures)).toHaveLength(8);
    expect(structuredClone(step.value)).toEqual(step.value);
  });

  test("names the stop that stands in and, where nothing serves, the nearest way round", () => {
    const some = surveyOf(demoOrgan("sallowby"), "english-18c");
    const hautboy = some.find(({ texture }) => texture.id === "cremona-solo");
    expect([hautboy?.level, hautboy?.why.length]).toEqual(["compromise", 1]);
    const trumpet = some.find(({ texture }) => texture.id === "trumpet-voluntary");
    expect(trumpet?.level).toBe("not-possible");
    expect(trumpet?.why[0]).toMatch(/^no trumpet 8 for the /);
    expect(trumpet?.instead?.texture.traditions).toEqual(["neutral"]);
    expect(trumpet?.instead?.label).not.toBe("");
  });

  test.each([
    ["grand-choeur", "french-symphonic"],
    ["full-romantic", "german-romantic"],
  ] as const)("proves the best of a full chorus on a large organ: %s, %s", (id, tradition) => {
    const section = sectionOf(textureFor(id, tradition) as Texture, { tradition });
    const { best, exact } = bestFrom(prepare(demoOrgan("aldrunburg"), section), 5000);
    expect([exact, best?.judgement.forbidden, best?.judgement.idle]).toEqual([true, false, []]);
    expect(best?.judgement.score).toBeGreaterThanOrEqual(5000);
  });

  test("knows when it has not looked at everything, and then shows a sound registration", () => {
    const tradition = "french-symphonic";
    const section = sectionOf(textureFor("grand-choeur", tradition) as Texture, { tradition });
    const { best, exact } = bestFrom(prepare(demoOrgan("aldrunburg"), section), 5000, 1_000);
    expect([exact, best?.judgement.forbidden, best?.judgement.idle]).toEqual([false, false, []]);
    expect(best?.judgement.score).toBeGreaterThanOrEqual(5000);
  });

  test("of an organ that the hands cannot play says that, and no stop that it lacks", () => {
    const pedal = organFrom("Pedal: Subbass 16, Gedacktbass 8, Choralbass 4, Fagott 16", [], []).instrument;
    const silent = organFrom("Manual: Gedackt 8 off, Flöte 4 off | Pedal: Subbass 16", [], []).instrument;
    for (const [organ, cause] of [
      [pedal, "there is no keyboard for the hands"],
      [silent, "no stop for the hands can be drawn"],
    ] as const) {
      for (const tradition of TRADITIONS) {
        const some = surveyOf(organ, tradition);
        expect(new Set(some.map(({ level, why, instead }) => `${level}: ${why.join()}, ${instead}`))).toEqual(
          new Set([`not-possible: ${cause}, null`]),
        );
        expect(schoolVerdict(tradition, some).text).toBe(`None of it: ${cause}.`);
      }
    }
    expect(observationsOf(pedal).map(({ text }) => text)).toEqual([
      "There is no keyboard for the hands: only the feet can play.",
      "The pedal stands by itself: it has flues of 16, 8 and 4 foot and a reed.",
      "Nothing is enclosed: the sound swells only by stops and keyboards.",
    ]);
    expect(observationsOf(silent)[0]?.text).toBe("No stop for the hands can be drawn.");
  });

  test("of one keyboard without a pedal has no tune in the feet, misses the second keyboard most, and tells what is nearest", () => {
    const { instrument } = organFrom("Manual: Open Diapason 8, Stopped Diapason 8, Principal 4, Flute 4", [], []);
    const some = surveyOf(instrument, "neutral");
    const of = (id: string) => some.find(({ texture }) => texture.id === id);
    expect([of("melody-in-pedal")?.level, of("melody-in-pedal")?.why]).toEqual([
      "not-possible",
      ["there is no pedal for the cantus firmus"],
    ]);
    expect(schoolVerdict("neutral", some).text).toContain(
      "Missed most: no second keyboard (Melody over an accompaniment and 10 others); ",
    );
    expect(of("trio")?.lacking[0]).toEqual({ who: "hands", what: "second keyboard", way: null });
    expect(of("melody-over-accompaniment")?.instead).toMatchObject({
      texture: { id: "melody-over-accompaniment" },
      label: expect.stringMatching(/all parts alike$/),
    });
    expect(of("hymn-verse")?.why[0]).toBe("no principal 2 for the chorus");
  });

  test("where nothing serves, what the organ has instead is not said to do", () => {
    const { instrument } = organFrom("I: Gedackt 8, Flöte 4, Oboe 8 | II: Gedackt 8 | Pedal: Subbass 16", [], []);
    const [tuba] = surveyOf(instrument, "english-cathedral").filter(({ texture }) => texture.id === "solo-tuba");
    expect(tuba?.level).toBe("not-possible");
    expect(tuba?.why.join("; ")).not.toContain("can stand in");
    expect(tuba?.why.join("; ")).toMatch(/no principal 8 for the accompaniment, only stopped flute 8/);
  });

  test("where no stop is missing but a coupler, the music itself without it is nearest", () => {
    const { instrument } = organFrom(
      "Grand-Orgue: Montre 8, Bourdon 8, Flûte harmonique 8, Gambe 8, Prestant 4 | Récit [box]: Flûte 8, Viole de gambe 8, Hautbois 8, Voix céleste 8 | Pédale: Soubasse 16, Flûte 8",
      [],
      [],
    );
    const fonds = surveyOf(instrument, "french-symphonic").find(({ texture }) => texture.id === "fonds-8");
    expect([fonds?.level, fonds?.lacking]).toEqual(["not-possible", []]);
    expect(fonds?.why[0]).toMatch(/coupler/);
    expect(fonds?.instead).toMatchObject({ texture: { id: "fonds-8" }, label: expect.stringMatching(/^Fonds/) });
  });

  test("says of a crescendo how little can join", () => {
    const { instrument } = organFrom("Manual: Gedackt 8, Flöte 4", [], []);
    const crescendo = surveyOf(instrument, "neutral").find(({ texture }) => texture.ladder);
    expect([crescendo?.level, crescendo?.why]).toEqual([
      "not-possible",
      ["only 2 things can join, a stop or the opening of a box each"],
    ]);
  });
});

/** The organ without one of its stops. */
const without = (instrument: Instrument, id: string): Instrument => ({
  ...instrument,
  divisions: instrument.divisions.map((each) => ({ ...each, stops: each.stops.filter((stop) => stop.id !== id) })),
});

// Levels are absolute, so an organ with one stop more serves nothing worse.
test.each([3, 14, 159, 2653])("one more stop makes no level worse: random organ %i", (seed) => {
  const manuals = 1 + (seed % 3);
  const organ = randomInstrument(seed, { stops: 8, manuals, pedal: true, couplersAtMost: 2, manner: "baroque" });
  const rank = (instrument: Instrument) =>
    surveyOf(instrument, ...TRADITIONS).map(({ texture, tradition, level }) => ({
      what: `${tradition} ${texture.id}`,
      rank: LEVELS.indexOf(level),
    }));
  const whole = rank(organ);
  const ids = organ.divisions.flatMap(({ stops }) => stops.map(({ id }) => id));
  for (const id of [ids[seed % ids.length] as string, ids[(seed + 3) % ids.length] as string]) {
    const fewer = rank(without(organ, id));
    expect(whole.filter((each, at) => each.rank > (fewer[at]?.rank ?? 0)).map(({ what }) => `${what}, ${id}`)).toEqual(
      [],
    );
  }
});

test("a school of which hardly anything can be played is not said to be weak in what it is hardly anything of", () => {
  const { text } = schoolVerdict("english-cathedral", surveyOf(demoOrgan("alcorava"), "english-cathedral"));
  expect(text).toMatch(/^Hardly any of it but its quiet movements\. /);
  expect(text).not.toMatch(/best in|weak in/);
});

describe("what is noticed", () => {
  test("on a unit organ: which knobs draw one row, and what they rob", () => {
    const shared = observationsOf(demoOrgan("weidenquell")).filter(({ about }) => about === "shared pipes");
    expect(shared).toHaveLength(3);
    expect(shared.map(({ text }) => text)).toContain(
      "One row of pipes serves Salicional 8, Salicet 4 (Positiv). Two of them drawn together rob each other: an octave " +
        "held on the keys loses a note.",
    );
    expect(shared[1]?.text).toContain("an octave or a twelfth held on the keys loses a note");
  });

  test("on one keyboard: divided stops and where they meet, a beating rank, a tremulant", () => {
    const { instrument } = organFrom(
      "Manual: Principale 8 bass, Principale 8 treble, Ottava 4, Voce umana 8 treble",
      [],
      ["all"],
    );
    const told = new Map(observationsOf(instrument).map(({ about, text }) => [about, text]));
    expect(told.get("keyboards")).toBe("One keyboard: two sounds at once only by its divided stops.");
    expect(told.get("halves")).toBe(
      "Manual, divided stops, the treble from C4 up: bass Principale 8; treble Principale 8, Voce umana 8.",
    );
    expect(told.get("beating")).toBe(
      "Beating with another stop: Voce umana 8 treble (nothing below C4) on the Manual.",
    );
    expect(told.get("tremulants")).toBe("Tremulant: the whole organ.");
  });

  test("a Cornet of the treble divides no keyboard, and is the one thing that gives a second sound", () => {
    const { instrument } = organFrom("Manual: Principal 8, Gedackt 8, Cornet III treble", [], []);
    const told = observationsOf(instrument);
    expect(told[0]?.text).toBe("One keyboard: two sounds at once only by Cornet III treble.");
    expect(told.map(({ about }) => about)).not.toContain("halves");
  });

  test("that no coupler is named, where one could be", () => {
    const named = (stops: string, couplers: readonly string[]) =>
      observationsOf(organFrom(stops, [...couplers], []).instrument).filter(({ about }) => about === "couplers");
    expect(named("Great: Open Diapason 8 | Pedal: Bourdon 16", []).map(({ text }) => text)).toEqual([
      "No coupler is named: nothing is counted that couplers would bring. A list may have left them out; ask.",
    ]);
    expect(named("Great: Open Diapason 8 | Pedal: Bourdon 16", ["Great to Pedal"])).toEqual([]);
    expect(named("Manual: Open Diapason 8", [])).toEqual([]);
  });

  test("a principal alone is one, and an organ of two keyboards is not told how many", () => {
    const { instrument } = organFrom("Great: Open Diapason 8 | Swell: Gedackt 8", [], []);
    const told = observationsOf(instrument);
    expect(told[0]?.text).toBe("Great: principal 8, no mixture.");
    expect(told.map(({ about }) => about)).not.toContain("keyboards");
  });

  test("a chorus with a gap, a cornet that begins at middle C, a reed that only a coupler brings, a box, a dead stop", () => {
    const { instrument } = organFrom(
      "Great: Open Diapason 8, Flute 4, Fifteenth 2, Mixture III, Cornet V from C4 | Swell [box]: Oboe 8, Gedackt 8 off, Viola 8 | Pedal: Bourdon 16",
      ["Great to Swell", "Great to Pedal"],
      [],
    );
    const told = new Map(observationsOf(instrument).map(({ about, text }) => [about, text]));
    expect(told.get("chorus")).toBe("Great: principals 8 2 with Mixture III; no principal 4 (Flute 4 must serve).");
    expect(told.get("couplers")).toBe("Swell: only a coupler brings a mixture (from the Great).");
    expect(told.get("boxes")).toBe("Enclosed: Swell. In the open: Great and Pedal.");
    expect(told.get("solo")).toBe("Voices for a solo: Cornet V (nothing below C4) on the Great; Oboe 8 on the Swell.");
    expect(told.get("pedal")).toBe(
      "Of its own the pedal has no flue of 8 foot and no flue of 4 foot (by coupler from the Great); no reed (nor does a " +
        "coupler bring one).",
    );
    expect(told.get("off")).toBe("Not counted, since marked off: Gedackt 8 (Swell).");
  });
});
