import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Runs one of poppler's tools on a PDF. */
function tool(name: string, bytes: Uint8Array, ...words: readonly string[]): string {
  const folder = mkdtempSync(join(tmpdir(), "registrant-pdf-"));
  try {
    const file = join(folder, "cards.pdf");
    writeFileSync(file, bytes);
    return execFileSync(name, [...words, file, ...(name === "pdftotext" ? ["-"] : [])], { encoding: "utf8" });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The text of each page as another program reads it, a line for each line. */
export const pdfTexts = (bytes: Uint8Array): readonly (readonly string[])[] =>
  tool("pdftotext", bytes, "-layout")
    .replace(/\f$/, "")
    .split("\f")
    .map((page) =>
      page
        .split("\n")
        .map((line) => line.trim().replace(/\s+/g, " "))
        .filter((line) => line !== ""),
    );

/** What the file says of itself, by name. */
export const pdfFacts = (bytes: Uint8Array): Readonly<Record<string, string>> =>
  Object.fromEntries(
    tool("pdfinfo", bytes)
      .split("\n")
      .map((line) => /^(.*?):\s+(.*)$/.exec(line))
      .filter((found) => found !== null)
      .map((found) => [found[1], found[2]]),
  );

/** The structure that a reading aloud follows: an element and its text each. */
export const pdfStructure = (bytes: Uint8Array): string => tool("pdfinfo", bytes, "-struct-text");

/** Name, and whether it is embedded and cut to the letters that are used, of every font. */
export const pdfFonts = (bytes: Uint8Array): readonly { name: string; embedded: boolean; subset: boolean }[] =>
  tool("pdffonts", bytes)
    .trimEnd()
    .split("\n")
    .slice(2)
    .map((line) => {
      const [name = "", , , , embedded, subset] = line.replace("CID TrueType", "CID").split(/\s+/).toSpliced(2, 0, "");
      return { name: name.replace(/^[A-Z]{6}\+/, ""), embedded: embedded === "yes", subset: subset === "yes" };
    });

/** Grey values of a page from 0, black, to 255, row by row, at so many dots to the millimetre. */
export function pdfImage(bytes: Uint8Array, page: number, dots: number): { width: number; grey: Uint8Array } {
  const folder = mkdtempSync(join(tmpdir(), "registrant-pdf-"));
  try {
    writeFileSync(join(folder, "cards.pdf"), bytes);
    const words = ["-gray", "-r", String(dots * 25.4), "-f", String(page), "-l", String(page)];
    execFileSync("pdftoppm", [...words, join(folder, "cards.pdf"), join(folder, "page")]);
    const image = readFileSync(join(folder, readdirSync(folder).find((name) => name.endsWith(".pgm")) ?? ""));
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 40).toString("latin1"));
    if (!head) throw new Error("The page was not rendered.");
    return { width: Number(head[1]), grey: image.subarray(head[0].length) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
