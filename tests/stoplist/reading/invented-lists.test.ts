import { describe, expect, it } from "vitest";
import { DUTCH_AND_NORDIC } from "./invented/dutch-and-nordic.ts";
import { ENGLISH } from "./invented/english.ts";
import { FRENCH } from "./invented/french.ts";
import { GERMAN } from "./invented/german.ts";
import { ITALIAN_AND_SPANISH } from "./invented/italian-and-spanish.ts";
import { LAYOUTS } from "./invented/layouts.ts";
import { VARIOUS } from "./invented/various.ts";
import { read } from "./written.ts";

describe.each([
  ["various", VARIOUS],
  ["English", ENGLISH],
  ["German", GERMAN],
  ["Dutch, Danish, Swedish", DUTCH_AND_NORDIC],
  ["French", FRENCH],
  ["Italian and Spanish", ITALIAN_AND_SPANISH],
  ["settings", LAYOUTS],
])("invented lists read as an organist reads them: %s", (_, lists) => {
  it.each(Object.entries(lists))("%s", (_what, [list, reads]) => {
    expect(read(list)).toBe(reads);
  });
});
