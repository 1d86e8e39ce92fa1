/** Words that begin or fill lines about the console, the works and the history: never stops. Common practice. */
const ACCESSORY =
  /(?:pistons?\b|composition pedals?|comb(?:ination)?s?\b|combinaisons?|kombination(?:en|s)?|combinazion|combinacion|toe studs?|setzer|sequen[cz]|memory|crescendo|crescend|walze\b|registerschweller|tutti\b|plenum ?(?:tritt|zug)|(?:balanced|swell|schwell|schweller)[- ]?(?:pedal|tritt|shoe)|jalousie|schwelltritt|expression pedal|pédale d['’]expression|zimbelstern|zymbelstern|cimbelster|cymbelstern|cymbelstjern|zymbel?stern|stern\b|nachtigall?|nachtegaal|rossignol|usignol|uccelli|vogel(?:ge)?s|vogelzang|kuckuck|coucou|kalkant|calcant|ventil(?:e|en)?\b|ventiel(?:en)?\b|sperrvent|afsluit|windlos|windablass|evacuant|motor\b|gebläse|blower|wind ?(?:druck|pressure)|balg|bellows|soufflets|mantici|midi\b|transpos|usb\b|combinator|drawknob|drawstop|draw-stop|stop ?jamb|rocker|tab(?:let)?s?\b|reversib|reversers?\b|cancel|general(?:s)?\b|divisionals?\b|thumb\b|handregister|freie komb|zungen(?:einzel)?absteller|absteller|anches (?:p[eé]d|r[eé]c|pos|g|[rp](?![\p{L}]))|appels? d['’]anches|appels?\b|expression\b|tiratutti|tira ?tutti|terzamano|terza mano|banda|corni dolci terza|sordin|pedaletti|combinazione|pedalett[oi]|staff[ae] |pomell[oi]|pistoncin[oi]|polysequence|replay|sostenuto|nazard off|effets? d['’]orage|orage\b|tonnerre|pajarit|pájaros|gatos|cascabeles|arca de ecos|rodillera|tambor(?:es)? y|trommeln?\b|console|spieltisch|speeltafel|consolle|consola|setzeranlage|anschläge|mutes?\b|shifting movement|machine stop)/iu;

/** Sentences about the organ. */
const PROSE =
  /^(?:no|ohne|sans|zonder|senza|sin) p[eé]d|(?<![\p{L}])(?:was|were|been|built|rebuilt|restored|restoration|installed|added by|moved|made by|by the|opus|wurde|worden|erbaut|gebaut|umgebaut|restauriert|errichtet|stammt|sind|ist|hat|haben|befindet|gebouwd|werd|werden|gerestaureerd|bevindt|zijn|heeft|construit|construite|restauré|restaurée|possède|comporte|est|sont|fut|été|costruito|restaurato|possiede|è|sono|conserva|fu|construido|restaurado|tiene|posee|está|fue|es un|bygget|byggd|restaureret|mechanical|mechanisch|mechanische|elektrisch|electric|electro|pneumatic|pneumatisch|mécanique|meccanica|mecánica|trasmissione|transmission mécanique|traction|traktur(?:en)?|tracker|temperatur|temperament|tempérament|temperamento|stimmung|stimmtonhöhe|stimmton|tuning|toonhoogte|diapason à|corista|kammerton|chorton|hertz|hz|mm|gehäuse|prospekt|orgelkast|buffet|cassa|orgelbauer|organ builders?|orgelmakers?|facteurs?|opera di|disposition der|new stops|neue register|nieuwe registers|jeux neufs|nuovi registri|photo|foto|copyright|©|www|http|https|e-?mail|tel|phone|seite|page|pagina|concerts?|konzert|sunday|sonntag|service|total|gesamt|totaal|insgesamt|zusammen|key to|legend|anmerkung(?:en)?|noten?:|notes?:|note that|source|quelle|bron)(?![\p{L}])|\b\d+ (?:speaking |klingende |sprekende )?(?:stops|register|registers|jeux|registri|registros|stemmen|ranks|pipes|pfeifen|pijpen|tuyaux|canne)\b|@/iu;
const YEAR = /(?<![\d/])(?:1[3-9]\d\d|20[0-4]\d)(?![\d/])/;

/** Titles over a whole list, and over parts of a division: they name no division. Common practice. */
const LIST_TITLE =
  /^(?:(?:die|the|la|le|het|de|current|present|original|heutige|ursprüngliche|jetzige|huidige|composition actuelle|ihre)\s)?(?:disposition|dispositie|dispositione|disposizione(?: fonica)?|disposición|disposizion[ei]|composition|composizione|composición|specification|spec|stop ?list|stops?|register(?:liste|übersicht|n)?|registers|registri|registros|registres|jeux|stemmen|stimmen|manuals?|manuale|console|claviers|klaviaturen|keyboards|stoplist|tableau des jeux|liste des jeux|composition de l['’]orgue|elenco dei registri|speaking stops|klingende register|labialstimmen|lingualstimmen|lingualen|labialen|labiale|linguale|zungen(?:stimmen)?|flues?(?: ?work)?|reeds?|strings|flutes|mixtures|mutations|anches|fonds|jeux de (?:fonds?|mutations?|combinaison|anches|détail)|laye .*|flue stops|reed stops|tongwerken|labialen|ance|anime|fondi|lengüeta|lengüetería|couleurs?|plein jeu(?=:)|(?:(?:registri )?(?:di |del )?ripieno|(?:registri )?(?:da |di )?concerto|strumenti|registri (?:strumentali|orchestrali))(?=:)|(?:prima |seconda |terza )?colonna(?: (?:di |a )?(?:destra|sinistra))?|(?:left|right)(?: hand)? jamb|(?:linke|rechte) (?:seite|staffel)|chorus|foundation stops)(?:\s(?:are|sind|sono|son|sont|zijn|der orgel|of the organ|de l['’]orgue|dell['’]organo|del órgano|van het orgel|is|ist|a .*|lauten?))*\s*[:.]?$/iu;
const AIDS_TITLE =
  /^(?:(?:koppeln?|kopplungen|koppelingen|couplers?|accouplements?|tirasses?|unioni|accoppiamenti|enganches|acoplamientos|kobler|kopplingar|koppels|copule)\s*(?:und|and|et|en|e|y|&|,|\/|u\.)\s*.{2,40}|(?:spielhilfen|nebenz[uü]ge?|nebenregister|accessor(?:ies|i|ios)|accessoires?|werktuigen|werktuiglijke registers|registres (?:méc|acc).*|accessories and couplers|speelhulpen|effetti|pedaletti|efectos|accesorios|hilfsregister|hilfszüge|sonstiges|weitere details|details|general|allgemeines|technische (?:daten|angaben).*|spielanlage|aids|console aids|mechanical registers|overige|diversen|divers|annessi|spillehj[aæ]lp.*|spelhj[aä]lp.*|pédales? de combinaisons?|other|others|mechanicals|tremulants|tremulanten|trémolos|tremblants|toys|effects|jeux accessoires)(?:\s+(?:und|and|et|en|e|y|&)\s+.{2,40})?)\s*[:.]?$/iu;

const TREMULANT =
  /(?<![\p{L}])(?:tremulant(?:en|s|e|es)?|tremul[oa]s?|tremol[oa]s?|trémolos?|tremblants?(?: doux| fort| lent| à vent perdu)*|tremolant[ei]?|tremblor|temblor|temblante|tremolante|schwebung|bebung|trem\.?|trem(?=\b))(?![\p{L}])/iu;

/** A line over a whole list or over a part of a division (`Disposition:`, `Jeux de fond`, `Reeds`). */
export const isListTitle = (text: string): boolean => text.length < 80 && LIST_TITLE.test(text.trim());

/** The title of the part that holds couplers, tremulants and console aids. */
export const isAidsTitle = (text: string): boolean => text.length < 80 && AIDS_TITLE.test(text.trim());

/** How letters begin and announce a list: words that are never the name of an organ. Common practice. */
const LETTER =
  /(?<![\p{L}])(?:wrote|schrieb|a écrit|ha scritto|escribió|schreef)\s*:?$|^(?:hi|hello|dear|hallo|liebe[rs]?|sehr geehrte[rs]?|beste|geachte|bonjour|salut|chère?s?|caro|cara|gentile|buongiorno|estimad[oa]s?|querid[oa]s?|hola|hej|kære|from|to|subject|date|sent|von|an|betreff|datum|gesendet|objet|oggetto|asunto|aan|van|onderwerp)(?=[\s:,])(?!\s(?:alban|organ|orgel))|(?<![\p{L}])(?:here (?:is|are|comes?)|as follows|see below|attached|anbei|hier (?:ist|sind|kommt|die)|voici|ci-joint|ecco|allegat[oa]|aquí|adjunt[oa]|hierbij|bijgaand|(?:folgende|volgende|following|suivante|seguente|siguiente) (?:disposition|dispositie|stops|specification|stoplist|composition|disposizione|disposición))(?![\p{L}])/iu;

/** How letters end: nothing behind it is of the list. Common practice. */
const FAREWELL =
  /^(?:(?:viele|liebe|herzliche|beste|schöne|freundliche) grü(?:ß|ss)e|mit (?:freundlichen|herzlichen|besten|lieben) grü(?:ß|ss)en|grü(?:ß|ss)e|gru(?:ß|ss)|[lv]g|mfg|bises|amitiés|un saludo|un abrazo|un saluto|(?:kind|best|warm) (?:regards|wishes)|regards|yours(?: \p{L}+)?|cheers|many thanks|thank you|thanks|vielen dank|danke|cordialement|bien (?:à vous|cordialement)|merci|cordiali saluti|distinti saluti|grazie|saludos(?: cordiales)?|gracias|(?:met )?(?:vriendelijke|hartelijke) groet(?:en)?|groet(?:en|jes)?|bedankt|med venlig hilsen|hilsen|hälsningar|pozdrawiam|s pozdravem)(?![\p{L}])[\s\p{P}]*(?:$|\p{Lu}\p{L}*[\s\p{P}]*$)/iu;

/** The end of a letter around the list (`Kind regards`). */
export const isFarewell = (text: string): boolean => text.length < 60 && FAREWELL.test(text.trim());

/** A line of a letter around the list. */
export const isLetter = (text: string): boolean => LETTER.test(text.trim());

/** A line about the console: pistons, pedals, valves, stars. */
export const isAccessory = (text: string): boolean => ACCESSORY.test(text);

/** A line of prose, an address, a count: nothing that is drawn. */
export const isProse = (text: string): boolean => PROSE.test(text) || YEAR.test(text) || text.trim().length > 200;

/** A tremulant in a line without stops. */
export interface PrintedTremulant {
  /** Words behind it that may name divisions, `null` when it stands alone. */
  readonly scope: string | null;
  readonly whole: boolean;
}

const WHOLE =
  /ganze|gesamt|whole|entire|all\b|tutt|toute|hele|gehele|general|todo|intero|both|complete|doux|fort|vent perdu/iu;

/** The tremulant that the text is, or `null`. */
export function tremulantIn(text: string): PrintedTremulant | null {
  const match = TREMULANT.exec(text);
  if (!match || text.length > 120) return null;
  // With a pitch it is an undulating stop of that name.
  if (/bung/iu.test(match[0]) && /(?:\d\s?(?:['′’´`‘]|f(?:uß|uss|t)?\b)|\s(?:16|8|4)(?:\s|$))/iu.test(text))
    return null;
  const before = text
    .slice(0, match.index)
    .replace(/^\s*\d+\s+/, "")
    .trim();
  const scope = `${before} ${text.slice(match.index + match[0].length)}`
    .replace(
      /(?<![\p{L}])(?:für|das|the|de|du|des|to|on|auf|für|voor|het|per|il|la|le|del|al|im|in|for|und|and|et|e|y|en|zusätzlich|ein|eine|einen|frei|einstellbar(?:er|e)?|a|an|regulierbar|adjustable|variable|langsam|schnell|slow|fast|regelbar|sur|les?)(?![\p{L}])/giu,
      " ",
    )
    .replace(/[()[\]:.,;*]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
  return { scope: scope === "" ? null : scope, whole: WHOLE.test(text) };
}
