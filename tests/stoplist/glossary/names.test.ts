import { describe, expect, test } from "vitest";
import { type Foot, footFromText } from "../../../shared-model/pitch/foot.ts";
import {
  isStopName,
  nearestNames,
  type Understanding,
  understandName,
} from "../../../shared-model/stoplist/glossary/glossary.ts";

const feet = (text: string | null): Foot | null => (text === null ? null : footFromText(text));

const onManual = (name: string, pitch: string | null = null, ranks: number | null = null): Understanding =>
  understandName(name, { pedal: false, pitch: feet(pitch), ranks });
const inPedal = (name: string, pitch: string | null = null, ranks: number | null = null): Understanding =>
  understandName(name, { pedal: true, pitch: feet(pitch), ranks });

const told = (understanding: Understanding): string =>
  understanding.sure
    ? `${understanding.entry.name}: ${understanding.kinds.join(" ")}`
    : `${understanding.why}: ${understanding.choices.map((choice) => choice.name).join(", ")}`;

describe("names as six lands print them", () => {
  test.each([
    // English and American
    ["Open Diapason No. 1", "8", "Open Diapason: principal"],
    ["Open Diapason II", "8", "Open Diapason: principal"],
    ["Op. Diap.", "8", "Open Diapason: principal"],
    ["Small Open Diapason", "8", "Open Diapason: principal"],
    ["Stop'd Diapason", "8", "Stopped Diapason: stopped-flute"],
    ["Stopped Diapason Treble", "8", "Stopped Diapason: stopped-flute"],
    ["Fifteenth", "2", "Fifteenth: principal"],
    ["Twelfth", "8/3", "Twelfth: twelfth"],
    ["Cremona", "8", "Cremona: cromorne"],
    ["Hautboy", "8", "Oboe: oboe"],
    ["Cornopean", "8", "Cornopean: trumpet"],
    ["Tuba Mirabilis", "8", "Tuba Mirabilis: tuba"],
    ["Nason Flute", "4", "Nason: stopped-flute"],
    ["Viole Celeste", "8", "Viole Celeste: celeste"],
    ["Echo Gamba", "8", "Viola da Gamba: string"],
    // German, old and new spelling
    ["Großprincipal", "16", "Grand Principal: principal"],
    ["Sup. Octav", "2", "Super Octave: principal"],
    ["Qvintadehn", "16", "Quintadena: quintadena"],
    ["Waldtfloit", "2", "Waldflöte: open-flute"],
    ["PlockFlöite", "4", "Blockflöte: open-flute"],
    ["BlockFlöite Cantus", "4", "Blockflöte: open-flute"],
    ["Floete", "8", "Flute: open-flute"],
    ["Flötengedackt", "8", "Stopped Flute: stopped-flute"],
    ["Geigenprincipal", "8", "Violin Diapason: principal"],
    ["Grobgedackt", "8", "Grobgedackt: stopped-flute"],
    ["Liebl. Ged.", "8", "Lieblich Gedackt: stopped-flute"],
    ["Rohrfl.", "4", "Rohrflöte: stopped-flute"],
    ["Kupferprincipal", "8", "Principal: principal"],
    ["R.Rancket", "16", "Rankett: dulcian"],
    ["Sordunen Baß", "16", "Sordun: dulcian"],
    ["KrumbHorn", "8", "Krummhorn: cromorne"],
    ["Trommette", "8", "Trumpet: trumpet"],
    ["Gemßhorn", "8", "Gemshorn: soft-string open-flute"],
    ["Dolzian Bass", "8", "Dulzian: dulcian"],
    ["Zartgeige", "8", "Zartgeige: soft-string"],
    // Dutch
    ["Roerfluyt", "8", "Rohrflöte: stopped-flute"],
    ["Holpijp", "8", "Holpijp: stopped-flute"],
    ["Baarpijp", "8", "Baarpijp: soft-string open-flute"],
    ["Superoctaaf", "2", "Super Octave: principal"],
    ["Woudfluit", "2", "Waldflöte: open-flute"],
    ["Dulciaan", "16", "Dulzian: dulcian"],
    ["Echo Holpijp", "8", "Holpijp: stopped-flute"],
    // French
    ["1re Trompette", "8", "Trompette: trumpet"],
    ["2ème Trompette", "8", "Trompette: trumpet"],
    ["Dessus de Flûte", "8", "Flute: open-flute"],
    ["Basson et Hautbois", "8", "Basson-Hautbois: oboe"],
    ["FLUTE OCTAVIANTE", "4", "Flûte octaviante: harmonic-flute open-flute"],
    ["Octavin", "2", "Octavin: harmonic-flute open-flute"],
    ["Quarte de Nazard", "2", "Quarte de nasard: open-flute"],
    ["Grande Tierce", "16/5", "Grosse tierce: tierce"],
    ["Clairon en chamade", "4", "Clarion: horizontal-trumpet"],
    ["Voix humaine", "8", "Voix humaine: voix-humaine"],
    // Italian
    ["Principale II", "8", "Principale: principal"],
    ["Decima nona", "4/3", "Decimanona: larigot principal"],
    ["Vigesima sesta", "2/3", "Vigesimasesta: principal"],
    ["Voce Umana", "8", "Voce umana: celeste"],
    ["Trombe Soprani", "8", "Trombe: trumpet"],
    ["Fagotto Bassi", "8", "Bassoon: bassoon"],
    ["Tromboncini", "8", "Tromboncini: regal"],
    ["Flauto in XII", "8/3", "Flauto in duodecima: nasard"],
    // Spanish and Portuguese
    ["Flautado de 26", "16", "Flautado de 26: principal"],
    ["Flautado violón", "8", "Violón: stopped-flute"],
    ["Violón", "8", "Violón: stopped-flute"],
    ["Clarín", "8", "Clarín: horizontal-trumpet"],
    ["Bajoncillo", "4", "Bajoncillo: horizontal-trumpet"],
    ["Trompeta real", "8", "Trompeta real: trumpet"],
    ["Orlos", "8", "Orlos: regal"],
    ["Quincena nasarda", "2", "Nasardo en quincena: open-flute"],
    ["Dozena", "8/3", "Docena: twelfth principal"],
  ])("%s %s", (name, pitch, expected) => {
    expect(told(onManual(name, pitch))).toBe(expected);
  });

  test.each([
    ["Subbaß", "16", "Subbass: stopped-flute"],
    ["Princ. Bass", "16", "Principalbass: principal"],
    ["Octav Bass", "8", "Octavbass: principal"],
    ["Clar. Bass", "4", "Clarin: trumpet"],
    ["GemsHorn Bass", "8", "Gemshorn: soft-string open-flute"],
    ["PaurFlöiten Bass", "1", "Bauernflöte: open-flute"],
    ["Contrebasse", "16", "Contrebasse: principal"],
    ["Kontrabass", "16", "Contrabass: string"],
    ["Violon", "16", "Violone: string"],
    ["Flûte", "16", "Flute: open-flute"],
    ["Cinq", "2", "Zink: cornett"],
    ["Roerquint", "12", "Rohrquinte: quint"],
    ["Contre-Bombarde", "32", "Contra Bombarde: trumpet"],
    ["Contras", "16", "Contras: principal"],
  ])("in the pedal %s %s", (name, pitch, expected) => {
    expect(told(inPedal(name, pitch))).toBe(expected);
  });

  test.each([
    ["Mixtuur", 6, "Mixture: mixture"],
    ["Scharff", 3, "Scharf: cymbal"],
    ["Zimbeln", 2, "Zimbel: cymbal"],
    ["Tertiaan", 2, "Tertian: tertian"],
    ["Ruispijp", 2, "Rauschpfeife: rauschpfeife"],
    ["Due di Ripieno", 2, "Ripieno: mixture"],
    ["Lleno", 4, "Lleno: mixture"],
    ["Grand Cornet", 5, "Cornet: cornet"],
    ["Corneta magna", 7, "Corneta magna: cornet"],
    ["Dulcet", 2, "Dulcet II: celeste"],
  ])("of ranks %s %i", (name, ranks, expected) => {
    expect(told(onManual(name, null, ranks))).toBe(expected);
  });
});

