import type { Compass } from "../../pitch/key.ts";
import { divisionsMeant, type PrintedCoupler } from "./couplers.ts";
import type { DivisionDraft, PlacedStop, Questions } from "./drafts.ts";
import { type Heading, headingIn } from "./headings.ts";
import type { KnownNames } from "./known-names.ts";
import { giveMarks, hasMarks, type StopDraft } from "./stop-draft.ts";
import type { Title } from "./title.ts";

/** A tremulant of the whole organ (`null`) or of the divisions its words name. */
export interface PlacedTremulant {
  readonly line: number;
  readonly text: string;
  readonly scope: string | null;
  /** The division in whose list it stands, `null` among the aids. */
  readonly within: DivisionDraft | null;
  readonly whole: boolean;
}

/** What a line was taken for: needed for what may come behind it. */
export type Taken = "heading" | "stop" | "aid" | "talk";
/** `All in general swell box`: what is said of the whole organ is said of its manuals; a pedal stands outside as a rule. */
const WHOLE_IN_BOX =
  /(?<![\p{L}])(?:all|whole organ|entire organ|tout l['’]orgue|alle register|ganze orgel|gesamte orgel|tutto l['’]organo|todo el órgano|hele orgel)(?![\p{L}])(?!.*(?:except|but|außer|sauf|behalve|tranne|menos))/iu;

const isNumberOnly = (division: DivisionDraft): boolean =>
  division.name !== null && (headingIn(division.name)?.numberOnly ?? false);

/** What is known of a list before its first line is read. */
export interface ListTraits {
  /** Headings that stand alone on their lines. */
  readonly headings: readonly string[];
  /** Bare figures before names count the lines. */
  readonly numbered: boolean;
  /** Most stops print a sign or word for feet: words without one must be known names. */
  readonly mostlyMarked: boolean;
}

/** What the lines of a list have said so far, and where the reading stands. */
export class ListSoFar {
  readonly divisions: DivisionDraft[] = [];
  readonly couplers: PrintedCoupler[] = [];
  /** Keyboards whose own pitch can be turned off, in the words of the list. */
  readonly unisonOff: { readonly line: number; readonly text: string; readonly words: string }[] = [];
  readonly tremulants: PlacedTremulant[] = [];
  /** Words that name a box: the divisions it encloses are looked up when all are known. */
  readonly boxes: string[] = [];
  title: string | null = null;
  /** Who made the organ and when, where the title says it. */
  made: Pick<Title, "builder" | "year"> | null = null;
  /** Compasses stated for all manuals and for the pedal. */
  readonly stated: { manual: Compass | null; pedal: Compass | null } = { manual: null, pedal: null };
  readonly names: KnownNames;
  readonly questions: Questions;
  readonly headings: readonly string[];
  readonly numbered: boolean;
  readonly mostlyMarked: boolean;
  current: DivisionDraft | null = null;
  among: "stops" | "aids" = "stops";
  last: PlacedStop | null = null;
  /** Stops in a row of names whose lengths may follow in a row of their own. */
  named: PlacedStop[] = [];
  /** Such a row once its lengths have begun, and the lengths. */
  waiting: PlacedStop[] = [];
  lengths: StopDraft[] = [];
  /** A length printed before the name it belongs to. */
  pending: StopDraft | null = null;
  taken: Taken = "talk";
  count = 0;
  /** A title says that the next stops are planned and not built. */
  isPreparing = false;
  /** The half that a heading or a sub-heading says the next stops are. */
  half: "bass" | "treble" | null = null;

  constructor(names: KnownNames, questions: Questions, traits: ListTraits) {
    this.names = names;
    this.questions = questions;
    this.headings = traits.headings;
    this.numbered = traits.numbered;
    this.mostlyMarked = traits.mostlyMarked;
  }

  /** Whether a division of this name has begun before. */
  hasDivision(heading: Heading): boolean {
    return this.divisions.some((one) => one.name?.toLowerCase() === heading.name.toLowerCase());
  }

