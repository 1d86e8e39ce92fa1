import { describe, expect, it } from "vitest";
import { accordingTo, citation, citations } from "../../shared-model/music/prescriptions/citation.ts";
import { SOURCES } from "../../shared-model/music/prescriptions/sources.ts";

describe("a source in a sentence", () => {
  it("is cited by name and year, a practice by its name", () => {
    expect(["bedos-1766", "buxtehude-practice", "common practice", "lesson-hymns"].map(citation)).toEqual([
      "Dom Bédos (1766)",
      "Hamburg and Lübeck practice",
      "common practice",
      "an organ course on the web",
    ]);
  });

  it("begins a sentence, several authors in the plural", () => {
    expect(["bedos-1766", "hopkins-1855", "buxtehude-practice", "common practice"].map(accordingTo)).toEqual([
      "As Dom Bédos (1766) has it",
      "As Hopkins and Rimbault (1855) have it",
      "By Hamburg and Lübeck practice",
      "By common practice",
    ]);
  });

  it("says in a list what nobody of the project has seen, and names two places in one book once", () => {
    expect(citations("bedos-1766; corrette-m-1737; bach-practice; common practice")).toBe(
      "Dom Bédos (1766); Michel Corrette (1737), as reported; the practice of Bach and his pupils; common practice",
    );
    expect(citations("bedos-1766; bedos-1766-pipes")).toBe("Dom Bédos (1766)");
  });

  it("reads well for every source", () => {
    for (const id of Object.keys(SOURCES)) {
      expect(accordingTo(id), id).toMatch(/^(?:As \p{L}.*[\p{L}\p{N})] (?:has|have) it|By \p{L}.*\p{L})$/u);
      expect(citation(id), id).not.toMatch(/practice.*\d/);
    }
  });
});
