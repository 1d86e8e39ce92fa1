import { existsSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Host, HostFacts, HostTrouble, LibraryChange } from "../../shared-model/host-api.ts";
import { Machine, organText, until } from "./fixtures.ts";

/** Two windows on one machine. */
export interface Windows {
  readonly first: Host;
  readonly second: Host;
  readonly close: () => Promise<void>;
}

const troubleOf = async (promise: Promise<unknown>): Promise<HostTrouble> => {
  const met: unknown = await promise.then(
    () => null,
    (error: unknown) => error,
  );
  expect(met).not.toBeInstanceOf(Error);
  return met as HostTrouble;
};

/** What every host must keep. Run with each of them. */
export function hostContract(name: HostFacts["host"], open: (machine: Machine) => Promise<Windows>): void {
  describe(`the ${name} host`, () => {
    let machine: Machine;
    let windows: Windows;
    let host: Host;

    beforeEach(async () => {
      machine = new Machine();
      windows = await open(machine);
      host = windows.first;
    });
    afterEach(async () => {
      await windows.close();
      machine.clear();
    });

    const onDisk = (file: string): string => readFileSync(join(machine.library, file), "utf8");

    test("says where it runs and where the library lies", async () => {
      const facts = await host.facts();
      expect(facts).toMatchObject({ host: name, library: machine.library });
      expect(facts.version).toMatch(/^\d+\.\d+\.\d+$/);
      expect(["linux", "mac", "windows"]).toContain(facts.platform);
    });

    test("lists the demo organs, and the library by kind and name", async () => {
      machine.put("library/pieces/psalm.yaml", "registrant: piece/1\nname: A psalm\n");
      machine.put("library/organs/zw.yaml", organText("Zwettin"));
      machine.put("library/mine/brae.yml", organText("Abberbrae"));
      machine.put("library/list.yaml", "stops: []\n");
      const list = await host.list();
      expect(list.filter(({ demo }) => demo).length).toBeGreaterThan(8);
      expect(list.filter(({ demo }) => !demo).map(({ kind, name: called, file }) => [kind, called, file])).toEqual([
        ["instrument", "Abberbrae", "mine/brae.yml"],
        ["instrument", "Zwettin", "organs/zw.yaml"],
        ["piece", "A psalm", "pieces/psalm.yaml"],
        [null, "list", "list.yaml"],
      ]);
      expect(list.at(-1)?.trouble).toBe(
        "It does not say what it is. A document of Registrant begins with a line such as registrant: instrument/1",
      );
    });

    test("tells of each document what is in it, and which organ was opened last", async () => {
      machine.put(
        "library/pieces/psalm.yaml",
        "registrant: piece/1\nname: A psalm\norgan: Zwettin\nsections:\n  - texture: plenum\n",
      );
      machine.put(
        "library/organs/zw.yaml",
        "registrant: instrument/1\nname: Zwettin\nyear: 1741\ndivisions:\n  - name: Hauptwerk\n    kind: manual\n    stops: [Principal 8, Octave 4]\n  - name: Pedal\n    kind: pedal\n    stops: []\n",
      );
      machine.put("library/organs/broken.yaml", "registrant: instrument/1\nname: Broken\ndivisions: 3\n");
      const zwettin = "library:organs/zw.yaml";
      await host.opened("demo:sallowby.yaml");
      await host.opened(zwettin);
      const list = await host.list();
      const of = (id: string) => list.find((each) => each.id === id);
      expect(of(zwettin)?.facts).toEqual({ of: "instrument", manuals: 1, pedal: "pull-down", stops: 2, year: 1741 });
      expect(of("library:pieces/psalm.yaml")?.facts).toEqual({ of: "piece", sections: 1, organ: "Zwettin" });
      expect(of("library:organs/broken.yaml")).toMatchObject({ name: "Broken", facts: null });
      expect(of("demo:sallowby.yaml")).toMatchObject({ facts: { stops: 16 }, opened: 1 });
      expect(of(zwettin)?.opened).toBe(0);
      expect(of("demo:wiekenborg.yaml")?.opened).toBeNull();
    });

    test("creates, reads, saves, and keeps the version before", async () => {
      const created = await host.create({ kind: "instrument", name: "St. Maren: große Orgel", text: organText("a") });
      expect(created.id).toBe("library:organs/st-maren-grosse-orgel.yaml");
      expect(await host.read(created.id)).toEqual(created);
      expect(await host.previous(created.id)).toBeNull();

      const saved = await host.save({ id: created.id, text: organText("b"), seen: created.version });
      expect(saved.done).toBe("saved");
      expect(onDisk("organs/st-maren-grosse-orgel.yaml")).toBe(organText("b"));
      expect((await host.previous(created.id))?.text).toBe(organText("a"));
      expect(await host.read(created.id)).toMatchObject({ version: "version" in saved ? saved.version : "" });
    });

    test("keeps every byte of a text: mark, line ends, letters", async () => {
      const text = "\uFEFFregistrant: instrument/1\r\nname: Orgel in Ø, \u{1D11E} 2⅔ \u0000\t\r\n";
      const { id, version } = await host.create({ kind: "instrument", name: "x", text });
      expect((await host.read(id)).text).toBe(text);
      const now = await host.save({ id, text: `${text}#`, seen: version });
      expect(now.done).toBe("saved");
      expect(readFileSync(join(machine.library, "organs/x.yaml"))).toEqual(Buffer.from(`${text}#`));
    });

    test("does not write over what others wrote, and shows it", async () => {
      const { id, version } = await host.create({ kind: "instrument", name: "x", text: organText("mine") });
      writeFileSync(join(machine.library, "organs/x.yaml"), organText("theirs"));
      const result = await host.save({ id, text: organText("mine again"), seen: version });
      expect(result).toMatchObject({ done: "changed-underneath", now: { id, text: organText("theirs") } });
      expect(onDisk("organs/x.yaml")).toBe(organText("theirs"));

      rmSync(join(machine.library, "organs/x.yaml"));
      expect(await host.save({ id, text: organText("mine"), seen: version })).toEqual({
        done: "changed-underneath",
        now: null,
      });
      expect(existsSync(join(machine.library, "organs/x.yaml"))).toBe(false);
    });

    test("never creates over another document, whatever its letters", async () => {
      const request = { kind: "instrument", name: "Maren", text: organText("one") } as const;
      await host.create(request);
      writeFileSync(join(machine.library, "organs/MAREN-2.yaml"), "theirs");
      expect((await host.create(request)).id).toBe("library:organs/maren-3.yaml");
      expect(onDisk("organs/MAREN-2.yaml")).toBe("theirs");
    });

    test("discards into the bin, with the version kept", async () => {
      const { id, version } = await host.create({ kind: "piece", name: "x", text: "a" });
      await host.save({ id, text: "b", seen: version });
      await host.discard(id);
      expect(onDisk("discarded/pieces/x.yaml")).toBe("b");
      expect(onDisk("discarded/pieces/x.yaml~")).toBe("a");
      expect((await troubleOf(host.read(id))).trouble).toBe("gone");
      const again = await host.create({ kind: "piece", name: "x", text: "c" });
      expect([again.id, await host.previous(again.id)]).toEqual([id, null]);
      await host.discard(again.id);
      expect(onDisk("discarded/pieces/x-2.yaml")).toBe("c");
      expect((await host.list()).filter(({ demo }) => !demo)).toEqual([]);
    });

    test("notes what was printed beside the piece, apart from it, until that is discarded", async () => {
      const printed = [
        { what: "3", mark: "a-b", when: 1_700_000_000_000 },
        { what: "overview", mark: "c-d", when: 1_700_000_000_001 },
      ];
      const { id, version } = await host.create({ kind: "piece", name: "x", text: "registrant: piece/1\n" });
      expect(await host.printed(id)).toEqual([]);
      await host.notePrinted({ id, printed });
      await host.notePrinted({ id, printed: printed.slice(0, 1) });
      await host.notePrinted({ id, printed });
      expect(await windows.second.printed(id)).toEqual(printed);
      expect((await host.read(id)).version).toBe(version);
      expect((await host.list()).filter(({ demo }) => !demo).map(({ file }) => file)).toEqual(["pieces/x.yaml"]);

      machine.put("library/pieces/.x.yaml.printed", '{"printed": [{"what": 3}]}');
      expect(await host.printed(id)).toEqual([]);
      await host.notePrinted({ id, printed });
      await host.discard(id);
      expect((await troubleOf(host.notePrinted({ id, printed }))).trouble).toBe("gone");
      await host.create({ kind: "piece", name: "x", text: "registrant: piece/1\n" });
      expect(await host.printed(id)).toEqual([]);
      expect((await troubleOf(host.notePrinted({ id, printed: [{ what: "", mark: "x", when: 1 }] }))).trouble).toBe(
        "failed",
      );
      expect((await troubleOf(host.notePrinted({ id: "demo:sallowby.yaml", printed }))).trouble).toBe("not-allowed");
      expect((await troubleOf(host.notePrinted({ id: "library:../x.yaml", printed }))).trouble).toBe("not-allowed");
    });

    test("reads demo organs and refuses to change them", async () => {
      const id = "demo:sallowby.yaml";
      const { text, version } = await host.read(id);
      expect(text).toContain("All Saints, Sallowby");
      for (const change of [host.save({ id, text: "x", seen: version }), host.discard(id)]) {
        expect(await troubleOf(change)).toEqual({
          trouble: "not-allowed",
          words: "A demo organ stays as it is. Make a copy of it and change the copy.",
        });
      }
      expect(await host.previous(id)).toBeNull();
      expect((await host.create({ kind: "instrument", name: "Sallowby", text })).text).toBe(text);
    });

    test.each([
      "library:../secret.yaml",
      "library:organs/../../secret.yaml",
      "library:/etc/passwd",
      "library:organs/..\\secret.yaml",
      "library:organs/.hidden.yaml",
      "library:organs/con.yaml",
      "library:organs/x.yaml:stream.yaml",
      "library:organs/x.yaml\u0000.yaml",
      "library:discarded/x.yaml",
      "library:organs/x.yaml~",
      "library:organs/x.txt",
      "library:organs//x.yaml",
      "library:",
      "demo:../package.json",
      "demo:examples/tune-on-the-oboe.yaml",
      "/etc/passwd",
      "file:///etc/passwd",
    ])("leads nowhere else: %s", async (id) => {
      machine.put("secret.yaml", "outside");
      for (const asked of [
        host.read(id),
        host.previous(id),
        host.save({ id, text: "x", seen: "x" }),
        host.discard(id),
      ]) {
        const met = await troubleOf(
          asked.then((answer) => (answer === null ? Promise.reject({ trouble: "gone" }) : answer)),
        );
        expect(["not-allowed", "gone"]).toContain(met.trouble);
      }
      expect(readFileSync(join(machine.folder, "secret.yaml"), "utf8")).toBe("outside");
    });

    test("follows no link, neither to a file nor through a folder", async () => {
      const outside = machine.put("outside/organ.yaml", organText("outside"));
      machine.put("library/organs/in.yaml", organText("in"));
      symlinkSync(outside, join(machine.library, "organs/link.yaml"));
      symlinkSync(join(machine.folder, "outside"), join(machine.library, "linked"));
      for (const id of ["library:organs/link.yaml", "library:linked/organ.yaml"]) {
        expect((await troubleOf(host.read(id))).words).toContain("Links are not followed");
        expect((await troubleOf(host.discard(id))).trouble).toBe("not-allowed");
        expect((await troubleOf(host.save({ id, text: "x", seen: "y" }))).trouble).toBe("not-allowed");
      }
      expect(readFileSync(outside, "utf8")).toBe(organText("outside"));
      const list = (await host.list()).filter(({ demo, kind }) => !demo && kind === null);
      expect(list.map(({ file, trouble }) => [file, trouble?.includes("Links are not followed")])).toEqual([
        ["organs/link.yaml", true],
        ["linked", true],
      ]);
    });

    test("tells of what is no text, and of what is too long", async () => {
      machine.put("library/organs/old.yaml", Buffer.from("name: Fl\u00f6te", "latin1"));
      machine.put("library/organs/long.yaml", Buffer.alloc(5_000_001, "#"));
      expect((await troubleOf(host.read("library:organs/old.yaml"))).trouble).toBe("not-text");
      expect((await troubleOf(host.read("library:organs/long.yaml"))).trouble).toBe("too-large");
      const text = "ö".repeat(2_500_001);
      const tooLong = await troubleOf(host.create({ kind: "piece", name: "long", text }));
      expect(tooLong.trouble).toBe("too-large");
      const broken = await troubleOf(host.create({ kind: "piece", name: "half", text: "\uD834" }));
      expect(["not-text", "failed"]).toContain(broken.trouble);
      expect(existsSync(join(machine.library, "pieces"))).toBe(false);
    });

    test("takes the longest document there may be", async () => {
      const text = "\n".repeat(5_000_000);
      const { id } = await host.create({ kind: "piece", name: "long", text });
      expect((await host.read(id)).text === text).toBe(true);
    });

    test("refuses what is not of the interface", async () => {
      const odd = host as unknown as Record<string, (...words: unknown[]) => Promise<unknown>>;
      for (const asked of [
        odd.read?.(7),
        odd.read?.(),
        odd.save?.({ id: "library:organs/x.yaml", text: "x" }),
        odd.create?.({ kind: "folder", name: "x", text: "x" }),
        odd.create?.({ kind: "piece", name: "x", text: "x", mode: 511 }),
      ]) {
        expect((await troubleOf(asked as Promise<unknown>)).trouble).toBe("failed");
      }
    });

    test("tells other windows of changes, and this one only of others' doing", async () => {
      const [told, toldOther]: [LibraryChange[], LibraryChange[]] = [[], []];
      const end = host.watch((changes) => told.push(...changes));
      const endOther = windows.second.watch((changes) => toldOther.push(...changes));
      await Promise.all([host.list(), windows.second.list()]);
      // The line on which windows are told opens beside the calls.
      await new Promise((done) => setTimeout(done, 300));
      const { id, version } = await host.create({ kind: "instrument", name: "x", text: organText("a") });
      await host.save({ id, text: organText("b"), seen: version });
      await until("the other window hears of the save", () => toldOther.length >= 2);
      expect(toldOther).toEqual([
        { id, what: "added" },
        { id, what: "changed" },
      ]);

      machine.put("library/organs/new.yaml", organText("new"));
      writeFileSync(join(machine.library, "organs/x.yaml"), organText("c"));
      await until("the window hears of others' work", () => told.length >= 2);
      rmSync(join(machine.library, "organs/new.yaml"));
      await until("the window hears of a removal", () => told.length >= 3);
      expect(told.slice(0, 2).sort((a, b) => (a.id < b.id ? -1 : 1))).toEqual([
        { id: "library:organs/new.yaml", what: "added" },
        { id, what: "changed" },
      ]);
      expect(told[2]).toEqual({ id: "library:organs/new.yaml", what: "removed" });
      end();
      endOther();
    });
  });
}
