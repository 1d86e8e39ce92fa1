import type { Strength } from "../instrument.ts";
import type { Meaning } from "./place.ts";
import { foldedSpelling, plainSpelling } from "./spelling.ts";

/** A name with words taken off that do not change what the thing is, and what those words do to it. */
export interface Reading {
  readonly name: string;
  /**
   * A word was taken off that moves the pitch (`Gross`, `Klein`, `Contra`): custom no longer fills in a missing
   * one.
   */
  readonly octaveUnsure: boolean;
  /** Applies what the words say: `Echo` softens, `en chamade` lays the trumpet down. */
  readonly bend: (meaning: Meaning) => Meaning;
}

type Effect = "none" | "octave" | "soft" | "chamade";

const words = (list: string, effect: Effect): readonly (readonly [string, Effect])[] =>
  list.split(",").map((word) => [plainSpelling(word), effect] as const);

/** Words before the name. Common practice. */
const BEFORE = new Map<string, Effect>([
  ...words(
    "1re,1ère,1ere,1er,2e,2me,2ème,2eme,2d,2nd,2nde,3e,3me,3ème,1st,3rd,première,premier,seconde,second,primo,prima",
    "none",
  ),
  ...words(
    "swell,choir,erste,erster,zweite,zweiter,i,ii,iii,iv,1,2,3,4,no,nr,large,small,medium,great,grand,grande,strong",
    "none",
  ),
  ...words(
    "dessus de,dessus d,basse de,basse d,pédale de,ped,pedal,pedaal,lieblich,liebl,doppel,dubbel,choral,solo,holz,metall",
    "none",
  ),
  ...words(
    "altra,altro,aequal,äqual,italienisch,italienischer,italian,spanische,spaanse,french,englisch,deutsche,orchestral,orch",
    "none",
  ),
  ...words("tiples de,bajos de,mano izquierda,mano derecha,tiple de,bajo de,juego de,jeu de", "none"),
  ...words(
    "gr,kl,gross,grosse,grosser,groß,große,großer,groot,grote,gros,klein,kleine,kleines,petit,petite,piccolo,grob,grosso",
    "octave",
  ),
  ...words("contra,kontra,contre,contro,double,dble,dbl,sub,super,sup,octave,ober,unter,bass,basso", "octave"),
  ...words("echo,écho,still,zart,sanft,soft,gentle,muted,fern,stil,eco,ecco", "soft"),
]);

/** Words behind the name. Common practice. */
const BEHIND = new Map<string, Effect>([
  ...words(
    "bass,baß,bas,basse,basses,bassi,basso,bajo,bajos,discant,diskant,disc,disk,dis,cantus,cant,treble,soprani,soprano,alto",
    "none",
  ),
  ...words(
    "dessus,d,b,dx,sx,tiple,tiples,mano izquierda,mano derecha,m i,m d,superius,descant,trebles,basses,sop,bas & disc",
    "none",
  ),
  ...words(
    "i,ii,iii,iv,v,vi,1,2,3,4,no,primo,prima,secondo,seconda,terzo,primero,primera,segundo,segunda,1°,2°,1º,2º,1ª,2ª,no 1,no 2",
    "none",
  ),
  ...words(
    "e rinforzi,alla tastiera,al do2,al do 2,intera,intero,coupée,coupé,à forte pression,coudée à forte pression,ad ance",
    "none",
  ),
  ...words(
    "real,reale,major,minor,mayor,menor,harmonique,harm,harmonic,metal,wood,holz,metall,de façade,de fachada",
    "none",
  ),
  ...words(
    "spezzato,spezzata,de positif,du positif,de récit,du récit,grosso,grossi,ripieno,aus principal,minor,forte,fort,large,small",
    "none",
  ),
  ...words(
    "e ottave,e ottava,con ottave,de bajos,de tiples,de mano izquierda,de mano derecha,acoustique,palmos",
    "none",
  ),
  ...words("doux,douce,dolce,sourdine,d écho,d echo,de eco,en eco,écho,echo,d’écho", "soft"),
  ...words("en chamade,chamade,horizontal,horizontale,de batalla,en façade,en fachada", "chamade"),
]);

/** A pitch printed as part of the name (`Montre 16`, `Quinta 2 2/3`): the pitch beside the name is what counts. */
const FIGURE = /^(?:\d{1,2}(?: \d\/\d)?|\d{1,2}\/\d|\d?[½⅓⅔⅕⅖⅗⅘])$/;

/** First and last limbs of German and Dutch solid compounds that do not change the thing. Common practice. */
const FIRST_LIMBS: readonly (readonly [string, Effect])[] = [
  ...words("lieblich,doppel,holz,metall,kupfer,choral,solo,pedal,haupt,feld,stark", "none"),
  ...words("gross,grob,klein,kontra,contra,sub,super,ober,bass", "octave"),
  ...words("still,zart,sanft,echo,fern", "soft"),
];
const LAST_LIMBS = ["enbass", "nbass", "bass", "enbas", "bas", "diskant", "discant"];

