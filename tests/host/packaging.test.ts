import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { ROOT, textOf } from "../house/source-files.ts";

interface Settings {
  readonly files: readonly string[];
  readonly extraResources: readonly { readonly from: string; readonly to: string }[];
  readonly asar: boolean;
  readonly electronFuses: Readonly<Record<string, boolean>>;
  readonly [key: string]: unknown;
}

const settings = (): Settings => parse(textOf("electron/electron-builder.yaml")) as Settings;
const { main, devDependencies } = JSON.parse(textOf("package.json")) as {
  main: string;
  devDependencies: Record<string, string>;
};

interface Validator {
  readonly validateConfiguration: (settings: unknown, log: { isEnabled: boolean; add: () => void }) => Promise<void>;
}

/** The check that the packer itself makes before it packs, against its own schema. */
const { validateConfiguration } = createRequire(
  createRequire(join(ROOT, "package.json")).resolve("electron-builder/package.json"),
)("app-builder-lib/out/util/config/config.js") as Validator;

const check = (candidate: unknown): Promise<void> =>
  validateConfiguration(candidate, { isEnabled: false, add: () => {} });

describe("packing the desktop app", () => {
  test("its settings are those that the packer knows", async () => {
    await expect(check(settings())).resolves.toBeUndefined();
    await expect(check({ ...settings(), electronFuse: {} })).rejects.toThrow(/electronFuse/);
    await expect(check({ ...settings(), electronFuses: { runAsNode: "no" } })).rejects.toThrow(/runAsNode/);
  });

  test("the runtime is pinned to one version, and the package's own start is the shell", () => {
    expect(devDependencies.electron).toMatch(/^45\.\d+\.\d+$/);
    expect(main).toBe("dist/electron/main.js");
    expect(settings().files).toContain(`${dirname(main)}/**`);
  });

  test("every fuse that lets a stranger in is off, every one that keeps the program whole is on", () => {
    expect(settings().electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
      resetAdHocDarwinSignature: true,
    });
    expect(settings().asar).toBe(true);
  });

  test("nothing but the built program and the demo organs is packed, for three systems", () => {
    const { files, extraResources, linux, win, mac, publish } = settings();
    expect(
      files.filter((path) => !/^(?:package\.json|LICENSE|dist\/(?:electron|shared-model|renderer)\/\*\*)$/.test(path)),
    ).toEqual([]);
    expect(extraResources.map(({ from, to }) => [from, to])).toEqual([["instruments", "instruments"]]);
    expect([linux, win, mac].map((system) => typeof system)).toEqual(["object", "object", "object"]);
    expect(publish).toBeNull();
  });
});

describe("installing", () => {
  test("the runtime's package fetches nothing while it is installed", () => {
    const { scripts } = JSON.parse(readFileSync(join(ROOT, "node_modules/electron/package.json"), "utf8")) as {
      scripts?: Record<string, string>;
    };
    expect(Object.keys(scripts ?? {}).filter((name) => /install|prepare/.test(name))).toEqual([]);
    expect(textOf(".npmrc").split("\n")).toContain("ignore-scripts=true");
  });
});
