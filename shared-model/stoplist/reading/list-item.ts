/** A line without its bullet, its number and its footnote sign. */
export interface ListItem {
  readonly body: string;
  readonly bulleted: boolean;
  /** The number printed before it, 0 for a small Roman one, `null` when none is. */
  readonly number: number | null;
}

const BULLET = /^(?:[•◦‣▪▫●○■□►▸→»·–—-]|[*+~](?=\s))\s*(?=\S)/u;
const SIGN = /^(?:[*†‡§#]{1,3}|\[[ xX*]\])\s*(?=[\d\p{L}(])/u;
const NUMBER =
  /^(?:\((\d{1,3})\)|(?:n[o°ºr]\.?|nr\.?|#)\s?(\d{1,3})[.):]?(?=\s)|(\d{1,3})\s?(?:[.):](?!\d)|[-–](?=\s)))\s*(?=\S)/iu;
/** English lists number their couplers in small Roman figures. */
const SMALL_NUMERAL = /^\(?(?=[ivxl])x{0,3}(?:ix|iv|v?i{0,3})[.)]\s+(?=\p{Lu})/u;
const BARE_NUMBER = /^(\d{1,3})\s+(?=["“„(*]?\p{Lu})/u;

/** Takes bullet, number and footnote sign off, in whichever order they stand. `numbered`: bare leading figures number the list. */
export function listItem(text: string, numbered: boolean): ListItem {
  let body = text.trim();
  let [bulleted, number]: [boolean, number | null] = [false, null];
  for (let turn = 0; turn < 4; turn++) {
    const bullet = BULLET.exec(body);
    if (bullet && !/^[-–—]\s*\d/.test(body)) {
      body = body.slice(bullet[0].length);
      bulleted = true;
      continue;
    }
    const sign = SIGN.exec(body);
    if (sign) {
      body = body.slice(sign[0].length);
      continue;
    }
    const numeral = number === null ? SMALL_NUMERAL.exec(body) : null;
    if (numeral) {
      body = body.slice(numeral[0].length);
      number = 0;
      continue;
    }
    const found: RegExpExecArray | null =
      number === null ? (NUMBER.exec(body) ?? (numbered ? BARE_NUMBER.exec(body) : null)) : null;
    if (!found) break;
    number = Number(found[1] ?? found[2] ?? found[3]);
    body = body.slice(found[0].length);
  }
  return { body: body.trim(), bulleted, number };
}

/** A line that numbers each of its stops (`7. Subbass 16'   8. Octave 8'`), without the numbers that count on from its first. */
export function withoutCounting(body: string, number: number | null): string {
  let next = number === null ? 0 : number + 1;
  return body.replace(/(?<=[,;\t]\s*|\s{2})(\d{1,3})[.)]\s*(?=\p{Lu})/gu, (printed, figure: string) => {
    if (number === null || Number(figure) !== next) return printed;
    next += 1;
    return "";
  });
}

/** Whether bare figures at the starts of lines count the lines (1, 2, 3 ...) rather than feet. */
export function isNumbered(texts: readonly string[]): boolean {
  const numbers = texts.flatMap((text) => {
    const match = BARE_NUMBER.exec(text.trim());
    return match ? [Number(match[1])] : [];
  });
  if (numbers.length < 3) return false;
  const steps = numbers.slice(1).filter((number, index) => number === (numbers[index] as number) + 1).length;
  return steps >= (numbers.length - 1) * 0.6;
}
