import { describe, expect, test } from "vitest";
import { type CheckedRegistration, checkRegistration, type DrawnRegistration } from "../../shared-model/check/check.ts";
import { readInstrumentFile } from "../../shared-model/files/instrument-file.ts";
import { prepare } from "../../shared-model/judging/prepare.ts";
import { partsFromHand, sectionOf } from "../../shared-model/music/section.ts";
import type { Section, Texture } from "../../shared-model/music/texture.ts";
import { textureById } from "../../shared-model/music/textures/catalogue.ts";
import { propose } from "../../shared-model/propose/propose.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { DEMO_ORGANS, demoOrgan } from "../instruments/demo-organs.ts";

const ORGAN = `
registrant: instrument/1
name: Test organ
divisions:
  - {name: Great, kind: manual, keyboard: 1, stops: [Open Diapason 8, Stopped Diapason 8, Principal 4, Mixture III]}
  - {name: Swell, kind: manual, keyboard: 2, enclosed: true, stops: [Oboe 8, Salicional 8, {name: Trumpet, pitch: 8, off: ciphers on F#4}]}
  - {name: Pedal, kind: pedal, stops: [Bourdon 16, Bass Flute 8]}
couplers: [Swell to Great, Great to Pedal, Swell to Swell 4]
tremulants: [Swell]
`;

function organ(text = ORGAN): Instrument {
  const { instrument } = readInstrumentFile(text, "organ.yaml");
  if (!instrument) throw new Error("The organ of the test was not read.");
  return instrument;
}

const music = (id: string): Section => sectionOf(textureById(id) as Texture, {});

function drawn(stops: readonly string[], more: Partial<DrawnRegistration["state"]> = {}): DrawnRegistration {
  const state = { couplers: new Set<string>(), tremulants: new Set<string>(), unisonOff: new Set<string>(), ...more };
  return { state: { boxes: new Map(), ...state, drawn: new Set(stops) }, keyboards: null, octaves: {} };
}

function checked(instrument: Instrument, section: Section, registration: DrawnRegistration): CheckedRegistration {
  const result = checkRegistration(prepare(instrument, section), registration);
  if ("unplayable" in result) throw new Error(result.unplayable);
  return result;
}

const SOLO = music("melody-over-accompaniment");
const GOOD = ["Swell/Oboe 8", "Great/Stopped Diapason 8", "Pedal/Bourdon 16", "Pedal/Bass Flute 8"];

describe("findings", () => {
  test("a good registration has neither errors nor warnings, and the parts lie where they sound", () => {
    const { findings, placings } = checked(organ(), SOLO, drawn(GOOD));
    expect(findings.filter((finding) => finding.severity !== "note")).toEqual([]);
    expect(placings.map(({ part, keyboard }) => [part, keyboard])).toEqual([
      ["melody", "Swell"],
      ["accompaniment", "Great"],
      ["bass", "Pedal"],
    ]);
  });

  test("come errors first, then warnings, then notes", () => {
    const { findings } = checked(organ(), SOLO, drawn(["Swell/Trumpet 8", "Great/Mixture III", "Pedal/Bourdon 16"]));
    const order = findings.map((finding) => ["error", "warning", "note"].indexOf(finding.severity));
    expect(order.length).toBeGreaterThan(3);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(findings[0]?.severity).toBe("error");
  });

  test("a stop that is heard and marked off is an error, with what is wrong with it", () => {
    const { findings } = checked(organ(), SOLO, drawn(["Swell/Trumpet 8", ...GOOD.slice(1)]));
    expect(findings.find((finding) => finding.rule === "stop-off")).toMatchObject({
      severity: "error",
      text: "Trumpet 8 on the Swell is marked off (ciphers on F#4).",
      stops: ["Swell/Trumpet 8"],
    });
  });

  test("a stop that is off and heard by nobody is an error all the same", () => {
    const chorus = music("plenum-manual");
    const { findings } = checked(organ(), chorus, {
      ...drawn(["Great/Open Diapason 8", "Swell/Trumpet 8"]),
      keyboards: { plenum: "Great" },
    });
    expect(findings.filter((finding) => finding.rule === "stop-off" || finding.rule === "nothing-idle")).toEqual([
      {
        rule: "stop-off",
        severity: "error",
        text: "Trumpet 8 is drawn and marked off (ciphers on F#4).",
        source: "common practice",
        parts: [],
        stops: ["Swell/Trumpet 8"],
        remedy: "Leave it out.",
      },
    ]);
  });

  test("what is set for nobody is noted: stops, couplers, tremulants and boxes", () => {
    const { findings, judgement } = checked(organ(), music("plenum-manual"), {
      ...drawn(["Great/Open Diapason 8", "Great/Principal 4", "Swell/Oboe 8", "Pedal/Bourdon 16"], {
        couplers: new Set(["Great to Pedal", "Swell to Swell 4"]),
        tremulants: new Set(["Swell"]),
        boxes: new Map([["Swell", "closed"]]),
      }),
      keyboards: { plenum: "Great" },
    });
    const idle = findings.filter((finding) => finding.rule === "nothing-idle");
    expect(idle.map((finding) => [finding.severity, finding.text])).toEqual([
      ["note", "Oboe 8 and Bourdon 16 are drawn, and no part hears them."],
      ["note", "Great to Pedal and Swell to Swell 4 are on, and bring no part a stop."],
      ["note", "The tremulant of the Swell is on, and shakes no stop that is heard."],
      ["note", "The box of the Swell is set, and no part plays from it."],
    ]);
    expect(judgement.reasons.some((reason) => reason.rule === "nothing-idle")).toBe(false);
  });

  test("nothing drawn is an error with a remedy", () => {
    const { findings } = checked(organ(), music("plenum-manual"), drawn([]));
    expect(findings[0]).toMatchObject({ severity: "error", remedy: expect.stringMatching(/^Draw /) });
  });

  test("the score is the sum of the reasons", () => {
    const { judgement } = checked(organ(), SOLO, drawn(["Swell/Salicional 8", "Great/Mixture III"]));
    expect(judgement.reasons.reduce((sum, reason) => sum + reason.points, 0)).toBe(judgement.score);
  });
});

