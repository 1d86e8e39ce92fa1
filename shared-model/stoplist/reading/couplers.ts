import { foldedSpelling } from "../glossary/spelling.ts";
import { divisionRole, type Role, rolesOfShort } from "./division-words.ts";
import { headingIn } from "./headings.ts";
import { romanValue } from "./ranks-in-line.ts";

/** A coupler as printed, its divisions not yet looked up. */
export interface PrintedCoupler {
  readonly line: number;
  readonly text: string;
  /** Words for the two ends; `null` where the list does not say (`Pedalkoppel`, `Tirasse`). */
  readonly first: string | null;
  readonly second: string | null;
  /** `words`: the first goes to the second, as the words say; a sign is read by the custom of the list. */
  readonly by: "words" | "/" | "-" | "+" | "pedal" | "manuals" | "self" | "counted";
  /** How many a list has that does not name them (`2 Pedalkoppeln`): `by` is `counted`, `second` the pedal or nothing. */
  readonly count?: number;
  readonly pitches: readonly (16 | 8 | 4)[];
}

/** What a line says about couplers. */
export interface CouplerLine {
  readonly couplers: readonly PrintedCoupler[];
  /** Words for the keyboards whose own pitch can be turned off (`Swell unison off`). */
  readonly unisonOff: readonly string[];
  /** Pieces that should be couplers and could not be read. */
  readonly unread: readonly string[];
}

const NOT_A_COUPLER =
  /reversib|pistons?\b|combination|combs\b|combinaison|composition|kombination|thumb|toe stud|toe-stud|indicator|all couplers|couplers off|koppeln ab|handregister ab|absteller|midi|crescendo|walze|tutti|generals?\b|divisionals?\b|memory|setzer|studs?\b/iu;
const LABEL =
  /^(?:\d+ |drei |zwei |vier |three |two |four |deux |trois )?(?:(?:normal|schiebe|manualschiebe|manual|pedal|register|zug|gabel|haupt|inter|intra)[- ]?)?(?:koppel(?:n|ungen|ung|ing|ingen|s|züge)?|kopplungen|kopplung|couplers?|cplrs?\.?|coup\.|accouplements?|acct\.?|accts?\.|acc\.|copulas?|kopul[aá]k|kopulas?|copula|cop\.|union[ei]|unión|uniones|enganches?|acoplamientos?|accoppiament[oi]|kobler|kobbel|kop(?:p)?ler|koblinger|kopplingar|kopplingen|koppels|spojk[ay]|połączeni[ae]|łączniki?|łącznik|yhdistimet|yhdistäjät|yhdistäjä|kopulácie|manuaalkoppel(?:ing)?|schuifkoppel|tirasses?|tir\.|octaves? aig(?:u|uë|üe)s?|octaves? graves?|super(?:oktav|octav)?[- ]?koppel(?:n)?|o[kc]tav[- ]?koppel(?:n)?|coppel(?:n)?|sub(?:oktav|octav)?[- ]?koppel(?:n)?|superkoppel(?:n)?|ober(?:oktav|octav)koppel(?:n)?|unteroktavkoppel(?:n)?|melodiekoppel|basskoppel|appel)(?![\p{L}])(?: (?:des claviers|der manuale|de los teclados|dei manuali|delle tastiere|manuali|tastiere|claviers))?\s*[:=.–-]?\s*/iu;
const SUPER =
  /(?<![\p{L}])(?:super[- ]?(?:oktav[e]?|octave?|oktaaf)?[- ]?(?:koppel\w*)?|octaves? aig(?:u|uë|üe)s?|ottava acuta|acuta|ottave acute|octava aguda|aguda|oberoktav\w*|octave up|octave|oct\.?|ottava|oktav|8ve|o[kc]tav[- ]?koppel\w*)(?![\p{L}])/giu;
const SUB =
  /(?<![\p{L}])(?:sub[- ]?(?:oktav[e]?|octave?|oktaaf|oct\.?)?[- ]?(?:koppel\w*)?|octaves? graves?|ottava grave|ottave gravi|grave|octava grave|unteroktav\w*|octave down|sub)(?![\p{L}])/giu;
