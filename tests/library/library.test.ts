import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type Disk, realDisk } from "../../electron/library/disk.ts";
import { headOf } from "../../electron/library/document-head.ts";
import { Library } from "../../electron/library/library.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "registrant-library-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const put = (path: string, text: string): void => {
  mkdirSync(join(folder, path, ".."), { recursive: true });
  writeFileSync(join(folder, path), text);
};

describe("what a document calls itself", () => {
  const organ = "registrant: instrument/1\n";
  test.each([
    ["name: All Saints, Sallowby", "All Saints, Sallowby"],
    ["name: 'St. Maren: west'  # the west organ", "St. Maren: west"],
    ['name: "Orgel \\u2169"', "Orgel Ⅹ"],
    ["name: 1904", "1904"],
    ["  name: of something else", null],
    ["name: >-\n  folded", null],
    ["name: [a, b]", null],
    ["name: *loop", null],
    ["name: 'open", null],
    [`name: ${"x".repeat(300)}`, null],
    ["name:", null],
  ])("%s", (line, name) => expect(headOf(`${organ}${line}\nbroken: [`).name).toBe(name));
});

describe("listing", () => {
  test("reads again only what was written since", async () => {
    const opened: string[] = [];
    const open: Disk["open"] = (path, flags, mode) => {
      opened.push(String(path).slice(folder.length + 1));
      return realDisk.open(path, flags, mode);
    };
    // Written a while ago, but for the second writing.
    let age = 60_000;
    const lstat = (async (path: string, options: { bigint: true }) => {
      const status = await realDisk.lstat(path, options);
      const [changed, made] = [status.mtimeMs - BigInt(age), status.ctimeMs - BigInt(age)];
      return Object.assign(status, { mtimeMs: changed, ctimeMs: made });
    }) as Disk["lstat"];
    const library = new Library(folder, { ...realDisk, open, lstat });
    put("organs/a.yaml", "registrant: instrument/1\nname: A\n");
    put("organs/b.yaml", "registrant: instrument/1\nname: B\n");
    await library.list();
    age = 0;
    put("organs/b.yaml", "registrant: instrument/1\nname: C\n");
    expect((await library.list()).map(({ name }) => name)).toEqual(["A", "C"]);
    expect(opened.sort()).toEqual(["organs/a.yaml", "organs/b.yaml", "organs/b.yaml"]);
  });

  test("a library that is not there yet is empty, and comes with its first document", async () => {
    const library = new Library(join(folder, "Registrant"));
    expect(await library.list()).toEqual([]);
    expect(readdirSync(folder)).toEqual([]);
    await library.create({ kind: "section", name: "Verse 3", text: "x" }, "");
    expect(readdirSync(join(folder, "Registrant/sections"))).toEqual(["verse-3.yaml"]);
  });

  test("a library on a disk that is not there is told, not made", async () => {
    const library = new Library(join(folder, "disk/Registrant"));
    await expect(library.create({ kind: "piece", name: "x", text: "x" }, "")).rejects.toMatchObject({
      trouble: "gone",
    });
    expect(readdirSync(folder)).toEqual([]);
  });

  test("a chosen library that is not there is told, and nothing is made in its place", async () => {
    const library = new Library(join(folder, "usb"), realDisk, false);
    const words = `${join(folder, "usb")}: This folder of your library is not there. Plug in its disk, or choose another folder.`;
    expect(await library.list()).toMatchObject([{ id: "library:", kind: null, trouble: words }]);
    await expect(library.create({ kind: "piece", name: "x", text: "x" }, "")).rejects.toMatchObject({
      trouble: "gone",
      message: words,
    });
    expect(readdirSync(folder)).toEqual([]);
    mkdirSync(join(folder, "usb"));
    await library.create({ kind: "piece", name: "x", text: "x" }, "");
    expect((await library.list()).map(({ file }) => file)).toEqual(["pieces/x.yaml"]);
  });

  test("a folder that cannot be read for a moment has not lost its documents", async () => {
    let closed = false;
    const readdir = ((path: string, options: never) =>
      closed && path.endsWith("organs")
        ? Promise.reject(Object.assign(new Error("hiccup"), { code: "EIO" }))
        : realDisk.readdir(path, options)) as Disk["readdir"];
    const library = new Library(folder, { ...realDisk, readdir });
    put("organs/a.yaml", "x");
    put("b.yaml", "x");
    await library.list();
    closed = true;
    const told: unknown[] = [];
    const end = library.watch("", (changes) => told.push(...changes));
    expect((await library.list()).map(({ file }) => file).sort()).toEqual(["b.yaml", "organs/a.yaml"]);
    end();
    expect(told).toEqual([]);
  });

  test("names that not every computer takes are shown with the reason, hidden and foreign files are not", async () => {
    for (const name of ["a:b.yaml", "nul.yaml", ".hidden.yaml", "notes.txt", "x.yaml~", "good.YAML"])
      put(name, "name: x\n");
    const list = await new Library(folder).list();
    expect(list.map(({ file, trouble }) => [file, trouble?.slice(0, 8)]).sort()).toEqual([
      ["a:b.yaml", "Its name"],
      ["good.YAML", "It does "],
      ["nul.yaml", "Its name"],
    ]);
  });

  test("drafts of a process that was stopped go, those of one that lives stay", async () => {
    await new Library(folder).create({ kind: "piece", name: "x", text: "x" }, "");
    let draft = "";
    const open: Disk["open"] = (path, flags, mode) => {
      if (flags === "wx") draft = String(path);
      return realDisk.open(path, flags, mode);
    };
    await new Library(folder, { ...realDisk, open }).create({ kind: "piece", name: "y", text: "x" }, "");
    writeFileSync(draft, "mine, unfinished");
    // No process has this number: it is above the highest that systems give.
    writeFileSync(draft.replace(`-${process.pid}-`, "-4194999-"), "forgotten");
    writeFileSync(draft.replace(/[0-9a-f]{8}-\d+-/, "00000000-4194999-"), "of another machine");
    await new Library(folder).list();
    expect(readdirSync(join(folder, "pieces")).length).toBe(4);
    rmSync(draft);
    expect(readdirSync(join(folder, "pieces")).filter((name) => name.endsWith(".part")).length).toBe(1);
  });

  test("more documents than anyone has are not all read", async () => {
    mkdirSync(join(folder, "many"));
    for (let number = 0; number < 5001; number += 1) writeFileSync(join(folder, "many", `${number}.yaml`), "");
    const list = await new Library(folder).list();
    expect(list.length).toBe(5001);
    expect(list.at(-1)).toMatchObject({ id: "library:", trouble: expect.stringContaining(folder) });
  });
});

