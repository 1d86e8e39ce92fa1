import { foldedSpelling } from "../glossary/spelling.ts";

/** What a division is in its organ, whatever it is called: abbreviations in couplers are read by it. */
export type Role =
  | "main"
  | "swell"
  | "choir"
  | "back"
  | "upper"
  | "breast"
  | "lower"
  | "crown"
  | "solo"
  | "echo"
  | "bombarde"
  | "positive"
  | "far"
  | "antiphonal"
  | "side"
  | "grand-choeur"
  | "orchestral"
  | "chancel"
  | "other"
  | "pedal";

/**
 * Names of divisions in the languages of the trade, folded (no case, accents or gaps), by what they are. Common practice;
 * Danish, Swedish and Latin forms from memory.
 */
const NAMES: Readonly<Record<Role, string>> = {
  main:
    "great greatorgan grorgue gdorgue grandorg hauptwerk hauptwerck hauptwerke hauptwerch hauptmanual hauptorgel hoofdwerk hoofdmanuaal hooftwerk grootwerk grandorgue " +
    "grandorgues grandorgano granorgano granorgan organogrande organomayor organomaior organoprincipale organoprincipal primoorgano organoprimo hovedvaerk hovedverk " +
    "hovedvark hovedvverk huvudverk overstewerk principaalwerk blokwerk manual manuaal manuale manualwerk clavier hauptclavier gran'organo grotorgano fomu hlavnistroj hlavnimanual manualglowny sekcjaglowna glowny paakoneisto manuał manuál grando organomajor organummagnum greatmanual hauptwercke tastiera tastieraunica teclado tecladounico manualeunico clavierunique manuelunique manuel",
  swell:
    "swell swellorgan schwellwerk schwellwerck schwellpositiv schweller zwelwerk zwelkast recit recitexpressif expressif organoespressivo espressivo " +
    "recitativo recitativoespressivo organorecitativo expresivo organoexpresivo organoexpresiva svallverk svall svaellverk svellevaerk svellverk svelleverk svelle " +
    "redony redonymu ekspresyjny manualekspresyjny zaluziovystroj paisutinkoneisto recitpaisutin zwelmanuaal reciet reciet recitatief recitexpresivo recitexpr",
  choir: "choir choirorgan chororgan",
  back:
    "ruckpositiv zadnipozitiv tylnypozytyw pozytywtylny selkapositiivi ruckpositive ruckpositif ruckwerk ruckwerck rugwerk rugpositief rugpositif rugpositiv rugge rygpositiv ryggpositiv positifdedos positivededos dos cadereta caderetadeespalda " +
    "cadireta organotergale positivotergale positivodidos tergale chair chairorgan petitorgue stoelwerk ruggewerk caderetaexterior",
  upper:
    "ylakoneisto hornistroj uppermanual upperkeyboard oberesmanual oberwerk oberwerck oberklavier obermanual oberpositiv bovenwerk bovenklavier bovenmanuaal overvaerk overvark oververk oververk oververck ovververk opperwerk oberclavier oberwercke " +
    "organosuperiore",
  breast:
    "rintakoneisto prsnistroj brust brustwerk brustwerck brustwercke brustpositiv brustpositif borstwerk borstpositief brostverk brystvaerk brystverk brystpositiv caderetainterior organodepecho",
  lower:
    "lowermanual lowerkeyboard unteresmanual unterwerk unterwerck unterpositiv unterklavier unterclavier onderwerk onderpositief onderpositif onderklavier hinterwerk underverk undervaerk nederwerk",
  crown: "kronwerk kronpositiv kroonwerk kronenwerk kronverk",
  solo: "solo soloorgan solowerk organosolo soloist organosolista",
  echo: "echo echoorgan echowerk echowerck organoeco organoecho eco ecos echos recitecho recitdecho claviererdecho clavierdecho ecodeltotal organoecco ecco ekovaerk ekovark organodeecos arcadeecos",
  bombarde: "bombarde bombardeorgan bombardwerk bombardewerk clavierdebombarde bombardes tubaorgan trompeteria tuba",
  positive:
    "positive positiveorgan positiv positif positief positivo positifexpressif positivoespressivo organopositivo positiva pozitiv pozytyw positiivi positiiv pozityw positifint positifinterieur oberpositif rygpos",
  far: "fernwerk fernorgel fjernvaerk celestial celestialorgan gallery galleryorgan grandchancel",
  antiphonal:
    "antiphonal antiphonalorgan antiphonale processional nave naveorgan transept transeptorgan westpositiv antiphonalswell antiphonalgreat",
  side: "seitenwerk nebenwerk seitenpositiv zijpositief sidepositiv hochdruckwerk regalwerk zungenwerk",
  "grand-choeur": "grandchoeur grandchour grandchaur grandchur grandchoeurorgan",
  orchestral: "orchestral orchestralorgan orchestre",
  chancel: "chancel chancelorgan chororgel koorwerk chorwerk orguedechoeur chapel sanctuary",
  other:
    "ancillary floating floatingorgan accompaniment accompanimental continuo corona krone dekoration auxiliary extensionorgan kleinwerk vorwerk mittelwerk mittelmanual",
  pedal:
    "jalkio pedał sekcjapedalu pedal pedalorgan pedals pedale pedaal pedalier pedaliera pedalera pedalwerk pedalwerck pedall pedalklavier pedalclavier ped pedalier pedalmanual pedalklaviatur " +
    "grosspedal kleinpedal kleinpedal hauptpedal groepedal kleinpedaal pedalturm vrijpedaal pedalibero pedaleorgan organopedale pedaalwerk pedalo contras",
};

