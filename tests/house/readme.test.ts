import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ROOT, textOf } from "./source-files.ts";

interface Command {
  readonly page: string;
  readonly line: number;
  readonly words: string;
}

/** The command lines of a page: those of its blocks marked as shell, without prompts, comments and blank lines. */
function commandsOf(page: string, text: string): readonly Command[] {
  let inside = false;
  return text.split("\n").flatMap((line, at) => {
    const fence = /^\s*```(\w*)/.exec(line);
    if (fence) {
      inside = !inside && /^(?:sh|bash|shell|console)$/.test(fence[1] as string);
      return [];
    }
    const words = line
      .replace(/^\s*\$ /, "")
      .replace(/\s+#.*$/, "")
      .trim();
    return inside && words !== "" && !words.startsWith("#") ? [{ page, line: at + 1, words }] : [];
  });
}

const pages = ["README.md", "DEVELOPERS.md"].filter((page) => existsSync(join(ROOT, page)));
const commands = pages.flatMap((page) => commandsOf(page, textOf(page)));
const { scripts } = JSON.parse(textOf("package.json")) as { scripts: Record<string, string> };
const examples = commands.filter(
  ({ words }) => /^(?:npx )?registrant [a-z-]/.test(words) && !/registrant open/.test(words),
);

describe("the commands of the pages", () => {
  test("the README gives the test command, and the CI runs that very one", () => {
    expect(commandsOf("README.md", textOf("README.md")).map(({ words }) => words)).toContain("npm test");
    expect(textOf(".ci/run")).toMatch(/^npm ci$/m);
    expect(textOf(".ci/run")).toMatch(/^npm test\b/m);
  });

  test("every npm command exists, and no line is of a kind that is not checked", () => {
    const faults = commands.flatMap(({ page, line, words }) => {
      const script = /^npm (?:run )?(?:--silent )?([a-z:-]+)/.exec(words)?.[1];
      if (script === "ci" || script === "install" || script === "test") return [];
      if (script) return scripts[script] ? [] : [`${page}:${line} ${words}: package.json has no script "${script}".`];
      if (/^(?:npx )?registrant\b/.test(words) || /^(?:git clone|cd) /.test(words)) return [];
      return [`${page}:${line} ${words}: not a command that this test can check.`];
    });
    expect(faults).toEqual([]);
  });

  test("a shell block is found, another is not", () => {
    const page = "```sh\n$ npm test   # everything\n\n# a remark\n```\n```yaml\nname: npm run none\n```\n";
    expect(commandsOf("page", page)).toEqual([{ page: "page", line: 2, words: "npm test" }]);
  });
});

describe("the examples of the pages", () => {
  let folder = "";

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "registrant-readme-"));
    cpSync(join(ROOT, "instruments"), join(folder, "instruments"), { recursive: true });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test("there are some", () => expect(examples.length).toBeGreaterThan(0));

  // In the order of the page: an example may use a file that one before it wrote.
  test.each(examples)("$page:$line $words", ({ words }) => {
    const shell = 'registrant() { "$REGISTRANT" "$@"; }; npx() { "$@"; }; set -o pipefail; ';
    const run = spawnSync("bash", ["-c", shell + words], {
      cwd: folder,
      encoding: "utf8",
      env: { ...process.env, REGISTRANT: join(ROOT, "electron/registrant") },
    });
    // 1 is an answer too (an error found, a texture that the organ cannot play); 2 is a command that does not work.
    expect([0, 1], run.stderr).toContain(run.status);
    expect(run.stdout + run.stderr).not.toBe("");
  });
});