const UNISON = /(?<![\p{L}])(?:unison|normal|aequal|äqual|unisono|equal)(?![\p{L}])/giu;
const PITCH =
  /(?<![\p{L}\d/])(?:en |in |à |im )?(16|8|4)(?:['’′`´]| ?-?(?:ft|fuß|fuss|vt|voet|pieds?|p)\b\.?)?(?![\d/])/giu;

const PEDAL_ONLY =
  /^(?:pedal[- ]?[kc]oppel(?:n|ung)?|pedaal[- ]?koppel(?:ing)?|[kc]oppel(?:ing)? (?:zum |am |aan |an )?ped(?:al|aal)?\.?|koppel pedaal(?: aan (?:het )?manuaal)?|manual (?:zum|to|aan|an) pedal?|tirasse(?: fixe| du clavier| mobile)?|tasto al pedale|tasto[- ]pedale?|tasto pedale|unione tast[oi](?:[ -](?:al )?pedale)?|unione (?:al )?pedale|unione (?:tastiera|manuale)[ -](?:al )?pedale|tastiera al pedale|manuale al pedale|enganche (?:al |de |del )?pedal|acoplamiento (?:al |de |del )?pedal|manuals? to pedals?|manual coupler to pedal|pedal coupler|pedalkobbel|pedalkopp?el|koppel man(?:ual|uaal)?\.?[- /]ped(?:al|aal)?\.?|pedal pull-?downs?|pull-?down pedals?)$/iu;
const MANUALS_ONLY =
  /^(?:manual[- ]?(?:schiebe)?[kc]oppel(?:n|ung)?|manuaal[- ]?koppel(?:ing)?|schiebekoppel|schuifkoppel|copula(?:tio)?|kopula|manual coupler|accouplement(?: des (?:deux )?claviers| à tiroir| des manuels)?|unione (?:(?:dei |delle |alle )?(?:manuali|tastiere|due tastiere))|unione|enganche(?: de (?:los )?teclados| de manuales)?|acoplamiento de (?:los )?teclados|unión de teclados|koppel(?:ing)?|manualkobbel|manualkopp?el|coupler)$/iu;
const TO_PEDAL =
  /^(?:tirasses?|tir\.?|pedal[- ]?koppel(?:n|ungen|ung)?|pedaal[- ]?koppel(?:ing|ingen|s)?|pedalkobler)(?![\p{L}])/iu;
const OFF = /unison off|unisono off|unis\. off|8['’′]? ?(?:ab|off)|äqual ab|(?<![\p{L}])U\.?O\.?(?![\p{L}])/iu;

/** Couplers that a list counts and does not name. */
const COUNTED =
  /^(\d{1,2}|two|three|four|zwei|drei|vier|deux|trois|quatre|twee|drie|due|tre|dos|tres) (pedal ?couplers?|couplers?|pedalkoppeln|koppeln|tirasses|accouplements|pedaalkoppels|koppels|unioni|enganches)\.?$/i;
const COUNTS: Readonly<Record<string, number>> = {
  two: 2,
  zwei: 2,
  deux: 2,
  twee: 2,
  due: 2,
  dos: 2,
  three: 3,
  drei: 3,
  trois: 3,
  drie: 3,
  tre: 3,
  tres: 3,
  four: 4,
  vier: 4,
  quatre: 4,
};

/** Couplers that can be drawn for the halves of a keyboard. */
const DIVIDED_COUPLER =
  /\((?:bass?|dis[ck](?:ant)?)\.? ?(?:en|und|and|et|[/+&]) ?(?:bass?|dis[ck](?:ant)?)\.?\)|(?<![\p{L}])(?:b(?:ass|as)?\.?\s?[/+]\s?d(?:is[ck]\.?|is[ck]ant)?\.?)(?![\p{L}])/iu;
const BETWEEN =
  /\s(?:to|zu|zum|zur|an|ans|auf|sur|au|à la|à|al|alla|all['’]|aan|op|naar|til|till|on|in|aan het|a|ad|con)\s|\s?(?:->|→|=>|⇒|>)\s?|\s?([/+–—&-])\s?/iu;

const clean = (text: string): string =>
  text
    .replace(/^[\s.,;:()[\]*-]+|[\s,;:()[\]*]+$/gu, "")
    .replace(
      /^(?:fixe |mobile )?(?:du|de la|de l['’]|des|de|del|della|vom|von|der|das|the|la|le|il|el|den|het|zu|zum|zur|für|voor|per)\s+/iu,
      "",
    )
    .trim();

/** Whether the words can be a division's name or abbreviation, or the number of a keyboard. */
export function looksLikeDivision(text: string, names: readonly string[]): boolean {
  const words = clean(text);
  if (words === "" || words.length > 40) return false;
  if (/^(?:I{1,3}|IV|VI{0,2}|[1-7])\.?$/.test(words)) return true;
  const folded = foldedSpelling(words);
  if (names.some((name) => foldedSpelling(name) === folded)) return true;
  if (divisionRole(folded) !== null) return true;
  const heading = headingIn(words);
  if (heading?.exact) return true;
  return /^\p{L}/u.test(words) && words.length <= 8 && rolesOfShort(folded).length > 0 && /\p{Lu}/u.test(words);
}

const pitchesIn = (text: string): { rest: string; pitches: (16 | 8 | 4)[]; off: boolean } => {
  const off = OFF.test(text);
  let rest = text.replace(OFF, " ");
  const found: (16 | 8 | 4)[] = [];
  rest = rest.replace(PITCH, (_, number: string) => {
    found.push(Number(number) as 16 | 8 | 4);
    return " ";
  });
  rest = rest.replace(SUB, () => {
    found.push(16);
    return " ";
  });
  rest = rest.replace(SUPER, () => {
    found.push(4);
    return " ";
  });
  rest = rest.replace(UNISON, () => {
    found.push(8);
    return " ";
  });
  return {
    rest: rest
      .replace(/\s+/g, " ")
      .replace(/[\s,&()]+$/g, "")
      .trim(),
    pitches: [...new Set(found)],
    off,
  };
};

/** Whether a line begins with a word for couplers (`Koppeln:`, `Tirasses`). */
export const isCouplerLabel = (text: string): boolean => LABEL.test(text.trim());

/** Whether a line is only the title of the couplers' part of a list. */
export const isCouplerTitle = (text: string): boolean => {
  const label = LABEL.exec(text.trim());
  return (
    label !== null &&
    !COUNTED.test(text.trim()) &&
    !/coupler$/i.test(text.trim()) &&
    label[0].trim().length === text.trim().length &&
    /(?:n|s|en|i|es|er|ments|ingen)[:=.]?$/iu.test(text.trim())
  );
};

/**
 * The couplers that a line names, or `null` when it names none. `names` are the divisions' names of this list; `expected`
 * tells that the line stands among couplers, so that a piece which cannot be read is worth a question.
 */
export function couplersIn(
  text: string,
  line: number,
  names: readonly string[],
  expected: boolean,
): CouplerLine | null {
  const whole = text
    .replace(DIVIDED_COUPLER, " ")
    .replace(/(?<=\S\s.*)\s(?:à|par) tiroir(?![\p{L}])|\s(?:à|par) tiroir(?=\s\p{L})/iu, " ")
    .replace(/\s+/g, " ")
    .replace(/^[-–•*·]\s*/, "")
    .replace(/[.;,]+$/, "")
    .trim();
  if (whole.length > 400 || NOT_A_COUPLER.test(whole)) return null;
  const sentences = whole.split(/\.\s+(?=\p{Lu}\p{Ll}{3})/u);
  if (sentences.length > 1) {
    const found = sentences.map((sentence) => couplersIn(sentence, line, names, expected));
    const read = found.filter((one): one is CouplerLine => one !== null);
    return read.length === 0
      ? null
      : {
          couplers: read.flatMap((one) => one.couplers),
          unisonOff: read.flatMap((one) => one.unisonOff),
          unread: read.flatMap((one) => one.unread),
        };
  }
  const couplers: PrintedCoupler[] = [];
  const unisonOff: string[] = [];
  const unread: string[] = [];
  const lead = LABEL.exec(whole);
  // "Manualkoppel, 2 Pedalkoppeln": a coupler of its own, no label of those that follow.
  const label = lead && /^[,;]|^(?:und|and|et|en)\s/i.test(whole.slice(lead[0].length)) ? null : lead;
  const isLabelled = label !== null;
  const labelText = label?.[0] ?? "";
  const toPedal = TO_PEDAL.test(labelText);
  const labelPitches = pitchesIn(labelText).pitches;
  const add = (
    piece: string,
    coupler: Omit<PrintedCoupler, "line" | "text" | "pitches">,
    pitches: readonly (16 | 8 | 4)[],
  ): void => {
    couplers.push({
      line,
      text: piece,
      ...coupler,
      pitches: pitches.length > 0 ? pitches : labelPitches.length > 0 ? labelPitches : [8],
    });
  };
  const single = (piece: string): boolean => {
    const counted = COUNTED.exec(piece);
    if (counted) {
      const count = COUNTS[(counted[1] as string).toLowerCase()] ?? Number(counted[1]);
      const second = /^(?:ped|pedaal|tir)/i.test(counted[2] as string) ? "pedal" : null;
      couplers.push({ line, text: piece, first: null, second, by: "counted", pitches: [8], count });
      return true;
    }
    const { rest, pitches } = pitchesIn(piece);
    const words = clean(rest).replace(/ ?[–—] ?/g, "-");
    if (PEDAL_ONLY.test(words)) add(piece, { first: null, second: null, by: "pedal" }, pitches);
    else if (MANUALS_ONLY.test(words)) add(piece, { first: null, second: null, by: "manuals" }, pitches);
    else return false;
    return true;
  };
  if (single(whole)) return { couplers, unisonOff, unread };
  const listed = whole.split(/\s*[/,;+&]\s*|\s+(?:und|and|et|en|e|y)\s+/iu);
  if (listed.length > 1 && listed.every((piece) => PEDAL_ONLY.test(clean(piece)) || MANUALS_ONLY.test(clean(piece)))) {
    for (const piece of listed) single(piece);
    return { couplers, unisonOff, unread };
  }

  const body = whole.slice(labelText.length);
  // "Tirasses G.O., Pos., Réc. (8 et 4)": the bracket speaks of all of them.
  const forAll = /\(([^()]*)\)$/.exec(body);
  const shared =
    forAll && /^[\d\s,.'’′&]*(?:(?:et|und|and|en|e|y)[\d\s.'’′]*)?$/u.test(forAll[1] as string)
      ? pitchesIn(forAll[1] as string).pitches
      : [];
  // "RP/HW HW/P RP/P"
  const pairs = body.trim().split(/\s+/);
  const arePairs = pairs.length > 1 && pairs.every((pair) => /^[\p{L}\d.]+[/+–-][\p{L}\d.]+$/u.test(pair));
  const pieces = (shared.length > 0 ? body.slice(0, forAll?.index) : arePairs ? pairs.join(", ") : body)
    .replace(/(\d)\s*(?:,|&|und|and|et|en)\s*(?=\d)/giu, "$1 ")
    .split(/\s*[,;·•]\s*|\s+(?:und|and|et|en|e|y|&|sowie)\s+|\t+|\s{2,}|\s\/\s(?=[\p{L}\s]*(?:koppel|coupler))/iu)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== "")
    .flatMap((piece) => {
      // "TIRASSES I - II - III", "I/II - III/II"
      const parts = piece.split(/\s+[-–—]\s+/);
      const all =
        parts.length > 1 &&
        parts.every((part) => (toPedal ? looksLikeDivision(part, names) : partedEnds(part, names) !== null));
      return all ? parts : [piece];
    });
  if (pieces.length === 0) return null;
  // "tirasses G.O. et Pos.": the word goes on to the pieces behind it.
  let goesToPedal = toPedal;
  for (const piece of pieces) {
    if (single(piece)) continue;
    const inner = LABEL.exec(piece);
    if (inner) goesToPedal = TO_PEDAL.test(inner[0]);
    const innerPitches = inner ? pitchesIn(inner[0]).pitches : [];
    const { rest, pitches, off } = pitchesIn(piece.slice(inner?.[0].length ?? 0));
    const sounding = pitches.length > 0 ? pitches : innerPitches;
    const marked = isLabelled || inner !== null || expected;
    if (off && (rest === "" || looksLikeDivision(rest, names))) {
      const own = rest === "" ? ownOf(couplers.at(-1)) : clean(rest);
      if (own !== null) unisonOff.push(own);
      if (pitches.some((one) => one !== 8) && rest !== "")
        add(
          piece,
          { first: rest, second: rest, by: "self" },
          pitches.filter((one) => one !== 8),
        );
      continue;
    }
    if (rest === "") {
      const last = couplers.at(-1);
      if (pitches.length > 0 && last && !/\p{L}/u.test(piece))
        couplers[couplers.length - 1] = { ...last, pitches: [...new Set([...last.pitches, ...pitches])] };
      else if (marked && !off) unread.push(piece);
      else if (!marked) return null;
      continue;
    }
    const ends = partedEnds(rest, names);
    if (ends) {
      const same = foldedSpelling(ends.first) === foldedSpelling(ends.second);
      add(piece, same ? { first: ends.first, second: ends.first, by: "self" } : ends, sounding);
    } else if (goesToPedal && looksLikeDivision(rest, names))
      add(piece, { first: clean(rest), second: null, by: "pedal" }, sounding);
    else if (
      (sounding.length > 0 || labelPitches.length > 0) &&
      looksLikeDivision(rest, names) &&
      (marked || couplers.length > 0)
    ) {
      const intra = (sounding.length > 0 ? sounding : labelPitches).filter((one) => one !== 8);
      if (intra.length > 0) add(piece, { first: clean(rest), second: clean(rest), by: "self" }, intra);
    } else if (isLabelled || inner !== null) unread.push(piece);
    else if (couplers.length > 0 && marked) unread.push(piece);
    else if (expected && BETWEEN.test(` ${rest} `) && rest.split(/\s+/).length <= 6) unread.push(piece);
    else return null;
  }
  if (shared.length > 0) return { couplers: couplers.map((one) => ({ ...one, pitches: shared })), unisonOff, unread };
  const isNone = couplers.length === 0 && unisonOff.length === 0;
  if (isNone && (unread.length === 0 || (!isLabelled && !expected))) return null;
  return { couplers, unisonOff, unread };
}

/** The keyboard that a coupler couples to itself (`Great to Great 4`), `null` for any other. */
const ownOf = (coupler: PrintedCoupler | undefined): string | null => (coupler?.by === "self" ? coupler.first : null);

function partedEnds(
  text: string,
  names: readonly string[],
): (Pick<PrintedCoupler, "by"> & { first: string; second: string }) | null {
  const words = clean(text).replace(/^(?:man(?:ual|uaal)?\.?|clavier|tastiera|teclado) (?=(?:I|V|\d))/iu, "");
  const pattern = new RegExp(BETWEEN.source, "giu");
  for (const match of words.matchAll(pattern)) {
    if (match.index === 0) continue;
    const first = clean(words.slice(0, match.index));
    const second = clean(words.slice(match.index + match[0].length)).replace(
      /^(?:man(?:ual|uaal)?\.?|clavier|tastiera|teclado) (?=(?:I|V|\d))/iu,
      "",
    );
    if (!looksLikeDivision(first, names) || !looksLikeDivision(second, names)) continue;
    // "I - Grand-Orgue" is a heading: only to the pedal is a numeral joined with a name.
    const numerals = [first, second].filter(
      (end) => /^(?:I{1,3}|IV|VI{0,2}|[1-7])\.?$/.test(end) || headingIn(end)?.numberOnly,
    ).length;
    if (
      numerals === 1 &&
      match[1] !== undefined &&
      ![first, second].some((end) => /^(?:p(?:[eé]d\S*|\.)?|j)$/i.test(end))
    )
      continue;
    const sign = match[1];
    const by = sign === undefined || sign === "&" ? "words" : sign === "–" || sign === "—" ? "-" : sign;
    return { first, second, by: by as "words" | "/" | "-" | "+" };
  }
  return null;
}

/** A division of the list, as far as couplers need it. */
export interface Coupled {
  readonly name: string;
  readonly role: Role;
  readonly kind: "manual" | "pedal";
  readonly keyboard: number | null;
}

const isSubsequence = (short: string, long: string): boolean => {
  let at = 0;
  for (const letter of short) {
    at = long.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
};

/** The divisions that words in a coupler can mean: one is an answer, several or none a question. */
export function divisionsMeant(words: string, divisions: readonly Coupled[]): readonly Coupled[] {
  const text = clean(words).replace(/\.$/, "");
  const folded = foldedSpelling(text);
  const exact = divisions.filter((one) => foldedSpelling(one.name) === folded);
  if (exact.length > 0) return exact;
  const manuals = divisions.filter((one) => one.kind === "manual");
  // "VII Swell" in a numbered list of couplers: the name says more than the number.
  const called = headingIn(text);
  const byName =
    called && !called.numberOnly && called.name !== text
      ? divisions.filter((one) => foldedSpelling(one.name) === foldedSpelling(called.name))
      : [];
  if (byName.length === 1) return byName;
  const number = romanValue(text) ?? (/^[1-7]$/.test(text) ? Number(text) : (headingIn(text)?.keyboard ?? null));
  if (number !== null) {
    const numbered = manuals.filter((one) => one.keyboard === number);
    if (numbered.length > 0) return numbered;
    const only = manuals[number - 1];
    return manuals.every((one) => one.keyboard === null) && only ? [only] : [];
  }
  const heading = headingIn(text);
  const role = divisionRole(folded) ?? (heading?.exact ? heading.role : null);
  const byRole = role === null ? [] : divisions.filter((one) => one.role === role);
  if (byRole.length > 0) return byRole;
  for (const short of rolesOfShort(folded)) {
    const meant = divisions.filter((one) => one.role === short);
    if (meant.length > 0) return meant;
  }
  const similar = divisions.filter((one) => {
    const name = foldedSpelling(one.name);
    return (
      folded.length >= 2 &&
      (name.startsWith(folded) || (folded.length <= 4 && name[0] === folded[0] && isSubsequence(folded, name)))
    );
  });
  if (similar.length > 0) return similar;
  // "Manual" or "Great" in the list of an organ with one keyboard.
  return manuals.length === 1 && role !== null && role !== "pedal" && /^man/.test(folded) ? manuals : [];
}
