/** What a bracket or the tail of a line says about a stop, besides its pitch. */
export interface Remark {
  /** Whose pipes the stop uses, as printed. */
  readonly borrowed: string | null;
  readonly prepared: boolean;
  /** The stop is played by the pedal though it stands in a manual's list. */
  readonly atPedal: boolean;
}

const PREPARED =
  /^(?:nur )?(?:prepared(?: for)?|prep\.?|preparation|vorgesehen|vorbereitet|vorber\.|spare|vakant|vacat|vacant|geplant|gereserveerd|voorbereid|gepland|en attente|préparé|prévu|predispost[oa]|previst[oa]|preparado|projected|planned|to be added|not (?:yet )?installed|noch nicht eingebaut|later|space only|forberedt)(?![\p{L}])/iu;
const PREPARED_ANYWHERE =
  /(?:prepared for(?: only)?|prepared only|nur vorgesehen|noch nicht eingebaut|not yet installed|réservé pour plus tard)/iu;
const BORROWED =
  /^(?:(?:also |both )?(?:borrowed|borr\.|derived|duplexed|shared|taken) ?(?:from|with|of)?|(?:the )?same (?:pipes |rank |stop )?as|from(?! tenor| middle| mid\.?| fiddle| gamut| bass| treble| [a-h]\b| [a-h]\d)|(?:\d\d (?:pipes? |notes? )?)?ext(?:ension|end(?:ed|ing)?|\.)?(?: ?(?:of|from|de|du|von|no\.?))?|transm(?:ission|ittiert|\.)?(?: (?:von|aus|from))?|aus(?! (?:dem )?(?:gro|klein|[a-h]\b|[a-h]\d))|unit(?: of)?|duplex(?: of| from)?|emprunt(?:é|ée)?(?: (?:au|à la|à l['’]|du|de))?|extrait(?:e)? d[ue]|dal(?:la|l['’])? (?!do|re|mi|fa|sol|la|si)|derivat[oa] (?:da|dal)|prolungamento|estensione|uit(?! [a-h]\b)|ontleend|transmissie|tomad[oa] de|derivad[oa] de|lån(?:t)? fra)(?![\p{L}])[ :.]*(.*)$/iu;
const AT_PEDAL =
  /^(?:al pedale|ai pedali|ai pedale|alla pedaliera|in pedal|im pedal|au pédalier|in het pedaal|en el pedal|ped(?:al|\.)?|alla pedale|nel pedale)(?![\p{L}])/iu;

/** Whose pipes a remark says are lent, without the words that say so (`Sw` of `from Sw`); the text itself where it has none. */
export const lenderIn = (text: string): string => (BORROWED.exec(text.trim())?.[1] ?? text).trim();

/** Reads a remark, in brackets or not; `null` when it is none of these. */
export function remarkIn(text: string): Remark | null {
  // "20 from Great Bourdon" counts the pipes that are lent.
  const trimmed = text.trim().replace(/^\d{1,2} (?:(?:pipes?|notes?) )?(?=from\s)/i, "");
  if (PREPARED.test(trimmed) || PREPARED_ANYWHERE.test(trimmed))
    return { borrowed: null, prepared: true, atPedal: false };
  const borrowed = BORROWED.exec(trimmed);
  if (borrowed) return { borrowed: trimmed, prepared: false, atPedal: false };
  return AT_PEDAL.test(trimmed) ? { borrowed: null, prepared: false, atPedal: true } : null;
}

/** Words behind a name that begin a remark, not a part of the name. Common practice. */
export const REMARK_WORDS = new Set([
  "alt",
  "neu",
  "neuw",
  "newe",
  "new",
  "old",
  "oud",
  "nieuw",
  "anstatt",
  "an",
  "ab",
  "aus",
  "von",
  "from",
  "ext",
  "ext.",
  "extension",
  "transm.",
  "transmission",
  "prepared",
  "prep.",
  "vorgesehen",
  "with",
  "mit",
  "avec",
  "met",
  "unit",
  "borrowed",
  "extended",
  "emprunt",
  "uit",
  "original",
  "ca.",
  "vanaf",
  "starting",
  "up",
  "bis",
  "durch",
]);

/** What was once, not what is: lengths behind these words are former ones (`so sonsten 8 Fuß gewesen`). Common practice. */
export const FORMER =
  /(?:^|\s)(?:sonsten|sonst|vormals|ehemals|früher|formerly|was|originally|voorheen|vroeger|anciennement|jadis|già|prima|antes|gewesen|geweßen)(?![\p{L}])/iu;