describe("names that mislead", () => {
  test("Cornet: a reed in the pedal, a compound with ranks, a question when the pedal prints neither", () => {
    expect(told(inPedal("Cornet", "2"))).toBe("Cornet (pedal reed): cornett");
    expect(told(inPedal("Cornett", "4"))).toBe("Cornet (pedal reed): cornett");
    expect(told(inPedal("Cornet", null, 5))).toBe("Pedal Cornet (compound): cornet");
    expect(told(inPedal("Cornet"))).toBe("ambiguous: Cornet (pedal reed), Pedal Cornet (compound)");
    expect(told(onManual("Cornet"))).toBe("Cornet: cornet");
    expect(told(onManual("Cornet", null, 3))).toBe("Cornet III: cornet");
    expect(told(onManual("Cornet", null, 2))).toBe("Cornet II: cornet");
  });

  test("a quint goes by its pitch", () => {
    expect(told(onManual("Quinte", "16/3"))).toBe("Quint: quint");
    expect(told(onManual("Quinte", "8/3"))).toBe("Quint: twelfth");
    expect(told(onManual("Quinte", "3"))).toBe("Quint: twelfth");
    expect(told(onManual("Quinte", "4/3"))).toBe("Quint: larigot principal");
    expect(told(onManual("Nasat", "8/3"))).toBe("Nasat: nasard");
    expect(told(onManual("Nasat", "4/3"))).toBe("Nasat: larigot");
    expect(told(onManual("NaSatt", "3/2"))).toBe("Nasat: larigot");
    expect(told(onManual("Gros Nasard", "16/3"))).toBe("Gros nazard: quint");
  });

  test("a flute or principal that sounds a fifth or a third is a mutation", () => {
    expect(told(onManual("Sifflöte", "1"))).toBe("Sifflöte: open-flute");
    expect(told(onManual("Sifflöte", "4/3"))).toBe("Sifflöte: larigot");
    expect(told(onManual("Flöte", "8/3"))).toBe("Flute: nasard");
    expect(told(onManual("Principal", "8/3"))).toBe("Principal: twelfth");
    expect(told(onManual("Flöte", "8/5"))).toBe("Flute: tierce");
    expect(onManual("Flageolet", "4/3")).toMatchObject({ sure: true, family: "mutation" });
  });

  test("an Italian principal of 12 ft is no quint", () => {
    expect(told(onManual("Principale", "12"))).toBe("Principale: principal");
  });

  test("Gemshorn works as an open flute from 4 ft up", () => {
    expect(told(onManual("Gemshorn", "8"))).toBe("Gemshorn: soft-string open-flute");
    expect(told(onManual("Gemshorn", "2"))).toBe("Gemshorn: open-flute soft-string");
  });

  test("Sesquialtera: two ranks for solos, more in the English chorus", () => {
    expect(told(onManual("Sesquialtera", null, 2))).toBe("Sesquialtera: sesquialtera");
    expect(told(onManual("Sesquialtera", null, 4))).toBe("Sesquialtera (English chorus): sesquialtera mixture");
    expect(onManual("Sesquialtera")).toMatchObject({ sure: true, tierce: true });
  });

  test("thirds by custom: never in Fourniture, Cymbale, Ripieno, Lleno", () => {
    for (const name of ["Fourniture", "Cymbale", "Ripieno", "Lleno", "Mixtur", "Scharf", "Zimbel"]) {
      expect(onManual(name, null, 4)).toMatchObject({ sure: true, tierce: false });
    }
    for (const name of ["Sesquialter", "Tertian", "Cornet", "Carillon", "Terzzimbel", "Tierce Mixture"]) {
      expect(onManual(name, null, 2)).toMatchObject({ sure: true, tierce: true });
    }
  });

  test("Violon without its accent may be the Spanish stopped flute", () => {
    expect(told(onManual("Violon", "8"))).toBe("ambiguous: Violón, Violone, Violin");
  });

  test("Violoncello on a manual may be the Venetian reed; in the pedal it is the string", () => {
    expect(told(onManual("Violoncello", "8"))).toBe("ambiguous: Violoncello, Violoncello (Venetian)");
    expect(told(inPedal("Violoncello", "8"))).toBe("Violoncello: string");
    expect(told(onManual("Violoncelle", "8"))).toBe("Violoncello: string");
  });

  test("Clarin of 4 ft is Saxon, of 8 ft Spanish, without pitch a question", () => {
    expect(told(onManual("Clarin", "4"))).toBe("Clarin: trumpet");
    expect(told(onManual("Clarin", "8"))).toBe("Clarín: horizontal-trumpet");
    expect(told(onManual("Clarin"))).toBe("ambiguous: Clarín, Clarin");
  });

  test("one vowel parts a soft flue stop from a reed, and the abbreviation does not tell", () => {
    expect(told(onManual("Dulciana", "8"))).toBe("Dulciana: soft-string");
    expect(told(onManual("Dulcian", "8"))).toBe("Dulzian: dulcian");
    expect(told(onManual("Dulc.", "8"))).toBe("ambiguous: Dulciana, Dulzian");
  });

  test("names that only look like another", () => {
    expect(told(onManual("Quintadecima", "2"))).toBe("Quintadecima: principal");
    expect(told(onManual("Clairon Doublette", "2"))).toBe("Clairon doublette: trumpet");
    expect(told(onManual("Geigenregal", "4"))).toBe("Geigenregal: regal");
    expect(told(onManual("Quintflöte", "8/3"))).toBe("Quintflöte: nasard");
    expect(told(onManual("Violetas", "2"))).toBe("Violetas: regal");
    expect(told(onManual("Violetta", "2"))).toBe("Violetta: string");
    expect(told(onManual("Zimbelstern"))).toBe("Zimbelstern: effect");
    expect(told(onManual("Gedacktpommer", "4"))).toBe("Gedacktpommer: stopped-flute quintadena");
    expect(told(onManual("Celesta", "8"))).toBe("Celesta: percussion");
  });

  test("Echo is a stop only with ranks, Koppel only with a length", () => {
    expect(told(onManual("Echo", null, 5))).toBe("Echo (cornet): cornet");
    expect(onManual("Echo")).toMatchObject({ sure: false, why: "ambiguous" });
    expect(told(onManual("Koppel", "8"))).toBe("Coppel: stopped-flute");
    expect(onManual("Koppel")).toMatchObject({ sure: false, why: "ambiguous" });
  });

  test("Glockenspiel is bells unless it prints ranks", () => {
    expect(told(onManual("Glockenspiel"))).toBe("Glockenspiel: percussion");
    expect(told(onManual("Glockenspiel", null, 2))).toBe("Glockenspiel: sesquialtera mixture");
  });

  test("two names on one knob are sure only when they come to the same", () => {
    expect(told(onManual("Oboe & Fagotto", "8"))).toBe("ambiguous: Oboe, Bassoon");
    expect(told(onManual("Docena/Octava", "4"))).toBe("ambiguous: Docena, Octave");
    expect(told(onManual("Violine/Viola", "8"))).toBe("Violin: string");
  });
});

