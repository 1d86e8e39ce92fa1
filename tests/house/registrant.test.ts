import { spawnSync } from "node:child_process";
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { ROOT } from "./source-files.ts";

let home = "";

function put(path: string, text: string): void {
  mkdirSync(dirname(join(home, path)), { recursive: true });
  writeFileSync(join(home, path), text);
}

function registrant(...words: string[]): { status: number | null; out: string; err: string } {
  const run = spawnSync(join(home, "electron/registrant"), words, { encoding: "utf8", cwd: tmpdir() });
  return { status: run.status, out: run.stdout, err: run.stderr };
}

const SOURCE = `
export async function main(words: readonly string[]): Promise<number> {
  process.stdout.write(words.join("|") + "\\n");
  return words.length;
}
`;

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), "registrant-command-"));
  put("package.json", readFileSync(join(ROOT, "package.json"), "utf8"));
  mkdirSync(join(home, "electron"));
  copyFileSync(join(ROOT, "electron/registrant"), join(home, "electron/registrant"));
  chmodSync(join(home, "electron/registrant"), 0o755);
});

afterEach(() => rmSync(home, { recursive: true, force: true }));

describe("the command", () => {
  test("hands its words to the compiled program and its status back", () => {
    put("dist/electron/command-line.js", "export const main = async (words) => (console.log(words.join('|')), 1);\n");
    expect(registrant("check", "a b.yaml", "--json")).toEqual({ status: 1, out: "check|a b.yaml|--json\n", err: "" });
  });

  test("works through a link, as package installers make one", () => {
    put("dist/electron/command-line.js", "export const main = async () => 0;\n");
    symlinkSync(join(home, "electron/registrant"), join(home, "linked"));
    expect(spawnSync(join(home, "linked"), []).status).toBe(0);
  });

  const install = (): void => {
    for (const path of ["tsconfig.json", "electron/tsconfig.json"]) put(path, readFileSync(join(ROOT, path), "utf8"));
    symlinkSync(join(ROOT, "node_modules"), join(home, "node_modules"));
    put("shared-model/pitch/foot.ts", "export const foot = 8;\n");
  };

  test("builds once when it is not built, and says so in one line", () => {
    install();
    put("electron/command-line.ts", SOURCE);
    expect(registrant("a", "b")).toEqual({
      status: 2,
      out: "a|b\n",
      err: "registrant: not built yet; building once ...\n",
    });
    expect(registrant("a")).toEqual({ status: 1, out: "a\n", err: "" });
  }, 60_000);

  test("a source that does not compile is shown, and nothing half-built stays", () => {
    install();
    put("electron/command-line.ts", `${SOURCE}\nconst wrong: number = "eight feet";\n`);
    for (const _ of ["first", "second"]) {
      const { status, out, err } = registrant();
      expect([status, out]).toEqual([2, ""]);
      expect(err).toContain("electron/command-line.ts");
      expect(err).toContain('run "npm ci" and then "npm run build"');
    }
  }, 60_000);

  test("without the compiler it says what to run", () => {
    expect(registrant("read", "list.txt")).toEqual({
      status: 2,
      out: "",
      err: `registrant: cannot be built here; run "npm ci" and then "npm run build" in ${home}\n`,
    });
  });
});
