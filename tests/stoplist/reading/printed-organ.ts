import type { Draw } from "../../instruments/seeded-random.ts";

/** A stop as it should be read: its pitch as a fraction, or its ranks when it is a compound. */
export interface WantedStop {
  readonly name: string;
  readonly pitch: string | null;
  readonly ranks: number | null;
}

export interface WantedDivision {
  readonly name: string;
  readonly pedal: boolean;
  readonly stops: readonly WantedStop[];
}

/** What a language calls things, and how it marks lengths and ranks. */
export interface Tongue {
  readonly manuals: readonly string[];
  readonly pedal: string;
  /** `name length`, or `name` alone for a compound. */
  readonly stops: readonly string[];
  readonly compounds: readonly string[];
  readonly pedalStops: readonly string[];
  readonly feet: readonly string[];
  readonly ranks: readonly string[];
}

/** Names in common use in each language, with their usual lengths. Common practice. */
export const TONGUES: Readonly<Record<string, Tongue>> = {
  English: {
    manuals: ["Great", "Swell", "Choir", "Solo"],
    pedal: "Pedal",
    stops: [
      "Open Diapason 8",
      "Stopped Diapason 8",
      "Dulciana 8",
      "Principal 4",
      "Harmonic Flute 4",
      "Twelfth 2 2/3",
      "Fifteenth 2",
      "Tierce 1 3/5",
      "Larigot 1 1/3",
      "Trumpet 8",
      "Oboe 8",
      "Clarion 4",
      "Double Diapason 16",
      "Viola da Gamba 8",
    ],
    compounds: ["Mixture", "Sesquialtera", "Cymbal"],
    pedalStops: ["Bourdon 16", "Open Wood 16", "Bass Flute 8", "Trombone 16"],
    feet: ["'", "’", "′", " ft", " ft.", " feet", ""],
    ranks: ["R", "R ranks", "R rks", "# ranks"],
  },
  German: {
    manuals: ["Hauptwerk", "Rückpositiv", "Oberwerk", "Brustwerk", "Schwellwerk"],
    pedal: "Pedal",
    stops: [
      "Prinzipal 8",
      "Gedackt 8",
      "Rohrflöte 8",
      "Quintadena 16",
      "Oktave 4",
      "Blockflöte 4",
      "Nasat 2 2/3",
      "Oktave 2",
      "Terz 1 3/5",
      "Quinte 1 1/3",
      "Sifflöte 1",
      "Krummhorn 8",
      "Trompete 8",
      "Viola di Gamba 8",
    ],
    compounds: ["Mixtur", "Scharf", "Zimbel", "Sesquialtera"],
    pedalStops: ["Subbass 16", "Oktavbass 8", "Posaune 16", "Choralbass 4"],
    feet: ["'", "’", "′", " Fuß", " Fuss", "-Fuß", ""],
    ranks: ["R", "#fach", "# fach", "#f.", "#-fach"],
  },
  Dutch: {
    manuals: ["Hoofdwerk", "Rugwerk", "Bovenwerk", "Zwelwerk"],
    pedal: "Pedaal",
    stops: [
      "Prestant 8",
      "Holpijp 8",
      "Roerfluit 8",
      "Bourdon 16",
      "Octaaf 4",
      "Gedekte Fluit 4",
      "Quint 2 2/3",
      "Nasard 2 2/3",
      "Woudfluit 2",
      "Terts 1 3/5",
      "Dulciaan 8",
      "Trompet 8",
      "Vox Humana 8",
    ],
    compounds: ["Mixtuur", "Scherp", "Sexquialter", "Cymbel"],
    pedalStops: ["Subbas 16", "Octaaf 8", "Bazuin 16"],
    feet: ["'", "′", " voet", " vt", ""],
    ranks: ["R", "# sterk", "# st."],
  },
  French: {
    manuals: ["Grand-Orgue", "Positif", "Récit expressif", "Écho"],
    pedal: "Pédale",
    stops: [
      "Montre 8",
      "Bourdon 8",
      "Bourdon 16",
      "Prestant 4",
      "Flûte 4",
      "Nazard 2 2/3",
      "Doublette 2",
      "Tierce 1 3/5",
      "Larigot 1 1/3",
      "Cromorne 8",
      "Trompette 8",
      "Clairon 4",
      "Viole de gambe 8",
    ],
    compounds: ["Plein-Jeu", "Fourniture", "Cymbale"],
    pedalStops: ["Soubasse 16", "Flûte 8", "Bombarde 16"],
    feet: ["'", "’", " pieds", " p.", ""],
    ranks: ["R", "# rangs", "R rgs"],
  },
  Italian: {
    manuals: ["Grand'Organo", "Positivo", "Organo Espressivo"],
    pedal: "Pedale",
    stops: [
      "Principale 8",
      "Bordone 8",
      "Ottava 4",
      "Flauto 4",
      "Nazardo 2 2/3",
      "Quintadecima 2",
      "Decimanona 1 1/3",
      "Terza 1 3/5",
      "Voce umana 8",
      "Tromba 8",
      "Viola 8",
    ],
    compounds: ["Ripieno", "Cornetto"],
    pedalStops: ["Subbasso 16", "Contrabbasso 16", "Basso 8"],
    feet: ["'", "’", " piedi", ""],
    ranks: ["R", "# file", "R file"],
  },
  Spanish: {
    manuals: ["Órgano Mayor", "Cadereta", "Órgano Expresivo"],
    pedal: "Pedal",
    stops: [
      "Flautado 8",
      "Violón 8",
      "Octava 4",
      "Tapadillo 4",
      "Docena 2 2/3",
      "Quincena 2",
      "Decinovena 1 1/3",
      "Trompeta real 8",
      "Clarín 4",
      "Cromorno 8",
    ],
    compounds: ["Lleno", "Címbala", "Corneta"],
    pedalStops: ["Subbajo 16", "Contras 16", "Bombarda 16"],
    feet: ["'", "’", " pies", ""],
    ranks: ["R", "# hileras", "# h."],
  },
};

