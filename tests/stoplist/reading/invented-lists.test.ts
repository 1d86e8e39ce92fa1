import { describe, expect, it } from "vitest";
import { INVENTED } from "./invented/all.ts";
import { read } from "./written.ts";

describe.each(INVENTED)("invented lists read as an organist reads them: %s", (_, lists) => {
  it.each(Object.entries(lists))("%s", (_what, [list, reads]) => {
    expect(read(list)).toBe(reads);
  });
});
