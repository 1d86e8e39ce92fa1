import type { Source } from "./source.ts";

/** Italian and Spanish sources. */
export const ITALIAN_AND_SPANISH_SOURCES: Readonly<Record<string, Source>> = {
  "antegnati-1608": {
    cited: "Antegnati",
    author: "Costanzo Antegnati",
    title: "L'arte organica",
    year: 1608,
    where: "advice on registering, given for the old cathedral of Brescia and for other family organs",
    address: null,
    evidence: "memory",
  },
  "diruta-1609": {
    cited: "Diruta",
    author: "Girolamo Diruta",
    title: "Il Transilvano, second part, book 4",
    year: 1609,
    where: "stops suited to each of the twelve modes",
    address: null,
    evidence: "memory",
  },
  "banchieri-1605": {
    cited: "Banchieri",
    author: "Adriano Banchieri",
    title: "L'organo suonarino",
    year: 1605,
    where: "general",
    address: null,
    evidence: "memory",
  },
  "correa-1626": {
    cited: "Correa de Arauxo",
    author: "Francisco Correa de Arauxo",
    title: "Facultad orgánica, and the later Castilian practice of the divided keyboard",
    year: 1626,
    where: "tientos de medio registro",
    address: null,
    evidence: "memory",
  },
  "nassarre-1724": {
    cited: "Nassarre",
    author: "Pablo Nassarre",
    title: "Escuela música",
    year: 1724,
    where: "general",
    address: null,
    evidence: "memory",
  },
  "spanish-practice": {
    cited: "Castilian and Aragonese practice",
    author: null,
    title:
      "Castilian and Aragonese practice of the 17th and 18th centuries as summed up in the literature (Nassarre and others)",
    year: null,
    where: "general",
    address: null,
    evidence: "memory",
  },
};