/** Divisions of one to three manuals and a pedal, each with some stops of the language. */
export function wantedOrgan(draw: Draw, tongue: Tongue): readonly WantedDivision[] {
  const some = (list: readonly string[], count: number): string[] => {
    const left = [...list];
    return Array.from({ length: Math.min(count, list.length) }, () => {
      const at = draw.between(0, left.length - 1);
      return left.splice(at, 1)[0] as string;
    });
  };
  const stopOf = (text: string): WantedStop => {
    const match = /^(.*?) (\d+)(?: (\d)\/(\d))?$/.exec(text) as RegExpExecArray;
    const [, name = "", whole, over, under] = match;
    const pitch = over === undefined ? `${whole}` : `${Number(whole) * Number(under) + Number(over)}/${under}`;
    return { name, pitch, ranks: null };
  };
  const manuals = some(tongue.manuals, draw.between(1, 3)).map((name) => {
    const stops = some(tongue.stops, draw.between(3, 8)).map(stopOf);
    if (draw.chance(0.6)) stops.push({ name: draw.one(tongue.compounds), pitch: null, ranks: draw.between(3, 5) });
    return { name, pedal: false, stops };
  });
  const pedal = { name: tongue.pedal, pedal: true, stops: some(tongue.pedalStops, 3).map(stopOf) };
  return [...manuals, pedal];
}

const ROMANS = ["", "I", "II", "III", "IV", "V"];

/** One way of printing lengths and ranks, kept through a whole list. */
export interface Manner {
  readonly length: (pitch: string) => string;
  readonly ranks: (ranks: number) => string;
}

/** A way of printing marks that the language knows. */
export function mannerOf(draw: Draw, tongue: Tongue): Manner {
  const feet = draw.one(tongue.feet);
  const ranks = draw.one(tongue.ranks);
  const between = draw.one([" ", " ", "-"]);
  const glyphs = draw.chance(0.3);
  return {
    length: (pitch) => {
      const [over = 0, under = 1] = pitch.split("/").map(Number);
      const whole = Math.floor(over / under);
      const fraction = `${over % under}/${under}`;
      const glyph = { "2/3": "⅔", "1/3": "⅓", "3/5": "⅗" }[fraction];
      if (under === 1) return `${whole}${feet}`;
      return `${whole}${glyphs && glyph ? glyph : `${between}${fraction}`}${feet}`;
    },
    ranks: (count) => ranks.replace("#", String(count)).replace("R", ROMANS[count] as string),
  };
}

/** A way of setting a whole list. */
export type Setting = (organ: readonly WantedDivision[], manner: Manner, draw: Draw) => string;

const mark = (stop: WantedStop, manner: Manner): string =>
  stop.pitch === null ? manner.ranks(stop.ranks as number) : manner.length(stop.pitch);
const nameFirst = (stop: WantedStop, manner: Manner): string => `${stop.name} ${mark(stop, manner)}`;

/** A heading and the lines of its stops. */
const inBlocks =
  (
    head: (name: string, at: number) => string,
    line: (stop: WantedStop, number: number, manner: Manner) => string,
  ): Setting =>
  (organ, manner, draw) => {
    const apart = draw.one(["\n", "\n\n"]);
    let number = 0;
    return organ
      .map((division, at) => {
        const lines = division.stops.map((stop) => {
          number += 1;
          return line(stop, number, manner);
        });
        return [head(division.name, at), ...lines].join("\n");
      })
      .join(apart);
  };

const padded = (text: string, width: number): string => text.padEnd(width);

