import type { StandIn } from "../prescription.ts";
import { standIn } from "./wanted.ts";

/**
 * What stands in for a wanted stop that the organ lacks, nearest first, with its cost from 1 (hardly heard) to 5
 * (another colour that does the job). An entry without stops says how to do without. Common practice.
 */
export const STAND_INS: readonly StandIn[] = [
  standIn("cromorne 8", [
    { stops: ["clarinet 8"], cost: 2 },
    { stops: ["dulcian 8"], cost: 2 },
    { stops: ["oboe 8"], cost: 3 },
    { stops: ["regal 8", "stopped-flute 8"], cost: 3 },
    { stops: ["trumpet 8"], cost: 4, note: "if mild, or in a half shut box" },
    { stops: ["stopped-flute 8", "nasard 2 2/3"], cost: 4, note: "the hollow series" },
  ]),
  standIn("trumpet 8", [
    { stops: ["horizontal-trumpet 8"], cost: 2 },
    { stops: ["oboe 8", "principal 8"], cost: 3 },
    { stops: ["oboe 8", "cornet"], cost: 3 },
    { stops: ["cromorne 8", "cornet"], cost: 3 },
    { stops: ["cornet"], cost: 4 },
    { stops: ["principal 8", "principal 4", "principal 2"], cost: 5 },
  ]),
  standIn("voix-humaine 8", [
    { stops: ["regal 8", "stopped-flute 8"], cost: 3, note: "with tremulant" },
    { stops: ["oboe 8", "stopped-flute 8"], cost: 3, note: "with tremulant" },
    { stops: ["string 8", "celeste 8"], cost: 4 },
  ]),
  standIn("oboe 8", [
    { stops: ["schalmei 8"], cost: 3 },
    { stops: ["clarinet 8"], cost: 3 },
    { stops: ["cromorne 8", "stopped-flute 8"], cost: 3 },
    { stops: ["trumpet 8"], cost: 3, note: "in a half shut box" },
    { stops: ["string 8", "stopped-flute 8"], cost: 4 },
  ]),
  standIn("clarinet 8", [
    { stops: ["cromorne 8"], cost: 2 },
    { stops: ["stopped-flute 8", "nasard 2 2/3"], cost: 3 },
    { stops: ["oboe 8"], cost: 4 },
  ]),
  standIn("cornet", [
    { stops: ["stopped-flute 8", "flute 4", "nasard 2 2/3", "flute 2", "tierce 1 3/5"], cost: 1 },
    { stops: ["stopped-flute 8", "flute 4", "sesquialtera"], cost: 1 },
    { stops: ["principal 8", "sesquialtera"], cost: 3 },
  ]),
  standIn("tierce 1 3/5", [
    { stops: ["sesquialtera"], cost: 1, note: "where the nasard is asked for too" },
    { stops: ["cornet"], cost: 2, note: "mind its lowest key" },
  ]),
  standIn("larigot 1 1/3", [
    { stops: [], leaveOut: true, cost: 1, note: "leave it out" },
    { stops: ["principal 1"], cost: 3 },
  ]),
  standIn("quint 5 1/3", [{ stops: [], leaveOut: true, cost: 1, note: "leave it out" }]),
  standIn("open-flute 2", [{ stops: ["principal 2"], cost: 1 }]),
  standIn("principal 2", [
    { stops: ["open-flute 2"], cost: 1 },
    { stops: ["rauschpfeife"], cost: 1, note: "which holds it beside the twelfth" },
  ]),
  standIn("nasard 2 2/3", [{ stops: ["twelfth 2 2/3"], cost: 1 }]),
  standIn("twelfth 2 2/3", [
    { stops: ["nasard 2 2/3"], cost: 1 },
    { stops: ["rauschpfeife"], cost: 1 },
  ]),
  standIn("sesquialtera", [
    { stops: ["nasard 2 2/3", "tierce 1 3/5"], cost: 1 },
    { stops: ["cornet"], cost: 2, note: "mind its lowest key" },
    { stops: ["tierce 1 3/5"], cost: 3 },
  ]),
  standIn("principal 16", [
    { stops: ["stopped-flute 16"], cost: 1 },
    { stops: ["quintadena 16"], cost: 2 },
    { stops: ["string 16"], cost: 2 },
  ]),
  standIn("principal 8", [
    { stops: ["stopped-flute 8"], cost: 2, note: "as base of a chorus that begins with principal 4" },
    { stops: ["soft-string 8", "stopped-flute 8"], cost: 3 },
  ]),
  standIn("stopped-flute 8", [
    { stops: ["open-flute 8"], cost: 1 },
    { stops: ["quintadena 8"], cost: 2 },
    { stops: ["soft-string 8"], cost: 2 },
    { stops: ["principal 8"], cost: 3, note: "if mild" },
  ]),
  standIn("principal 4", [
    { stops: ["open-flute 4"], cost: 2 },
    { stops: ["soft-string 4"], cost: 2 },
  ]),
  standIn("mixture", [
    { stops: ["cymbal"], cost: 1 },
    { stops: ["rauschpfeife"], cost: 2 },
    { stops: ["principal 2", "larigot 1 1/3"], cost: 2 },
    { stops: ["principal 1"], cost: 3 },
    { stops: [], cost: 4, note: "super-octave coupler over 4 and 2" },
  ]),
  standIn("cymbal", [
    { stops: ["mixture"], cost: 1 },
    { stops: [], leaveOut: true, cost: 1, note: "leave it out" },
  ]),
  standIn("harmonic-flute 8", [
    { stops: ["open-flute 8"], cost: 1 },
    { stops: ["stopped-flute 8", "flute 4"], cost: 3 },
    { stops: ["principal 8"], cost: 3, note: "if mild" },
  ]),
  standIn("harmonic-flute 4", [
    { stops: ["open-flute 4"], cost: 1 },
    { stops: ["stopped-flute 4"], cost: 2 },
  ]),
  standIn("harmonic-flute 2", [
    { stops: ["open-flute 2"], cost: 1 },
    { stops: ["principal 2"], cost: 2 },
  ]),
  standIn("string 8", [
    { stops: ["soft-string 8"], cost: 1 },
    { stops: ["quintadena 8"], cost: 3 },
    { stops: ["stopped-flute 8"], cost: 3 },
  ]),
  standIn("soft-string 8", [
    { stops: ["string 8"], cost: 1, note: "box low" },
    { stops: ["stopped-flute 8"], cost: 2 },
  ]),
  standIn("celeste 8", [
    { stops: ["soft-string 8", "stopped-flute 8"], cost: 3, note: "box low" },
    { stops: ["soft-string 8"], cost: 4, note: "with tremulant" },
    { stops: ["principal 8"], cost: 3, note: "with tremulant, as in Italy" },
  ]),
  standIn("horizontal-trumpet 8", [
    { stops: ["trumpet 8"], cost: 2 },
    { stops: ["tuba 8"], cost: 2 },
  ]),
  standIn("tuba 8", [
    { stops: ["horizontal-trumpet 8"], cost: 2 },
    { stops: ["trumpet 8"], cost: 2, note: "with its 4, or all trumpets" },
  ]),
  standIn("bassoon 16", [
    { stops: ["dulcian 16"], cost: 1 },
    { stops: ["trumpet 16"], cost: 2, note: "if mild" },
  ]),
  standIn("musette 8", [
    { stops: ["cromorne 8"], cost: 1, note: "with no principal 4 beside it" },
    { stops: ["oboe 8"], cost: 2 },
  ]),
  standIn(
    "open-flute 8",
    [
      { stops: ["principal 8"], cost: 1 },
      { stops: ["stopped-flute 8"], cost: 1 },
      { stops: [], cost: 1, note: "a manual's 8 coupled" },
      { stops: ["stopped-flute 16", "stopped-flute 8"], cost: 3, note: "French classical only as a last way" },
    ],
    { pedal: true },
  ),
  standIn(
    "principal 16",
    [
      { stops: ["stopped-flute 16", "principal 8"], cost: 1 },
      { stops: ["string 16"], cost: 1 },
      { stops: [], cost: 3, note: "a manual 16 coupled" },
    ],
    { pedal: true },
  ),
  standIn(
    "stopped-flute 16",
    [
      { stops: ["string 16"], cost: 1 },
      { stops: ["open-flute 16"], cost: 2 },
      { stops: [], cost: 2, note: "a manual 16 coupled" },
      { stops: ["principal 16"], cost: 3, note: "if mild" },
    ],
    { pedal: true },
  ),
  standIn(
    "principal 32",
    [
      { stops: ["stopped-flute 32"], cost: 1 },
      { stops: ["stopped-flute 16", "quint 10 2/3"], cost: 2, note: "resultant" },
    ],
    { pedal: true },
  ),
  standIn(
    "trumpet 16",
    [
      { stops: ["dulcian 16"], cost: 2 },
      { stops: ["bassoon 16"], cost: 2 },
      { stops: [], cost: 2, note: "a manual reed 16 coupled" },
      { stops: ["trumpet 8", "principal 16"], cost: 3 },
    ],
    { pedal: true },
  ),
  standIn(
    "trumpet 8",
    [
      { stops: [], cost: 1, note: "a manual trumpet 8 coupled alone" },
      { stops: ["dulcian 8"], cost: 2 },
      { stops: ["principal 8", "principal 4"], cost: 3 },
    ],
    { pedal: true },
  ),
  standIn(
    "principal 4",
    [
      { stops: ["open-flute 4"], cost: 1 },
      { stops: ["trumpet 4"], cost: 2 },
      { stops: ["cornett 4"], cost: 2 },
      { stops: [], cost: 1, note: "a manual's 4 coupled alone" },
      { stops: ["principal 8"], cost: 2, note: "an octave higher where the pedalboard reaches" },
      { stops: ["cornett 2"], cost: 2, note: "an octave lower" },
    ],
    { pedal: true },
  ),
];
