import { isCompound } from "../acoustics/voice.ts";
import { reachOf } from "../console/reach.ts";
import { stopLabel } from "../judging/listening.ts";
import { type Key, keyText } from "../pitch/key.ts";
import { pitchName } from "../pitch/reading.ts";
import { isProposable } from "../propose/state-space.ts";
import { joined } from "../rules/rule.ts";
import type { Division, Instrument, Stop } from "../stoplist/instrument.ts";
import { KIND_GROUPS, type Kind } from "../stoplist/kind.ts";

/** What an observation is about. */
export type Subject =
  | "keyboards"
  | "chorus"
  | "solo"
  | "beating"
  | "halves"
  | "pedal"
  | "couplers"
  | "shared pipes"
  | "boxes"
  | "tremulants"
  | "off";

/** Something that a musician would notice about an instrument before hearing it, in one or two sentences. */
export interface Observation {
  readonly about: Subject;
  readonly text: string;
}

const isOf = (stop: Stop, kinds: readonly Kind[]): boolean => stop.kinds.some((kind) => kinds.includes(kind));
const feetOf = ({ pitch }: Stop): number => (pitch ? pitch.over / pitch.under : 0);
const usable = ({ stops }: Division): readonly Stop[] => stops.filter(isProposable);
const manualsOf = ({ divisions }: Instrument): readonly Division[] => divisions.filter(({ kind }) => kind !== "pedal");
const isFlue = (stop: Stop): boolean => !isOf(stop, KIND_GROUPS.reed) && !isCompound(stop);
const MIXTURES: readonly Kind[] = ["mixture", "cymbal", "rauschpfeife"];

/** The principals of a division with its gaps: a step of the chorus is missing where a shorter one stands above it. */
function chorusOf(division: Division): Observation | null {
  const own = usable(division).filter((stop) => !isCompound(stop));
  const principals = own.filter((stop) => isOf(stop, ["principal"]) && stop.half !== "treble");
  const crown = usable(division).filter((stop) => isOf(stop, MIXTURES));
  if (principals.length === 0) return null;
  const pitches = [...new Set(principals.toSorted((a, b) => feetOf(b) - feetOf(a)).map((stop) => feetOf(stop)))];
  const steps = crown.length > 0 ? [8, 4, 2] : [8, 4, 2].filter((feet) => feet >= Math.min(...pitches));
  const gaps = steps.filter((feet) => !pitches.includes(feet));
  const filled = gaps.map((feet) => {
    const other = own.find((stop) => feetOf(stop) === feet && isOf(stop, KIND_GROUPS.flute));
    return other ? `${feet} (${stopLabel(other)} must serve)` : String(feet);
  });
  const shown = principals
    .toSorted((a, b) => feetOf(b) - feetOf(a))
    .flatMap(({ pitch }) => (pitch ? pitchName(pitch) : []));
  // As old Italian builders have it, every row of the mixture with a knob of its own.
  const single = pitches.filter((feet) => feet < 2).length > 1 ? ", the mixture in single rows" : ", no mixture";
  const row = [...new Set(shown)];
  const apart = row.some((each) => each.includes("/")) ? ", " : " ";
  const has = `${division.name}: ${row.length === 1 ? "principal" : "principals"} ${row.join(apart)}${crown.length > 0 ? ` with ${joined(crown.map(stopLabel))}` : single}`;
  const but = gaps.length > 0 ? `; no principal ${joined(filled)}` : "";
  return { about: "chorus", text: `${has}${but}.` };
}

/** Whether a keyboard has stops for its bass and stops for its treble; a Cornet of the treble alone divides nothing. */
const isDivided = (division: Division): boolean =>
  (["bass", "treble"] as const).every((side) => usable(division).some(({ half }) => half === side));

/** A keyboard alone, or none: what that rules out is said before all else. */
function keyboardsOf(instrument: Instrument): readonly Observation[] {
  const say = (text: string): readonly Observation[] => [{ about: "keyboards", text }];
  const manuals = instrument.divisions.filter(({ kind }) => kind === "manual");
  if (manuals.length === 0) return say("There is no keyboard for the hands: only the feet can play.");
  if (!manualsOf(instrument).some((each) => usable(each).length > 0)) return say("No stop for the hands can be drawn.");
  if (manuals.length > 1) return [];
  if (manuals.some(isDivided)) return say("One keyboard: two sounds at once only by its divided stops.");
  const short = manuals.flatMap((each) => usable(each).filter(({ half }) => half !== null));
  return say(
    short.length > 0
      ? `One keyboard: two sounds at once only by ${joined(short.map(stopLabel))}.`
      : "One keyboard with undivided stops: the hands have one sound at a time.",
  );
}