/** Last limbs that name the thing whatever stands before it, and the name to look up. */
const HEADS: readonly (readonly [string, string])[] = [
  ["flote", "Flöte"],
  ["flot", "Flöte"],
  ["fluit", "Flöte"],
  ["gedackt", "Gedackt"],
  ["gedeckt", "Gedackt"],
  ["gedekt", "Gedackt"],
  ["gedact", "Gedackt"],
  ["principal", "Principal"],
  ["prinzipal", "Principal"],
  ["bourdon", "Bourdon"],
  ["bordun", "Bourdon"],
  ["gambe", "Gamba"],
  ["gamba", "Gamba"],
  ["regal", "Regal"],
  ["mixtur", "Mixtur"],
  ["zimbel", "Zimbel"],
  ["cimbel", "Zimbel"],
  ["trompete", "Trompete"],
  ["posaune", "Posaune"],
  ["quinte", "Quintflöte"],
  ["quint", "Quintflöte"],
  ["nasat", "Nasat"],
  ["oktave", "Octave"],
  ["octave", "Octave"],
];
/** First limbs beside the names of stops. */
const MATERIALS = new Set(
  "holz,metall,kupfer,zinn,blei,birnbaum,eichen,silber,gold,wiener,schwaben,jubel,pracht,solo,harmonie,konzert,concert,violin,geigen,grob,berg,feld,orchester,stahl".split(
    ",",
  ),
);

interface Step {
  readonly name: string;
  readonly effects: readonly Effect[];
}

const bendBy =
  (effects: readonly Effect[]) =>
  (meaning: Meaning): Meaning => {
    const laidDown = effects.includes("chamade") && meaning.kinds.includes("trumpet");
    const louder = laidDown ? 1 : 0;
    const softer = effects.includes("soft") ? 1 : 0;
    return {
      ...meaning,
      kinds: laidDown ? ["horizontal-trumpet"] : meaning.kinds,
      strength: Math.min(5, Math.max(1, meaning.strength + louder - softer)) as Strength,
    };
  };

/** Every way of taking one word or limb off. */
function* shorter(step: Step): Generator<Step> {
  const tokens = plainSpelling(step.name).split(" ");
  for (const count of [1, 2, 3, 4]) {
    if (tokens.length <= count) break;
    const front = BEFORE.get(tokens.slice(0, count).join(" "));
    if (front) yield { name: tokens.slice(count).join(" "), effects: [...step.effects, front] };
    const last = tokens.slice(-count).join(" ");
    const back = BEHIND.get(last) ?? (FIGURE.test(last) ? "octave" : undefined);
    if (back) yield { name: tokens.slice(0, -count).join(" "), effects: [...step.effects, back] };
  }
  const solid = foldedSpelling(step.name);
  for (const limb of LAST_LIMBS) {
    if (solid.endsWith(limb) && solid.length - limb.length >= 4) {
      yield { name: solid.slice(0, -limb.length), effects: [...step.effects, "none"] };
    }
  }
  for (const [limb, effect] of FIRST_LIMBS) {
    if (solid.startsWith(limb) && solid.length - limb.length >= 4) {
      yield { name: solid.slice(limb.length), effects: [...step.effects, effect] };
    }
  }
}

function headOf(solid: string, isKnown: (name: string) => boolean): string | null {
  for (const [limb, name] of HEADS) {
    if (!solid.endsWith(limb)) continue;
    const before = solid.slice(0, -limb.length);
    const modifiers = [before, before.replace(/(en|n|s|er)$/, ""), before.replace(/en$/, "e")];
    if (modifiers.some((one) => one.length >= 3 && (MATERIALS.has(one) || isKnown(one)))) return name;
  }
  return null;
}

const MOST_STEPS = 60;

/**
 * The name as printed, then with ever more words taken off, fewest first; last by the last limb of a German compound
 * whose other limb is known (`Flötengedackt` is a Gedackt). Bounded: at most a few dozen readings.
 */
export function* readingsOf(name: string, isKnown: (name: string) => boolean): Generator<Reading> {
  let row: readonly Step[] = [{ name, effects: [] }];
  const seen = new Set<string>();
  let steps = 0;
  while (row.length > 0) {
    const next: Step[] = [];
    for (const step of row) {
      if (seen.has(step.name) || steps >= MOST_STEPS) continue;
      seen.add(step.name);
      steps += 1;
      yield { name: step.name, octaveUnsure: step.effects.includes("octave"), bend: bendBy(step.effects) };
      next.push(...shorter(step));
    }
    row = next;
  }
  const head = headOf(foldedSpelling(name), isKnown);
  if (head) yield { name: head, octaveUnsure: true, bend: (meaning) => meaning };
}
