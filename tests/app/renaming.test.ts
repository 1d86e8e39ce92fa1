import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { editOrgan } from "../../renderer/entering/editing.ts";
import { Store } from "../../renderer/state/store.ts";
import { EMPTY_WORK, freshSection, NOTHING_DRAWN } from "../../renderer/state/work.ts";
import type { Host } from "../../shared-model/host-api.ts";

const organ = readFileSync(join(import.meta.dirname, "..", "..", "instruments", "sallowby.yaml"), "utf8");

test("a stop that gets another name is drawn under it everywhere, in the steps of a section that grows as well", () => {
  const store = new Store({} as Host);
  const drawn = { ...NOTHING_DRAWN, drawn: ["Swell/Oboe 8"] };
  const section = { ...freshSection("1"), texture: "plenum", registration: drawn, steps: [drawn] };
  const piece = { ...EMPTY_WORK.piece, sections: [section] };
  store.lay({ ...EMPTY_WORK, organ, piece }, { organFile: null, pieceFile: null }, "organ");
  expect(editOrgan(store, "the name", { edit: "rename-stop", stop: "Swell/Oboe 8", name: "Hautboy" })).toBe(true);
  const [after] = store.work.piece.sections;
  expect([after?.registration, ...(after?.steps ?? [])].map((each) => each?.drawn)).toEqual([
    ["Swell/Hautboy 8"],
    ["Swell/Hautboy 8"],
  ]);
  store.undo();
  expect(store.work.piece.sections[0]?.steps[0]?.drawn).toEqual(["Swell/Oboe 8"]);
});
