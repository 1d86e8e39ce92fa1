import { writeSync } from "node:fs";
import { Library } from "../../electron/library/library.ts";

/** A text that shows whether it is whole: its number at both ends, and between them a length that the number gives. */
export const numbered = (number: number): string =>
  `${number}\n${"8 4 2 2/3 ".repeat(((number * 7919) % 4000) + 1)}\n${number}\n`;

/** Saves a document over and over, makes and discards another now and then, and says each number that is saved. */
async function saveForEver(folder: string, first: number): Promise<void> {
  const library = new Library(folder);
  const id = "library:organs/kept.yaml";
  let { version } = await library.read(id);
  for (let number = first; ; number += 1) {
    const result = await library.save({ id, text: numbered(number), seen: version }, "");
    if (result.done !== "saved") throw new Error(result.done);
    version = result.version;
    writeSync(1, `${number}\n`);
    if (number % 3 > 0) continue;
    const other = await library.create({ kind: "piece", name: "other", text: numbered(number) }, "");
    await library.discard(other.id, "");
  }
}

const [, , folder, first] = process.argv;
if (folder !== undefined && first !== undefined) await saveForEver(folder, Number(first));
