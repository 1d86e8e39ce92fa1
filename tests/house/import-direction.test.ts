import { describe, expect, test } from "vitest";
import { directionFaults, importsOf, MAY_IMPORT } from "./import-direction.ts";
import { projectFiles, textOf } from "./source-files.ts";

const { dependencies, devDependencies } = JSON.parse(textOf("package.json")) as {
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
};
const packages = Object.keys({ ...dependencies, ...devDependencies });
const sources = projectFiles().filter((path) => /^(?:shared-model|electron|renderer)\/.*\.[cm]?[jt]sx?$/.test(path));

describe("import direction", () => {
  test("every import goes the way the house is built", () => {
    expect(sources.length).toBeGreaterThan(20);
    expect(sources.flatMap((path) => directionFaults(path, textOf(path), packages))).toEqual([]);
  });

  test("the imports that the check sees are really there", () => {
    const seen = sources.filter((path) => path.startsWith("shared-model/")).flatMap((path) => importsOf(textOf(path)));
    expect(seen.filter((name) => name.endsWith("/pitch/foot.ts")).length).toBeGreaterThan(5);
  });

  test("no row lets two rooms import each other", () => {
    const mutual = Object.entries(MAY_IMPORT).flatMap(([room, row]) =>
      row.filter((other) => MAY_IMPORT[other]?.includes(room)).map((other) => `${room} <-> ${other}`),
    );
    expect(mutual).toEqual([]);
  });
});

describe("the check itself", () => {
  const trap = `
import { readFile } from "node:fs/promises";
import fs from "fs";
import React, {
  useState,
} from "react";
import { app } from 'electron';
import type { Rule } from "../rules/rule.ts";
export { thing } from "../../renderer/thing.tsx";
export * from "../../electron/library/disk.ts";
import "../propose/propose.ts";
import chalk from "chalk";
import { footOf } from "./foot.ts";
import { z } from "zod";
const late = await import("../check/check.ts");
const old = require("../plan/plan.ts");
type Named = import("../cards/card.ts").Card;
`;

  test("finds every wrong import of a trap, and lets the right ones pass", () => {
    expect(directionFaults("shared-model/pitch/trap.ts", trap, ["zod", "react", "electron"])).toEqual([
      "shared-model/pitch/trap.ts imports node:fs/promises: the model knows no host and no screen.",
      "shared-model/pitch/trap.ts imports fs: the model knows no host and no screen.",
      "shared-model/pitch/trap.ts imports react: the model knows no host and no screen.",
      "shared-model/pitch/trap.ts imports electron: the model knows no host and no screen.",
      "shared-model/pitch/trap.ts imports shared-model/rules/rule.ts: pitch may import nothing.",
      "shared-model/pitch/trap.ts imports renderer/thing.tsx: pitch may import nothing.",
      "shared-model/pitch/trap.ts imports electron/library/disk.ts: pitch may import nothing.",
      "shared-model/pitch/trap.ts imports shared-model/propose/propose.ts: pitch may import nothing.",
      "shared-model/pitch/trap.ts imports chalk, which package.json does not name.",
      "shared-model/pitch/trap.ts imports shared-model/check/check.ts: pitch may import nothing.",
      "shared-model/pitch/trap.ts imports shared-model/plan/plan.ts: pitch may import nothing.",
      "shared-model/pitch/trap.ts imports shared-model/cards/card.ts: pitch may import nothing.",
    ]);
  });

  test("keeps hosts and screens apart", () => {
    const toScreen = 'import { App } from "../renderer/app.tsx";';
    const toHost = 'import { disk } from "../../electron/library/disk.ts";\nimport fs from "node:fs";';
    expect(directionFaults("electron/main.ts", toScreen, [])).toHaveLength(1);
    expect(directionFaults("renderer/stoplist/stoplist.tsx", toHost, [])).toHaveLength(2);
    expect(
      directionFaults("electron/main.ts", 'import { app } from "electron";\nimport fs from "node:fs";', []),
    ).toEqual([]);
  });

  test("keeps rules and the search out of files, and the search out of the rules", () => {
    expect(directionFaults("shared-model/files/a.ts", 'import { rule } from "../rules/rule.ts";', [])).toHaveLength(1);
    expect(directionFaults("shared-model/rules/a.ts", 'import { best } from "../propose/best.ts";', [])).toHaveLength(
      1,
    );
    expect(directionFaults("shared-model/propose/a.ts", 'import { rule } from "../rules/rule.ts";', [])).toEqual([]);
  });

  test("fails for a folder or a loose file that no row names", () => {
    expect(directionFaults("shared-model/tuning/comma.ts", "", [])).toEqual([
      'shared-model/tuning/comma.ts: no row of MAY_IMPORT names "tuning"; add one that says what it may import.',
    ]);
    expect(directionFaults("shared-model/loose.ts", "", [])).toHaveLength(1);
  });

  test("takes no text for an import", () => {
    const text =
      'const help = "open a list";\n// import nothing from "here"\nexport const from = "C2";\nexport const to = `x`;\n';
    expect(importsOf(text)).toEqual([]);
  });
});
