import type { Source } from "./source.ts";

/** Sources in English. */
export const ENGLISH_SOURCES: Readonly<Record<string, Source>> = {
  "stanley-1748": {
    cited: "Stanley",
    author: "John Stanley",
    title: "Ten Voluntaries op. 5 (with op. 6 and op. 7, 1752-54), printed stop headings",
    year: 1748,
    where: "headings of movements",
    address: null,
    evidence: "memory",
  },
  "marsh-1791": {
    cited: "Marsh",
    author: "John Marsh",
    title: "Eighteen Voluntaries, preface explaining the stops",
    year: 1791,
    where: "preface",
    address: null,
    evidence: "memory",
  },
  "blewitt-1795": {
    cited: "Blewitt",
    author: "Jonas Blewitt",
    title: "A Complete Treatise on the Organ",
    year: 1795,
    where: "general; the year is approximate",
    address: null,
    evidence: "memory",
  },
  "hopkins-1855": {
    cited: "Hopkins and Rimbault",
    author: "E. J. Hopkins and E. F. Rimbault",
    title: "The Organ",
    year: 1855,
    where: "part on use and combination of stops",
    address: null,
    evidence: "memory",
  },
  "stainer-1877": {
    cited: "Stainer",
    author: "John Stainer",
    title: "The Organ (primer)",
    year: 1877,
    where: "chapter on stop management",
    address: null,
    evidence: "memory",
  },
  "lesson-hymns": {
    cited: "an organ course on the web",
    author: "an organ course on the web, lesson 2",
    title: "Understanding organ registration",
    year: null,
    where: "tips on hymns and on mutation stops",
    address: "https://sites.google.com/view/organtrainingcourse/lessons/lesson-2-understanding-organ-registration",
    evidence: "read",
  },
};