  /** Begins a division, or goes on with one that the list has named before. */
  begin(heading: Heading, line: number): Taken {
    const { name, role, kind, keyboard, compass, enclosed, pullDown } = heading;
    this.among = "stops";
    this.last = null;
    this.named = [];
    this.pending = null;
    this.isPreparing = false;
    this.half = heading.half === "both" ? null : heading.half;
    const open = this.current;
    // "I. Manual" and, on the next line, "Hauptwerk": one division.
    if (
      open &&
      open.stops.length === 0 &&
      open.line < line &&
      kind === "manual" &&
      open.kind === "manual" &&
      !heading.numberOnly &&
      isNumberOnly(open) &&
      keyboard === null
    ) {
      const merged: DivisionDraft = {
        ...open,
        name,
        role,
        compass: open.compass ?? compass,
        enclosed: open.enclosed || enclosed,
      };
      this.divisions[this.divisions.indexOf(open)] = merged;
      this.current = merged;
      return "heading";
    }
    const same = this.divisions.find((one) => one.name?.toLowerCase() === name.toLowerCase() && one.kind === kind);
    if (
      same &&
      (same.stops.length === 0 || same.keyboard === null || keyboard === null || same.keyboard === keyboard)
    ) {
      this.current = same;
      same.compass ??= compass;
      same.keyboard ??= keyboard;
      same.enclosed ||= enclosed;
      return "heading";
    }
    const begun: DivisionDraft = { name, role, kind, keyboard, compass, enclosed, line, pullDown, stops: [] };
    this.divisions.push(begun);
    // "Keyboard of 45 keys", and on the next line "Pedal, pulled down": the stops behind are the keyboard's.
    const isAside = pullDown && kind === "pedal" && open?.kind === "manual" && open.stops.length === 0;
    if (!isAside) this.current = begun;
    return "heading";
  }

  /** From here on couplers, tremulants and aids are listed. */
  beginAids(): Taken {
    this.among = "aids";
    this.last = null;
    this.named = [];
    return "aid";
  }

  /** Puts a stop into its division; stops printed under no heading get one without a name. */
  place(stop: PlacedStop): void {
    if (!this.current) {
      this.current = {
        name: null,
        role: "main",
        kind: "manual",
        keyboard: null,
        compass: null,
        enclosed: false,
        line: stop.line,
        pullDown: false,
        stops: [],
      };
      this.divisions.push(this.current);
    }
    if (this.among === "aids" && !this.taken.startsWith("stop")) {
      this.questions.ask({
        kind: "stop-home",
        line: stop.line,
        text: `${stop.draft.name} stands among the couplers and aids; it is read as a stop of ${this.current.name ?? "the manual"}. Is that right?`,
        about: stop.draft.name,
        stops: [stop.draft.name],
        choices: this.divisions.map((one) => one.name ?? "the manual"),
      });
    }
    if (this.pending) {
      giveMarks(this.pending, stop.draft);
      this.pending = null;
    }
    const isContras = /^contr(?:as|abb?assi)\b/i.test(stop.draft.name) && this.current.kind === "manual";
    if (isContras) stop.draft.atPedal = true;
    if (this.half && !isContras)
      stop.draft.half ??= { start: 0, end: 0, half: this.half, sure: true, partOfName: false };
    if (this.isPreparing) stop.draft.prepared = true;
    this.current.stops.push(stop);
    this.count += 1;
    this.last = stop;
    if (hasMarks(stop.draft)) this.named = [];
    else this.named.push(stop);
  }

  /** Whether the words of a box name the division. */
  isEnclosed(division: DivisionDraft): boolean {
    if (division.kind === "manual" && this.boxes.some((box) => WHOLE_IN_BOX.test(box))) return true;
    if (division.name === null) return false;
    const coupled = this.divisions.flatMap((one) => (one.name === null ? [] : [{ ...one, name: one.name }]));
    return this.boxes.some((box) =>
      box
        // "Balanced expression pedals to Swell": the pedal that opens a box is not in one.
        .replace(
          /(?<=(?:expression|balanced|swell|schweller|volume|composition|combination)[ -])pedals?(?!\p{L})/giu,
          " ",
        )
        .split(/[\s,/+&]+/)
        .some(
          (word) =>
            word.length > 1 &&
            !/schwell|jalousie|box|kasten/i.test(word) &&
            divisionsMeant(word, coupled).some((one) => one.name === division.name),
        ),
    );
  }
}