/** Usual ways of setting a list. */
export const SETTINGS: Readonly<Record<string, Setting>> = {
  "lines, name before pitch": inBlocks(
    (name) => name,
    (stop, _, manner) => nameFirst(stop, manner),
  ),
  "lines, pitch before name": inBlocks(
    (name) => `${name}:`,
    (stop, _, manner) => `${mark(stop, manner)} ${stop.name}`,
  ),
  "numbered lines under capitals": inBlocks(
    (name) => name.toUpperCase(),
    (stop, number, manner) => `${number}. ${nameFirst(stop, manner)}`,
  ),
  "bare numbers": inBlocks(
    (name) => name,
    (stop, number, manner) => `${number} ${nameFirst(stop, manner)}`,
  ),
  "bullets under numbered headings": inBlocks(
    (name, at) => (/^p[eé]d/i.test(name) ? name : `${ROMANS[at + 1]}. ${name}`),
    (stop, _, manner) => `• ${nameFirst(stop, manner)}`,
  ),
  "leaders of dots": inBlocks(
    (name) => name,
    (stop, number, manner) => `${number}) ${stop.name} ${".".repeat(30 - stop.name.length)} ${mark(stop, manner)}`,
  ),
  "cells of a name and a mark": inBlocks(
    (name) => name,
    (stop, _, manner) => `${stop.name}\t${mark(stop, manner)}`,
  ),
  "numbers, names and marks in cells": inBlocks(
    (name) => name,
    (stop, number, manner) => `${number}.\t${stop.name}\t${mark(stop, manner)}`,
  ),
  "a dash before the mark": inBlocks(
    (name) => name,
    (stop, _, manner) => `${stop.name} – ${mark(stop, manner)}`,
  ),
  "the mark in brackets": inBlocks(
    (name) => `${name}:`,
    (stop, _, manner) => `${stop.name} (${mark(stop, manner)})`,
  ),
  "rows of commas": (organ, manner) =>
    organ.map(({ name, stops }) => `${name}: ${stops.map((one) => nameFirst(one, manner)).join(", ")}`).join("\n"),
  "rows of semicolons, a full stop behind": (organ, manner) =>
    organ.map(({ name, stops }) => `${name}: ${stops.map((one) => nameFirst(one, manner)).join("; ")}.`).join("\n\n"),
  "a spreadsheet with the division in each row": (organ, manner) =>
    organ
      .flatMap(({ name, stops }) => stops.map((stop) => [name, stop.name, mark(stop, manner)].join("\t")))
      .join("\n"),
  "semicolons between quotes": (organ, manner) =>
    [
      '"Division";"Stop";"Pitch"',
      ...organ.flatMap(({ name, stops }) =>
        stops.map((stop) => [name, stop.name, mark(stop, manner)].map((cell) => `"${cell}"`).join(";")),
      ),
    ].join("\n"),
  "a Markdown table for each division": (organ, manner) =>
    organ
      .map(({ name, stops }) =>
        [
          `## ${name}`,
          "",
          "| Stop | Pitch |",
          "|---|---:|",
          ...stops.map((stop) => `| ${stop.name} | ${mark(stop, manner)} |`),
        ].join("\n"),
      )
      .join("\n\n"),
  "columns of blanks": (organ, manner) => {
    const columns = organ.map(({ name, stops }) => [name, ...stops.map((stop) => nameFirst(stop, manner))]);
    const rows = Math.max(...columns.map((column) => column.length));
    return Array.from({ length: rows }, (_, row) =>
      columns
        .map((column) => padded(column[row] ?? "", 30))
        .join("")
        .trimEnd(),
    ).join("\n");
  },
  "columns of cells": (organ, manner) => {
    const columns = organ.map(({ name, stops }) => [name, ...stops.map((stop) => nameFirst(stop, manner))]);
    const rows = Math.max(...columns.map((column) => column.length));
    return Array.from({ length: rows }, (_, row) => columns.map((column) => column[row] ?? "").join("\t")).join("\n");
  },
  "columns of cells, names and marks apart": (organ, manner) => {
    const columns = organ.map(({ name, stops }) => [
      [name, ""],
      ...stops.map((stop) => [stop.name, mark(stop, manner)]),
    ]);
    const rows = Math.max(...columns.map((column) => column.length));
    return Array.from({ length: rows }, (_, row) =>
      columns.flatMap((column) => column[row] ?? ["", ""]).join("\t"),
    ).join("\n");
  },
  "a web page's code": (organ, manner) =>
    organ
      .map(
        ({ name, stops }) =>
          `<h3>${name}</h3>\n<ul>\n${stops.map((stop) => `<li>${nameFirst(stop, manner)}</li>`).join("\n")}\n</ul>`,
      )
      .join("\n"),
};
