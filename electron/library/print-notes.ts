import { dirname, join } from "node:path";
import * as z from "zod";
import type { PrintMark } from "../../shared-model/cards/print-marks.ts";
import { PRINT_NOTES } from "../../shared-model/host-messages.ts";
import { codeOf, type Disk } from "./disk.ts";
import { readBytes, utf8 } from "./plain-file.ts";
import { putWhole } from "./whole-file.ts";

/** Beside the document, hidden: `.lantern.yaml.printed`. It goes with the folder wherever that goes. */
export const printedPath = (path: string): string =>
  join(dirname(path), `.${path.slice(dirname(path).length + 1)}.printed`);

const schema = z.object({ printed: PRINT_NOTES });

/** What was printed of a document; nothing where nobody noted it, or where the note is none of ours. */
export async function readPrintNotes(path: string, disk: Disk): Promise<readonly PrintMark[]> {
  try {
    const text = utf8(await readBytes(printedPath(path), "", disk));
    const read = schema.safeParse(JSON.parse(text ?? "null"));
    return read.success ? read.data.printed : [];
  } catch (error) {
    if (error instanceof SyntaxError || codeOf(error) === undefined || codeOf(error) === "ENOENT") return [];
    throw error;
  }
}

export const writePrintNotes = (path: string, printed: readonly PrintMark[], disk: Disk): Promise<void> =>
  putWhole(printedPath(path), Buffer.from(`${JSON.stringify({ printed }, null, 1)}\n`), disk);
