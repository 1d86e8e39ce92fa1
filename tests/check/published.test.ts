import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { checkForm } from "../command-line/json-contract.ts";
import { Desk } from "../command-line/run-command.ts";
import { publishedCases, publishedInstruments } from "../published/published-cases.ts";
import { registrationOf } from "../published/published-registration.ts";

let desk: Desk;
beforeEach(() => {
  desk = new Desk();
});
afterEach(() => desk.clear());

describe("a published registration is checked without an error", () => {
  test.each(publishedCases().map((published) => ({ published, id: published.id })))("$id", async ({ published }) => {
    const organ = publishedInstruments().get(published.instrument);
    if (!organ) throw new Error(`${published.id}: no organ ${published.instrument}.`);
    const path = new URL(`../published/instruments/${published.instrument}.yaml`, import.meta.url).pathname;
    const content = registrationOf(published, organ);
    const named = await desk.put("named.yaml", JSON.stringify(content)).run("check", path, "named.yaml", "--json");
    const { findings } = checkForm.parse(JSON.parse(named.out));
    expect(findings.filter((finding) => finding.severity === "error")).toEqual([]);
    expect(named.status).toBe(0);

    // Left to find the keyboards itself, the check finds none that are worse.
    const { keyboards: _, ...open } = content;
    const found = await desk.put("open.yaml", JSON.stringify(open)).run("check", path, "open.yaml", "--json");
    expect(found.status).toBe(0);
    const scores = [named.out, found.out].map((out) => checkForm.parse(JSON.parse(out)).score);
    expect(scores[1]).toBeGreaterThanOrEqual(scores[0] ?? Number.NaN);
  });
});