/** Stops that are drawn in halves, and where these meet. */
function halvesOf(instrument: Instrument): readonly Observation[] {
  return manualsOf(instrument).flatMap((division): readonly Observation[] => {
    const halves = usable(division).filter(({ half }) => half !== null);
    if (!isDivided(division)) return [];
    const names = (wanted: Stop["half"]): string =>
      halves
        .filter(({ half }) => half === wanted)
        .map((stop) => stopLabel(stop).replace(/ (?:bass|treble)$/, ""))
        .join(", ");
    const sides = (["bass", "treble"] as const).flatMap((side) =>
      names(side) === "" ? [] : [`${side} ${names(side)}`],
    );
    const meeting = new Set(halves.flatMap(({ half, from }) => (half === "treble" ? [from] : [])));
    const [key] = meeting;
    const where = meeting.size === 1 && key !== undefined ? `, the treble from ${keyText(key)} up` : "";
    return [{ about: "halves", text: `${division.name}, divided stops${where}: ${sides.join("; ")}.` }];
  });
}

/** Ranks that beat with another, with the keys they lack. */
function beatingOf(instrument: Instrument): readonly Observation[] {
  const ranks = onKeyboards(instrument, (stop) => isOf(stop, ["celeste"]));
  return ranks === "" ? [] : [{ about: "beating", text: `Beating with another stop: ${ranks}.` }];
}

/** What shakes. */
function tremulantsOf({ tremulants }: Instrument): readonly Observation[] {
  if (tremulants.length === 0) return [];
  const own = tremulants.filter((name) => name !== "all");
  const whole = own.length < tremulants.length ? ["the whole organ"] : [];
  return [{ about: "tremulants", text: `Tremulant: ${joined([...own, ...whole])}.` }];
}

/** Stops that carry a tune by themselves: reeds at 8, cornets, and what sounds a third. Common practice. */
function soloVoices(instrument: Instrument): Observation {
  const voices = onKeyboards(
    instrument,
    (stop) =>
      (isOf(stop, KIND_GROUPS.reed) && feetOf(stop) === 8) ||
      isOf(stop, KIND_GROUPS["tierce-sounding"]) ||
      isOf(stop, ["nasard"]),
  );
  const text =
    voices !== ""
      ? `Voices for a solo: ${voices}.`
      : "No reed and no mutation for a solo: a tune is told from its accompaniment by keyboard, pitch or strength alone.";
  return { about: "solo", text };
}

/** `Cornet V (nothing below C4) on the Great; Oboe 8 on the Swell`: the stops for the hands that are such; `""` for none. */
const onKeyboards = (instrument: Instrument, is: (stop: Stop) => boolean): string =>
  manualsOf(instrument)
    .flatMap((division) => {
      const names = usable(division)
        .filter(is)
        .map((stop) => `${stopLabel(stop)}${rangeWords(stop, division)}`);
      return names.length > 0 ? [`${joined(names)} on the ${division.name}`] : [];
    })
    .join("; ");

/** ` (nothing below C4)`: where a stop does not speak on the whole keyboard; a chord of keys more or less goes unmentioned. */
function rangeWords(stop: Stop, { compass }: Division): string {
  const beyond = (key: Key, edge: Key): boolean => Math.abs(key - edge) > 3;
  if (beyond(stop.from, compass.low)) return ` (nothing below ${keyText(stop.from)})`;
  return beyond(stop.to, compass.high) ? ` (nothing above ${keyText(stop.to)})` : "";
}

/** Whether the pedal can carry a bass and a tune by itself. */
function pedalOf(instrument: Instrument): readonly Observation[] {
  const pedal = instrument.divisions.find(({ kind }) => kind === "pedal");
  const say = (text: string): readonly Observation[] => [{ about: "pedal", text }];
  if (!pedal) return say("There is no pedal: the hands play every bass.");
  const own = usable(pedal);
  const coupled = instrument.couplers.filter((each) => each.to === pedal.name && each.from !== pedal.name);
  const from = [...new Set(coupled.map((each) => each.from))];
  if (own.length === 0) {
    return say(
      from.length > 0
        ? `The pedal has no stop of its own and plays those of the ${joined(from)}.`
        : "The pedal has no stop that can be drawn, and no coupler.",
    );
  }
  const wanted: readonly (readonly [string, (stop: Stop) => boolean])[] = [
    ...[16, 8, 4].map(
      (feet) => [`flue of ${feet} foot`, (stop: Stop) => isFlue(stop) && feetOf(stop) === feet] as const,
    ),
    ["reed", (stop) => isOf(stop, KIND_GROUPS.reed)],
  ];
  const lacks = wanted.filter(([, is]) => !own.some(is));
  if (lacks.length === 0) return say("The pedal stands by itself: it has flues of 16, 8 and 4 foot and a reed.");
  const helpers = instrument.divisions.filter(({ name }) => from.includes(name));
  const ways = new Map<string, string[]>();
  for (const [what, is] of lacks) {
    const by = helpers.filter((each) => usable(each).some(is)).map(({ name }) => name);
    const way = by.length > 0 ? `by coupler from the ${by.join(" or ")}` : "nor does a coupler bring one";
    ways.set(way, [...(ways.get(way) ?? []), `no ${what}`]);
  }
  const words = [...ways].map(([way, what]) => `${joined(what)} (${way})`);
  return say(`Of its own the pedal has ${words.join("; ")}.`);
}