describe("watching", () => {
  const told = async (library: Library, act: () => void | Promise<void>): Promise<readonly string[]> => {
    const changes: string[] = [];
    await library.list();
    const end = library.watch("", (each) => changes.push(...each.map(({ id, what }) => `${what} ${id}`)));
    await library.list();
    await act();
    await library.list();
    end();
    return changes;
  };

  test("a new time on the same text is no change", async () => {
    put("organs/a.yaml", "x");
    expect(await told(new Library(folder), () => utimesSync(join(folder, "organs/a.yaml"), 1, 1))).toEqual([]);
  });

  test("a file moved by hand went and came", async () => {
    put("organs/a.yaml", "x");
    const move = (): void => renameSync(join(folder, "organs/a.yaml"), join(folder, "b.yaml"));
    expect(await told(new Library(folder), move)).toEqual(["removed library:organs/a.yaml", "added library:b.yaml"]);
  });

  test("what was written between the list and the watch is told", async () => {
    const library = new Library(folder);
    put("organs/a.yaml", "x");
    await library.list();
    put("organs/a.yaml", "xy");
    const changes: string[] = [];
    const end = library.watch("", (each) => changes.push(...each.map(({ what }) => what)));
    await library.list();
    end();
    expect(changes).toEqual(["changed"]);
  });

  test("a text of the same length, written within one step of the disk's clock, is a change", async () => {
    const frozen = new Map<string, unknown>();
    const lstat = (async (path: string, options: { bigint: true }) => {
      const status = frozen.get(path) ?? (await realDisk.lstat(path, options));
      frozen.set(path, status);
      return status;
    }) as Disk["lstat"];
    put("pieces/a.yaml", "registrant: piece/1\nname: A\n");
    const library = new Library(folder, { ...realDisk, lstat });
    await library.list();
    const changes: string[] = [];
    const end = library.watch("", (each) => changes.push(...each.map(({ what }) => what)));
    put("pieces/a.yaml", "registrant: piece/1\nname: B\n");
    expect((await library.list()).map(({ name }) => name)).toEqual(["B"]);
    expect(changes).toEqual(["changed"]);
    end();
  });

  test("what another program writes in the moment after a save is told to the window that saved, too", async () => {
    put("pieces/a.yaml", "registrant: piece/1\nname: A\n");
    const theirs = "registrant: piece/1\nname: Theirs\n";
    const rename: Disk["rename"] = async (from, to) => {
      await realDisk.rename(from, to);
      if (String(to).endsWith("a.yaml")) put("pieces/a.yaml", theirs);
    };
    const library = new Library(folder, { ...realDisk, rename });
    const [entry] = await library.list();
    const { id, version } = await library.read(entry?.id ?? "");
    const told: string[] = [];
    const end = library.watch("mine", (each) => told.push(...each.map(({ what }) => what)));
    expect(await library.save({ id, text: "registrant: piece/1\nname: Mine\n", seen: version }, "mine")).toMatchObject({
      done: "saved",
    });
    expect(told).toEqual(["changed"]);
    expect((await library.read(id)).text).toBe(theirs);
    await library.list();
    expect(told).toEqual(["changed"]);
    end();
  });

  test("what a listener reads is not older than the first look, so that every change behind it is told", async () => {
    put("pieces/a.yaml", "registrant: piece/1\nname: A\n");
    let begin = (): void => {};
    const begun = new Promise<void>((done) => {
      begin = done;
    });
    // The first look begins before the reading, and takes long.
    let isFirst = true;
    const readdir = (async (...words: Parameters<typeof realDisk.readdir>) => {
      const waits = isFirst;
      isFirst = false;
      if (waits) await begun;
      return realDisk.readdir(...words);
    }) as Disk["readdir"];
    const opened: string[] = [];
    const open: Disk["open"] = (path, flags, mode) => {
      opened.push(String(path));
      return realDisk.open(path, flags, mode);
    };
    const library = new Library(folder, { ...realDisk, readdir, open });
    const changes: string[] = [];
    const end = library.watch("", (each) => changes.push(...each.map(({ what }) => what)));
    const reading = library.read("library:pieces/a.yaml");
    // Time enough for a reading that waits for nothing.
    for (let turn = 0; turn < 100; turn += 1) await realDisk.lstat(folder);
    expect(opened).toEqual([]);
    begin();
    expect((await reading).text).toContain("name: A");
    put("pieces/a.yaml", "registrant: piece/1\nname: Theirs\n");
    await library.list();
    expect(changes).toEqual(["changed"]);
    end();
  });

  test("nothing is told after the end", async () => {
    const library = new Library(folder);
    const changes: unknown[] = [];
    library.watch("", (each) => changes.push(...each))();
    put("organs/a.yaml", "x");
    await library.list();
    expect(changes).toEqual([]);
  });
});