describe("pitch by custom", () => {
  const implied = (understanding: Understanding): string | null =>
    understanding.sure && understanding.pitch ? `${understanding.pitch.over}/${understanding.pitch.under}` : null;

  test.each([
    ["Montre", "8/1"],
    ["Prestant", "4/1"],
    ["Doublette", "2/1"],
    ["Nazard", "8/3"],
    ["Quarte de Nazard", "2/1"],
    ["Tierce", "8/5"],
    ["Larigot", "4/3"],
    ["Trompette", "8/1"],
    ["1re Trompette", "8/1"],
    ["Clairon", "4/1"],
    ["Cromorne", "8/1"],
    ["Hautbois", "8/1"],
    ["Voix humaine", "8/1"],
    ["Voix céleste", "8/1"],
    ["Unda maris", "8/1"],
    ["Bombarde", "16/1"],
    ["Fifteenth", "2/1"],
    ["Flautado de 13", "8/1"],
  ])("%s is %s ft", (name, expected) => {
    expect(implied(onManual(name))).toBe(expected);
  });

  test.each(["Bourdon", "Gedackt", "Trompete", "Flöte", "Principal", "Principale", "Gamba", "Mixtur", "Gros Montre"])(
    "%s must print its pitch",
    (name) => {
      expect(onManual(name)).toMatchObject({ sure: true, pitch: null });
    },
  );

  test("a printed pitch leaves nothing to custom", () => {
    expect(onManual("Montre", "16")).toMatchObject({ sure: true, pitch: null });
  });

  test("interval names count from the principal of their division, and only when it is known", () => {
    const over = (name: string, base: string): string | null =>
      implied(understandName(name, { pedal: false, pitch: null, ranks: null, base: footFromText(base) as Foot }));
    expect(over("Ottava", "8")).toBe("4/1");
    expect(over("Duodecima", "8")).toBe("8/3");
    expect(over("Quintadecima", "8")).toBe("2/1");
    expect(over("Decimanona", "8")).toBe("4/3");
    expect(over("Vigesimaseconda", "8")).toBe("1/1");
    expect(over("Vigesimasesta", "8")).toBe("2/3");
    expect(over("Vigesimanona", "8")).toBe("1/2");
    expect(over("Trigesimaterza", "8")).toBe("1/3");
    expect(over("Trigesimasesta", "8")).toBe("1/4");
    expect(over("Seventeenth", "8")).toBe("8/5");
    expect(over("Decimanona", "16")).toBe("8/3");
    expect(over("Quincena", "4")).toBe("1/1");
    expect(over("Flauto in ottava", "16")).toBe("8/1");
    expect(implied(onManual("Decimanona"))).toBe(null);
  });

  test("Fifteenth in a pedal of 16 ft is 4 ft", () => {
    expect(implied(inPedal("Fifteenth"))).toBe("4/1");
  });
});