describe("parts that may rest", () => {
  const hymn = music("plenum-manual");
  const withBass: Section = {
    ...hymn,
    parts: [...hymn.parts, ...partsFromHand([{ role: "bass", hands: "feet", low: 36, high: 60, optional: true }])],
  };

  test("rest when nothing sounds for them", () => {
    const { placings } = checked(organ(), withBass, drawn(["Great/Open Diapason 8", "Great/Principal 4"]));
    expect(placings.map((placing) => placing.part)).toEqual(["plenum"]);
  });

  test("play what is drawn for nobody else, even where resting would score better", () => {
    const { placings, findings } = checked(
      organ(),
      withBass,
      drawn(["Great/Open Diapason 8", "Great/Principal 4", "Pedal/Bourdon 16"]),
    );
    expect(placings.map((placing) => placing.part)).toEqual(["plenum", "bass"]);
    expect(findings.some((finding) => finding.rule === "nothing-idle")).toBe(false);
  });

  test("rest when the file names keyboards and leaves them out", () => {
    const { placings } = checked(organ(), withBass, {
      ...drawn(["Great/Open Diapason 8", "Pedal/Bourdon 16"]),
      keyboards: { plenum: "Great" },
    });
    expect(placings.map((placing) => placing.part)).toEqual(["plenum"]);
  });
});

describe("what cannot be played is said in a sentence", () => {
  const why = (registration: Partial<DrawnRegistration>, section = SOLO, instrument = organ()): string => {
    const result = checkRegistration(prepare(instrument, section), { ...drawn(GOOD), ...registration });
    return "unplayable" in result ? result.unplayable : "playable";
  };

  test("a part that the music has not", () => {
    expect(why({ keyboards: { tune: "Swell" } })).toBe(
      'The music has no part "tune"; its parts are melody, accompaniment, bass.',
    );
    expect(why({ octaves: { tune: 1 } })).toMatch(/no part "tune"/);
  });
  test("a keyboard that the organ has not", () => {
    expect(why({ keyboards: { melody: "Choir" } })).toBe(
      'The organ has no keyboard "Choir"; its divisions are Great, Swell, Pedal.',
    );
  });
  test("hands on the pedal", () => {
    expect(why({ keyboards: { melody: "Pedal" } })).toMatch(
      /^The melody is for the right hand, and the Pedal is played/,
    );
  });
  test("a floating division", () => {
    const floating = organ(
      `${ORGAN.replace("couplers:", "  - {name: Echo, kind: floating, stops: [Gedackt 8]}\ncouplers:")}`,
    );
    expect(why({ keyboards: { melody: "Echo" } }, SOLO, floating)).toMatch(/^The Echo has no keyboard of its own/);
  });
  test("hands without a manual", () => {
    const pedalOnly = organ(`
registrant: instrument/1
name: Pedal only
divisions: [{name: Pedal, kind: pedal, stops: [Bourdon 16]}]
`);
    expect(why(drawn(["Pedal/Bourdon 16"]), SOLO, pedalOnly)).toMatch(/the organ has no manual to play it on/);
  });
  test("two keyboards coupled to each other", () => {
    const ring = organ(ORGAN.replace("Swell to Great,", "Swell to Great, Great to Swell,"));
    const state = { ...drawn(GOOD).state, couplers: new Set(["Swell to Great", "Great to Swell"]) };
    expect(why({ state, keyboards: { melody: "Swell", accompaniment: "Great", bass: "Pedal" } }, SOLO, ring)).toMatch(
      /coupled to each other/,
    );
  });
});

describe("a proposal checked is judged as it was proposed", () => {
  test.each(DEMO_ORGANS)("%s", (name) => {
    const instrument = demoOrgan(name);
    for (const id of ["melody-over-accompaniment", "plenum-manual", "flutes"]) {
      const problem = prepare(instrument, music(id));
      for (const { found, judgement } of propose(problem, { count: 3 }).proposals) {
        const keyboards = Object.fromEntries(found.placings.map((placing) => [placing.part, placing.keyboard]));
        const octaves = Object.fromEntries(found.placings.map((placing) => [placing.part, placing.octave]));
        const result = checkRegistration(problem, { state: found.state, keyboards, octaves });
        if ("unplayable" in result) throw new Error(result.unplayable);
        expect(result.judgement.score).toBe(judgement.score);
        expect(
          result.findings.filter((finding) => finding.severity === "error" || finding.rule === "nothing-idle"),
        ).toEqual([]);
        const open = checkRegistration(problem, { state: found.state, keyboards: null, octaves });
        if ("unplayable" in open) throw new Error(open.unplayable);
        expect(open.judgement.score).toBeGreaterThanOrEqual(judgement.score);
      }
    }
  });
});