/** What a keyboard for the hands has only by couplers: a foundation, a mixture, a reed. */
function byCouplers(instrument: Instrument): readonly Observation[] {
  const played = instrument.divisions.filter((each) => each.kind === "pedal" || usable(each).length > 0);
  if (instrument.couplers.length === 0 && played.length > 1) {
    const text =
      "No coupler is named: nothing is counted that couplers would bring. A list may have left them out; ask.";
    return [{ about: "couplers", text }];
  }
  const wanted: readonly (readonly [string, (stop: Stop) => boolean])[] = [
    ["an 8 foot flue", (stop) => isOf(stop, KIND_GROUPS.foundation) && feetOf(stop) === 8],
    ["a mixture", (stop) => isOf(stop, MIXTURES)],
    ["a reed", (stop) => isOf(stop, KIND_GROUPS.reed)],
  ];
  return instrument.divisions
    .filter(({ kind }) => kind === "manual")
    .flatMap((division) => {
      const reached = reachOf(instrument, division, () => true).filter((each) => each.division !== division);
      const gained = wanted.flatMap(([what, is]) => {
        if (usable(division).some(is)) return [];
        const by = reached.find((each) => usable(each.division).some(is));
        return by ? [`${what} (from the ${by.division.name})`] : [];
      });
      return gained.length > 0
        ? [{ about: "couplers" as const, text: `${division.name}: only a coupler brings ${joined(gained)}.` }]
        : [];
    });
}

/** Rows of pipes behind several knobs, and which of these rob each other. */
function sharedPipes({ divisions }: Instrument): readonly Observation[] {
  const users = new Map<string, Set<Stop>>();
  for (const stop of divisions.flatMap(usable)) {
    for (const { rank } of stop.uses) users.set(rank, (users.get(rank) ?? new Set()).add(stop));
  }
  const groups = new Map<string, readonly Stop[]>();
  for (const stops of users.values()) {
    if (stops.size < 2) continue;
    groups.set([...stops].map(({ id }) => id).join("|"), [...stops]);
  }
  return [...groups.values()].map((stops) => {
    const names = divisions
      .map((division) => [division.name, stops.filter((stop) => stop.division === division.name)] as const)
      .filter(([, here]) => here.length > 0)
      .map(([name, here]) => `${here.map(stopLabel).join(", ")} (${name})`);
    const robbed = robbedInterval(stops);
    return { about: "shared pipes" as const, text: `One row of pipes serves ${joined(names)}. ${robbed}` };
  });
}

/** What is lost when two pitches of one row are drawn together: the widest said first is the octave, the commonest. */
function robbedInterval(stops: readonly Stop[]): string {
  const lengths = [...new Set(stops.map(feetOf).filter((feet) => feet > 0))].sort((a, b) => b - a);
  if (lengths.length < 2) return "Drawn on two keyboards at once, a key that both hold sounds once.";
  const octave = lengths.some((feet) => lengths.includes(feet / 2));
  const twelfth = lengths.some((feet) => lengths.some((other) => Math.abs(feet / other - 3) < 0.01));
  const lost = [...(octave ? ["an octave"] : []), ...(twelfth ? ["a twelfth"] : [])];
  return lost.length > 0
    ? `Two of them drawn together rob each other: ${lost.join(" or ")} held on the keys loses a note.`
    : "Two of them drawn together rob each other of notes.";
}

/** What can be shaded. */
function boxesOf({ divisions }: Instrument): Observation {
  const boxes = new Map<string, string[]>();
  for (const { name, box } of divisions) if (box !== null) boxes.set(box, [...(boxes.get(box) ?? []), name]);
  const open = divisions.filter(({ box, stops }) => box === null && stops.length > 0).map(({ name }) => name);
  if (boxes.size === 0)
    return { about: "boxes", text: "Nothing is enclosed: the sound swells only by stops and keyboards." };
  const shut = [...boxes.values()].map((names) => `${joined(names)}${names.length > 1 ? " in one box" : ""}`);
  return {
    about: "boxes",
    text: `Enclosed: ${shut.join("; ")}.${open.length > 0 ? ` In the open: ${joined(open)}.` : ""}`,
  };
}

/** What an organist would note of an instrument from its list alone: facts, no verdict. In the order of {@link Subject}. */
export function observationsOf(instrument: Instrument): readonly Observation[] {
  const off = instrument.divisions.flatMap(({ stops }) => stops).filter((stop) => stop.off);
  const hasHands = manualsOf(instrument).some((each) => usable(each).length > 0);
  return [
    ...keyboardsOf(instrument),
    ...manualsOf(instrument).flatMap((division) => chorusOf(division) ?? []),
    ...(hasHands ? [soloVoices(instrument)] : []),
    ...beatingOf(instrument),
    ...halvesOf(instrument),
    ...pedalOf(instrument),
    ...byCouplers(instrument),
    ...sharedPipes(instrument),
    boxesOf(instrument),
    ...tremulantsOf(instrument),
    ...(off.length > 0
      ? [
          {
            about: "off" as const,
            text: `Not counted, since marked off: ${joined(off.map((stop) => `${stopLabel(stop)} (${stop.division})`))}.`,
          },
        ]
      : []),
  ];
}