describe("strength", () => {
  const strength = (name: string, pitch = "8"): number | null => {
    const understanding = onManual(name, pitch);
    return understanding.sure ? understanding.strength : null;
  };

  test("keeps the order of the families", () => {
    expect(["Aeoline", "Salicional", "Principal", "Trumpet", "Tuba"].map((name) => strength(name))).toEqual([
      1, 2, 3, 4, 5,
    ]);
    expect(strength("Gedackt")).toBe(2);
  });

  test("Echo and Still soften, en chamade strengthens, within the five steps", () => {
    expect(strength("Echo Trumpet")).toBe(3);
    expect(strength("Still Gedackt")).toBe(1);
    expect(strength("Echo Aeoline")).toBe(1);
    expect(strength("Trumpet en chamade")).toBe(5);
  });
});

describe("what is not known", () => {
  test.each(["Hauptwerk", "Great Organ", "Manual I", "Coupler Swell to Great", "Ghumbalak", "Orgelbau", "12", "???"])(
    "%s is no stop",
    (name) => {
      expect(onManual(name)).toMatchObject({ sure: false, why: "unknown" });
      expect(isStopName(name)).toBe(false);
    },
  );

  test("a misspelt name brings its neighbours, best first and at most five", () => {
    const understanding = onManual("Gemshom", "2");
    expect(told(understanding)).toMatch(/^unknown: Gemshorn/);
    expect(understanding.sure ? 0 : understanding.choices.length).toBeLessThanOrEqual(5);
    expect(nearestNames("Pricnipal")[0]).toBe("Principal");
    expect(nearestNames("Rohrflute", 2)).toHaveLength(2);
    expect(nearestNames("")).toEqual([]);
  });

  test("blank and endless names end in an answer", () => {
    expect(onManual("")).toEqual({ sure: false, why: "unknown", choices: [] });
    expect(onManual("   ")).toEqual({ sure: false, why: "unknown", choices: [] });
    expect(onManual("Principal ".repeat(5000))).toEqual({ sure: false, why: "unknown", choices: [] });
    expect(onManual("bass ".repeat(15))).toMatchObject({ sure: false });
  });

  test("isStopName takes names as they stand, in any spelling, and no qualifiers", () => {
    expect(["Principal", "QVINTADEHN", "Flûte harmonique", "Zimbel", "Tremulant"].map(isStopName)).toEqual([
      true,
      true,
      true,
      true,
      true,
    ]);
    expect(["Echo", "Second Principal Bass", "Principal 8", ""].map(isStopName)).toEqual([false, false, false, false]);
  });
});
