import {
  appendFileSync,
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type Disk, realDisk } from "../../electron/library/disk.ts";
import { Library } from "../../electron/library/library.ts";

let folder = "";
const organs = (): Record<string, string> =>
  Object.fromEntries(readdirSync(join(folder, "organs")).map((name) => [name, text(name)]));
const text = (name: string): string => readFileSync(join(folder, "organs", name), "utf8");
const put = (name: string, content: string): void => writeFileSync(join(folder, "organs", name), content);

const failure = (code: string): Error => Object.assign(new Error(code), { code });
const failing = (change: Partial<Disk>): Library => new Library(folder, { ...realDisk, ...change });

/** A document "a" at organs/x.yaml. */
async function started(library: Library): Promise<{ id: string; seen: string }> {
  const { id, version } = await library.create({ kind: "instrument", name: "x", text: "a" }, "");
  return { id, seen: version };
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "registrant-library-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** `open` of a disk whose files let one of their methods fail. */
const openFailing = (method: "writeFile" | "sync", error: Error): Disk["open"] => {
  return async (path, flags, mode) => {
    const handle = await realDisk.open(path, flags, mode);
    if (flags !== "wx") return handle;
    return new Proxy(handle, {
      get: (target, key) => {
        if (key !== method) {
          const value: unknown = Reflect.get(target, key);
          return typeof value === "function" ? value.bind(target) : value;
        }
        return async (...words: unknown[]) => {
          if (method === "writeFile") await target.writeFile(String(words[0]).slice(0, 1));
          throw error;
        };
      },
    });
  };
};

describe("saving to a disk that fails", () => {
  test.each<[string, Partial<Disk>, string, string]>([
    ["it is full halfway", { open: openFailing("writeFile", failure("ENOSPC")) }, "no-room", "The disk is full"],
    ["it cannot be flushed", { open: openFailing("sync", failure("EIO")) }, "failed", "The disk answers with an error"],
    ["it can only be read", { open: async () => Promise.reject(failure("EROFS")) }, "not-allowed", "only be read"],
    ["the name is refused", { rename: () => Promise.reject(failure("EACCES")) }, "not-allowed", "permissions"],
    ["no second name is given", { link: () => Promise.reject(failure("EIO")) }, "failed", "an error"],
    [
      "the file is locked for writing",
      { access: () => Promise.reject(failure("EACCES")) },
      "not-allowed",
      "permissions",
    ],
  ])("%s: the old file stands, and nothing else", async (_case, change, trouble, words) => {
    const { id, seen } = await started(new Library(folder));
    const library = failing(change);
    const met = await library.save({ id, text: "b", seen }, "").catch((error: unknown) => error);
    expect(met).toMatchObject({ trouble, message: expect.stringContaining(words) });
    expect(met).toMatchObject({ message: expect.stringMatching(/^organs\/x\.yaml: /) });
    expect(organs()).toEqual({ "x.yaml": "a" });
  });

  test("a scanner that holds the file for a moment is waited for", async () => {
    let refusals = 3;
    const rename: Disk["rename"] = async (from, to) => {
      refusals -= 1;
      if (refusals >= 0) throw failure("EPERM");
      await realDisk.rename(from, to);
    };
    const library = failing({ rename });
    const { id, seen } = await started(library);
    expect(await library.save({ id, text: "b", seen }, "")).toMatchObject({ done: "saved" });
    expect(organs()).toEqual({ "x.yaml": "b", "x.yaml~": "a" });
  });

  test("a disk without links, and one that cannot flush folders, serve as well", async () => {
    const open: Disk["open"] = (path, flags, mode) =>
      String(path).endsWith("organs") ? Promise.reject(failure("EISDIR")) : realDisk.open(path, flags, mode);
    const library = failing({ link: () => Promise.reject(failure("ENOTSUP")), open });
    const { id, seen } = await started(library);
    await library.save({ id, text: "b", seen }, "");
    expect(organs()).toEqual({ "x.yaml": "b", "x.yaml~": "a" });
    expect((await library.create({ kind: "instrument", name: "x", text: "c" }, "")).id).toBe("library:organs/x-2.yaml");
    await library.discard(id, "");
    expect(organs()).toEqual({ "x-2.yaml": "c" });
  });

  test("a creation that fails leaves nothing", async () => {
    const library = failing({ open: openFailing("writeFile", failure("EDQUOT")) });
    const met = await library.create({ kind: "instrument", name: "x", text: "abc" }, "").catch((error) => error);
    expect(met).toMatchObject({ trouble: "no-room" });
    expect(organs()).toEqual({});
  });
});

describe("another program at the same time", () => {
  test("what it writes into the file while we save is seen, and stays", async () => {
    const open: Disk["open"] = async (path, flags, mode) => {
      if (flags === "wx") appendFileSync(join(folder, "organs/x.yaml"), " and more");
      return realDisk.open(path, flags, mode);
    };
    const { id, seen } = await started(new Library(folder));
    const result = await failing({ open }).save({ id, text: "b", seen }, "");
    expect(result).toMatchObject({ done: "changed-underneath", now: { text: "a and more" } });
    expect(organs()).toEqual({ "x.yaml": "a and more" });
  });

  test("what it writes into the file at the last moment is in the version kept", async () => {
    const rename: Disk["rename"] = async (from, to) => {
      if (String(to).endsWith("x.yaml")) appendFileSync(join(folder, "organs/x.yaml"), " at the last moment");
      await realDisk.rename(from, to);
    };
    const library = failing({ rename });
    const { id, seen } = await started(library);
    await library.save({ id, text: "b", seen }, "");
    expect(organs()).toEqual({ "x.yaml": "b", "x.yaml~": "a at the last moment" });
  });

  test("a file that appears under the very name while we create is not touched", async () => {
    let once = true;
    const link: Disk["link"] = async (from, to) => {
      if (once) put("x.yaml", "theirs");
      once = false;
      await realDisk.link(from, to);
    };
    const { id } = await started(failing({ link }));
    expect(id).toBe("library:organs/x-2.yaml");
    expect(organs()).toEqual({ "x.yaml": "theirs", "x-2.yaml": "a" });
  });

  test("many saves at once: one is done, the others are told", async () => {
    const library = new Library(folder);
    const { id, seen } = await started(library);
    const results = await Promise.all(["b", "c", "d"].map((next) => library.save({ id, text: next, seen }, "")));
    expect(results.map(({ done }) => done)).toEqual(["saved", "changed-underneath", "changed-underneath"]);
    expect(organs()).toEqual({ "x.yaml": "b", "x.yaml~": "a" });
  });
});

describe("what a file keeps", () => {
  test("its permissions", async () => {
    const library = new Library(folder);
    const { id, seen } = await started(library);
    chmodSync(join(folder, "organs/x.yaml"), 0o664);
    await library.save({ id, text: "b", seen }, "");
    expect(statSync(join(folder, "organs/x.yaml")).mode & 0o777).toBe(0o664);
  });

  test("its time, when nothing was changed", async () => {
    const library = new Library(folder);
    const { id, seen } = await started(library);
    const before = statSync(join(folder, "organs/x.yaml")).ino;
    expect(await library.save({ id, text: "a", seen }, "")).toEqual({ done: "saved", version: seen });
    expect(statSync(join(folder, "organs/x.yaml")).ino).toBe(before);
    expect(await library.previous(id)).toBeNull();
  });
});

describe("a disk without upper and lower case", () => {
  /** Takes any spelling of a name for the one that stands there, as such disks do. */
  const spelt = (path: string): string => {
    const rest = path.slice(folder.length).split("/").filter(Boolean);
    return rest.reduce((at, name) => {
      const there = readdirSync(at, { withFileTypes: true }).find(
        (entry) => entry.name.toLowerCase() === name.toLowerCase(),
      );
      return join(at, there?.name ?? name);
    }, folder);
  };
  const folding: Partial<Disk> = {
    lstat: ((path: string, options: never) => realDisk.lstat(spelt(path), options)) as Disk["lstat"],
    open: (path, flags, mode) => realDisk.open(spelt(String(path)), flags, mode),
    link: (from, to) => realDisk.link(spelt(String(from)), spelt(String(to))),
  };

  test("another spelling is not the document", async () => {
    const library = failing(folding);
    const { id, seen } = await started(library);
    for (const other of ["library:organs/X.yaml", "library:Organs/x.yaml"]) {
      await expect(library.read(other)).rejects.toMatchObject({ trouble: "gone" });
      expect(await library.save({ id: other, text: "b", seen }, "")).toEqual({ done: "changed-underneath", now: null });
      await expect(library.discard(other, "")).rejects.toMatchObject({ trouble: "gone" });
    }
    expect((await library.read(id)).text).toBe("a");
    expect(organs()).toEqual({ "x.yaml": "a" });
  });

  test("a folder that a person named in capitals is the folder", async () => {
    rmSync(join(folder, "organs"), { recursive: true, force: true });
    await realDisk.mkdir(join(folder, "ORGANS"));
    const { id } = await started(failing(folding));
    expect(id).toBe("library:ORGANS/x.yaml");
    expect(readdirSync(folder)).toEqual(["ORGANS"]);
  });
});
