/** Most letters of a file name without its ending: short enough for every disk, in bytes too. */
const LONGEST = 60;

/** Names that belong to devices on Windows, with any ending. */
const DEVICES = /^(?:con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])$/i;

/** Letters that lose nothing but their dress when marks are taken off, but do not come apart by themselves. */
const PLAIN: Readonly<Record<string, string>> = {
  ä: "ae",
  ö: "oe",
  ü: "ue",
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  đ: "d",
  ð: "d",
  þ: "th",
  ł: "l",
  ı: "i",
};

/** Two names that a disk without upper and lower case, or one that takes letters apart, would hold to be one. */
export const folded = (name: string): string => name.normalize("NFD").toLowerCase().normalize("NFC");

/**
 * A file name, without its ending, made from what people call a thing: `St. Maren, große Orgel` becomes
 * `st-maren-grosse-orgel`. Safe on Windows, macOS and Linux: no path, no sign or device name that one of them refuses, no
 * dot or space at an end, at most 60 letters. Letters of other scripts stay. `otherwise` is taken where nothing remains.
 */
export function fileNameOf(name: string, otherwise: string): string {
  const letters = name
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[äöüßæœøđðþłı]/g, (letter) => PLAIN[letter] ?? letter)
    .normalize("NFKD")
    .replace(/['’]/g, "")
    .replace(/(?<=[a-z])\p{M}+/gu, "")
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, "-");
  const short = [...letters]
    .slice(0, LONGEST)
    .join("")
    .replace(/^-+|-+$/g, "");
  const bounded = cutToBytes(short, 180);
  if (bounded === "") return otherwise;
  return DEVICES.test(bounded) ? `${bounded}-${otherwise}` : bounded;
}

function cutToBytes(text: string, bytes: number): string {
  let cut = text;
  while (Buffer.byteLength(cut) > bytes) cut = [...cut].slice(0, -1).join("");
  return cut.replace(/-+$/, "");
}

/** The first of `name`, `name-2`, `name-3` ... that `taken` (folded names) does not hold. */
export function freeName(name: string, ending: string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number += 1) {
    const next = `${number === 1 ? name : `${name}-${number}`}${ending}`;
    if (!taken.has(folded(next))) return next;
  }
}

/** Whether one component of a path is a name that every system takes and that is none of the library's own. */
export const isPlainName = (name: string): boolean =>
  name.length > 0 &&
  name.length <= 255 &&
  !/^\.|[. ~]$|\.part$|[\\/:*?"<>|\u0000-\u001F\u007F]/.test(name) &&
  !DEVICES.test(name.split(".")[0] ?? "");
