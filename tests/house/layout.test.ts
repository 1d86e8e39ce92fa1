import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { projectFiles, ROOT, textOf } from "./source-files.ts";

const FOLDERS = ["electron", "instruments", "renderer", "shared-model", "tests"];
const FILES = ["DEVELOPERS.md", "LICENSE", "README.md", "package-lock.json", "package.json", "tsconfig.json"];

describe("the top level", () => {
  test("holds the fixed folders and files, and dotfiles, nothing else", () => {
    const names = new Set(projectFiles().map((path) => path.split("/")[0] as string));
    expect(
      [...names].filter((name) => !name.startsWith(".") && !FOLDERS.includes(name) && !FILES.includes(name)),
    ).toEqual([]);
    expect(FILES.filter((name) => !names.has(name))).toEqual([]);
  });

  test("commands can be executed", () => {
    for (const path of ["electron/registrant", ".ci/run"]) {
      expect([path, statSync(join(ROOT, path)).mode & 0o111]).toEqual([path, 0o111]);
      expect(textOf(path)).toMatch(/^#!\/usr\/bin\/env (?:node|bash)\n/);
    }
  });
});

describe("downloads", () => {
  test("the lock file names no address", () => {
    const lock = JSON.parse(textOf("package-lock.json")) as { packages: Record<string, { resolved?: string }> };
    expect(Object.keys(lock.packages).length).toBeGreaterThan(20);
    expect(Object.keys(lock.packages).filter((path) => lock.packages[path]?.resolved !== undefined)).toEqual([]);
    expect(textOf("package-lock.json")).not.toMatch(/"resolved"/);
  });

  test("no file holds the address of a package's archive or of a registry", () => {
    const address = /https?:\/\/[^\s"'`<>)]*(?:\.tgz\b|\/\/registry\.|[/.]npmjs\.(?:org|com)\/[^\s"'`]*-\/)/;
    const host = /\/\/registry\.[a-z0-9-]+\.[a-z]{2,}/;
    // An archive address as a lock file would hold it, parted so that this file does not hold one.
    expect(address.test(["https:/", "packages.example", "zod", "-", "zod-4.0.0.tgz"].join("/"))).toBe(true);
    expect(host.test(["https:/", "registry.example.org"].join("/"))).toBe(true);
    const found = projectFiles().filter((path) => {
      const text = readFileSync(join(ROOT, path), "latin1");
      return address.test(text) || host.test(text);
    });
    expect(found).toEqual([]);
  });

  test("the installer is told to leave addresses out", () => {
    expect(textOf(".npmrc").split("\n")).toContain("omit-lockfile-registry-resolved=true");
  });
});
