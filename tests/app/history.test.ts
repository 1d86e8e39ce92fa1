import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { historyOf, redone, stepped, undone } from "../../renderer/state/history.ts";

interface Desk {
  readonly drawn: readonly string[];
  readonly title: string;
}

const EMPTY: Desk = { drawn: [], title: "" };
const draw = (stop: string) => (desk: { drawn: string[] }) => {
  desk.drawn.push(stop);
};

describe("undo and redo", () => {
  test("a step is taken back and made again, with the place where it was made", () => {
    const one = stepped(historyOf<Desk, string>(EMPTY), "drawing", "by-hand", draw("Oboe 8"));
    const back = undone(one);
    expect(back?.history.value).toEqual(EMPTY);
    expect(back?.where).toBe("by-hand");
    expect(back && redone(back.history)?.history.value.drawn).toEqual(["Oboe 8"]);
  });

  test("a step that changes nothing is none", () => {
    const start = historyOf<Desk, string>(EMPTY);
    expect(stepped(start, "nothing", "", () => undefined)).toBe(start);
    expect(undone(start)).toBeNull();
    expect(redone(start)).toBeNull();
  });

  test("letters of one word are taken back together, another word by itself", () => {
    let history = historyOf<Desk, string>(EMPTY);
    for (const title of ["L", "La", "Lan"]) {
      history = stepped(history, "the name", "", (desk) => Object.assign(desk, { title }), "title");
    }
    history = stepped(history, "drawing", "", draw("Oboe 8"));
    expect(history.past).toHaveLength(2);
    const before = undone(undone(history)?.history ?? history);
    expect(before?.history.value).toEqual(EMPTY);
  });

  test("whatever was done, going all the way back and forth again changes nothing", () => {
    const step = fc.oneof(
      fc.record({ kind: fc.constant("draw" as const), text: fc.string({ maxLength: 4 }) }),
      fc.record({ kind: fc.constant("title" as const), text: fc.string({ maxLength: 4 }) }),
      fc.record({ kind: fc.constant("put-in" as const), text: fc.constant("") }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
        let history = historyOf<Desk, string>(EMPTY);
        for (const { kind, text } of steps) {
          history = stepped(history, kind, "", (desk) => {
            if (kind === "draw") desk.drawn.push(text);
            else if (kind === "title") desk.title = text;
            else desk.drawn.pop();
          });
        }
        const end = history.value;
        for (let back = undone(history); back; back = undone(history)) history = back.history;
        expect(history.value).toEqual(EMPTY);
        for (let forth = redone(history); forth; forth = redone(history)) history = forth.history;
        expect(history.value).toEqual(end);
      }),
      { seed: 20261126 },
    );
  });
});