/** Abbreviations, as couplers and short headings print them; upper and lower case alike. Common practice. */
const SHORT: Readonly<Record<string, readonly Role[]>> = {
  gt: ["main"],
  g: ["main"],
  grt: ["main"],
  great: ["main"],
  hw: ["main"],
  h: ["main"],
  go: ["main"],
  hm: ["main"],
  hv: ["main"],
  gdo: ["main"],
  om: ["main"],
  gdorg: ["main"],
  hpt: ["main"],
  grorg: ["main"],
  ho: ["main"],
  hptw: ["main"],
  sw: ["swell"],
  s: ["swell"],
  sww: ["swell"],
  swell: ["swell"],
  zw: ["swell"],
  rec: ["swell"],
  r: ["swell"],
  rex: ["swell"],
  rexp: ["swell"],
  oe: ["swell"],
  org_esp: ["swell"],
  exp: ["swell"],
  esp: ["swell"],
  recit: ["swell"],
  schw: ["swell"],
  schww: ["swell"],
  sv: ["swell"],
  sm: ["swell"],
  ch: ["choir", "chancel"],
  c: ["choir"],
  choir: ["choir"],
  rp: ["back"],
  rw: ["back"],
  ruckp: ["back"],
  rup: ["back"],
  rupo: ["back"],
  rgp: ["back"],
  rugp: ["back"],
  cad: ["back"],
  rpos: ["back"],
  rugpos: ["back"],
  ruckpos: ["back"],
  ow: ["upper", "lower"],
  obw: ["upper"],
  bow: ["upper"],
  bov: ["upper"],
  bovw: ["upper"],
  ov: ["upper"],
  bw: ["breast", "upper"],
  brw: ["breast"],
  bp: ["breast"],
  brp: ["breast"],
  bv: ["breast"],
  borstw: ["breast"],
  uw: ["lower"],
  up: ["lower"],
  ondw: ["lower"],
  hiw: ["lower"],
  kw: ["crown"],
  kp: ["crown"],
  so: ["solo"],
  sol: ["solo"],
  solo: ["solo"],
  e: ["echo"],
  ec: ["echo"],
  ech: ["echo"],
  eco: ["echo"],
  ew: ["echo"],
  bo: ["bombarde"],
  bom: ["bombarde"],
  bomb: ["bombarde"],
  bb: ["bombarde"],
  pos: ["positive", "back", "breast"],
  po: ["positive", "back", "breast"],
  p: ["pedal", "positive"],
  pf: ["positive"],
  fw: ["far"],
  ferw: ["far"],
  ant: ["antiphonal"],
  an: ["antiphonal"],
  gc: ["grand-choeur"],
  orch: ["orchestral"],
  or: ["orchestral"],
  ped: ["pedal"],
  pd: ["pedal"],
  j: ["pedal"],
  pedal: ["pedal"],
  pd_: ["pedal"],
  pw: ["pedal"],
  tast: ["pedal"],
};

const roles = new Map<string, Role>();
for (const [role, names] of Object.entries(NAMES)) {
  for (const name of names.split(" ").map(foldedSpelling)) if (!roles.has(name)) roles.set(name, role as Role);
}

/** Words that stand in names of divisions beside the name itself; alone they name nothing. Common practice. */
export const QUALIFIERS = new Set(
  (
    "organ orgel org orgue organo orgelwerk expressif expressive expressiv expr expresivo expresiva espressivo espressiva enclosed unenclosed organum division div departement department " +
    "de dos di pecho interior exterior espalda en im in das der die dem den le la les l il el het lo the op van von du des d al mayor grande principal principale primo secondo " +
    "petit kleines grosses klein gross groot grote großes groß interieur superieur manual manuale manuaal klavier clavier werk works section sektion und and et e y alto basso " +
    "exp schwellbar schwellkasten schwellend zwelkast swell box unter ped free libero freies"
  )
    .split(" ")
    .map(foldedSpelling),
);

/** What a folded word or words name, `null` when they name no division. */
export const divisionRole = (folded: string): Role | null => roles.get(folded) ?? null;

/** Whether folded words are an abbreviation of divisions, and of which, likeliest first. */
export const rolesOfShort = (folded: string): readonly Role[] =>
  Object.hasOwn(SHORT, folded) ? (SHORT[folded] ?? []) : [];

/** A last limb by which a word names a division though nobody has listed it (`Seitenwerk`, `Turmpositiv`). */
export const DIVISION_LIMB =
  /^.{3,}(?:werk|werck|vaerk|vark|verk|positiv|positief|positif|manual|manuaal|clavier|klavier)$/;
