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
  /** What the page says it prints; `null` where the page shows nothing. */
  readonly prints: string | null;
}

/**
 * The command lines of a page: those of its blocks marked as shell, without prompts, comments and blank lines. A block
 * marked as text right behind one is what its last command prints.
 */
function commandsOf(page: string, text: string): readonly Command[] {
  const lines = text.split("\n");
  const commands: Command[] = [];
  let block: "shell" | "other" | null = null;
  lines.forEach((line, at) => {
    const fence = /^\s*```(\w*)/.exec(line);
    if (fence) {
      const mark = fence[1] as string;
      const last = commands.at(-1);
      if (block === null && mark === "text" && last && /^\s*```$/.test(lines[at - 1] ?? "")) {
        const shown = lines.slice(at + 1, lines.indexOf("```", at + 1));
        commands.splice(-1, 1, { ...last, prints: shown.map((each) => `${each}\n`).join("") });
      }
      block = block !== null ? null : /^(?:sh|bash|shell|console)$/.test(mark) ? "shell" : "other";
      return;
    }
    const words = line
      .replace(/^\s*\$ /, "")
      .replace(/\s+#.*$/, "")
      .trim();
    if (block === "shell" && words !== "" && !words.startsWith("#"))
      commands.push({ page, line: at + 1, words, prints: null });
  });
  return commands;
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
    expect(commandsOf("page", page)).toEqual([{ page: "page", line: 2, words: "npm test", prints: null }]);
  });

  test("what stands right behind a shell block is what it prints, another text is not", () => {
    const page = "```sh\na\nb\n```\n```text\none\n\n two\n```\nWords.\n```text\nthree\n```\n```sh\nc\n```\n";
    expect(commandsOf("page", page).map(({ words, prints }) => [words, prints])).toEqual([
      ["a", null],
      ["b", "one\n\n two\n"],
      ["c", null],
    ]);
  });
});

describe("the examples of the pages", () => {
  let folder = "";

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "registrant-readme-"));
    cpSync(join(ROOT, "instruments"), join(folder, "instruments"), { recursive: true });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test("there are some, and the tour shows what they print", () => {
    expect(examples.filter((each) => each.prints !== null).length).toBeGreaterThan(4);
  });

  // In the order of the page: an example may use a file that one before it wrote.
  test.each(examples)("$page:$line $words", ({ words, prints, page }) => {
    // Both streams in one, as a terminal shows them.
    const shell = 'registrant() { "$REGISTRANT" "$@"; }; npx() { "$@"; }; set -o pipefail; exec 2>&1; ';
    const run = spawnSync("bash", ["-c", shell + words], {
      cwd: folder,
      encoding: "utf8",
      env: { ...process.env, REGISTRANT: join(ROOT, "electron/registrant") },
    });
    // 1 is an answer too (an error found, a texture that the organ cannot play); 2 is a command that does not work.
    expect([0, 1], run.stdout).toContain(run.status);
    expect(run.stdout).not.toBe("");
    const stale = `${page} shows something else; build, run the command, and paste what it prints if it is right.`;
    if (prints !== null) expect(run.stdout, stale).toBe(prints);
  });
});
