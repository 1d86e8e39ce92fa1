import { compassText } from "../pitch/compass.ts";
import type { Foot } from "../pitch/foot.ts";
import { type Key, keyText } from "../pitch/key.ts";
import { pitchName } from "../pitch/reading.ts";
import type { RankUse, Stop } from "../stoplist/instrument.ts";
import { compoundKind, type Row, usualBreaks, usualPitches } from "./composition.ts";
import type { DivisionEntry } from "./division-entry.ts";
import { folded, nearestOf } from "./nearest.ts";
import { compoundUses, keysOfRank, keysOfUses, plainUses, type Ranks, ranksSounding, usesBetween } from "./pipes.ts";
import { isThird } from "./pitch-text.ts";
import type { Reporter } from "./reporter.ts";
import { startOf } from "./shape.ts";
import type { StopEntry } from "./stop-entry.ts";
import { findStops, labelsFor, type StopIndex, stopIndex } from "./stop-name.ts";
import { type Lender, type Names, type Voice, voiceOf } from "./voice.ts";

/** A stop while it is made, step by step; `null` marks a step that failed and was reported. */
interface Draft {
  readonly entry: StopEntry;
  readonly division: DivisionEntry;
  readonly name: string;
  readonly half: StopEntry["half"];
  /** As printed, for references by other stops. */
  readonly pitch: Foot | null;
  readonly ranks: number;
  voice?: Voice | null;
  uses?: readonly RankUse[] | null;
  id?: string;
  /** Whether its voice or its pipes are being looked for, to notice stops that borrow in a circle. */
  busy: boolean;
}

/** A shared rank with what it says of its stops. */
export interface SharedRank extends Lender {
  readonly id: string;
  /** Where the file names it. */
  readonly offset: number;
}

/** Stops that borrow from stops that borrow; no organ has longer rows, and each takes room on the call stack. */
const BORROWING_LIMIT = 20;

/** Makes the stops of a whole organ from the entries of its file. */
export class StopWorkshop {
  readonly #drafts: Draft[] = [];
  readonly #bases = new Map<DivisionEntry, Foot | null>();
  readonly #indices = new Map<DivisionEntry, StopIndex<Draft>>();
  readonly #drawn = new Set<string>();
  readonly #names: Names;
  readonly #ranks: Ranks;
  readonly #shared: ReadonlyMap<string, SharedRank>;
  readonly #reporter: Reporter;
  #deep = 0;

  constructor(names: Names, ranks: Ranks, shared: ReadonlyMap<string, SharedRank>, reporter: Reporter) {
    this.#names = names;
    this.#ranks = ranks;
    this.#shared = shared;
    this.#reporter = reporter;
  }

  take(division: DivisionEntry, entries: readonly StopEntry[]): void {
    this.#bases.set(division, this.#names.baseOf(entries, division.kind === "pedal"));
    for (const entry of entries) {
      const { name, half, pitch } = entry;
      this.#drafts.push({ entry, division, name, half, pitch, ranks: entry.ranks ?? 1, busy: false });
    }
  }

  /** The stops of every division, in order; after an error some may lack. */
  make(): ReadonlyMap<DivisionEntry, readonly Stop[]> {
    const stops = new Map([...this.#bases.keys()].map((division) => [division, [] as Stop[]]));
    for (const draft of this.#drafts) if (!this.#reporter.full()) this.#voice(draft);
    for (const division of this.#bases.keys()) this.#label(division);
    for (const draft of this.#drafts) {
      if (this.#reporter.full()) break;
      const stop = this.#finish(draft);
      if (stop) stops.get(draft.division)?.push(stop);
    }
    for (const { id, offset } of this.#shared.values()) {
      if (!this.#drawn.has(id)) this.#reporter.report({ code: "rank-idle", id }, offset);
    }
    return stops;
  }

  #draftsOf(division: DivisionEntry): readonly Draft[] {
    return this.#drafts.filter((draft) => draft.division === division);
  }

  #label(division: DivisionEntry): void {
    const drafts = this.#draftsOf(division);
    const labels = labelsFor(drafts.map((draft) => ({ ...draft, pitch: draft.voice?.pitch ?? draft.pitch })));
    drafts.forEach((draft, index) => {
      draft.id = `${division.name}/${labels[index]}`;
    });
  }

  /** The stops that `Swell/Oboe 8` or, within a division, `Oboe 8` points to; `null` after an error. */
  #pointedAt(text: string, key: "same-as" | "bass-from", draft: Draft): readonly Draft[] | null {
    const offset = startOf(draft.entry.node, key);
    const stroke = text.indexOf("/");
    const divisions = [...this.#bases.keys()];
    const named =
      stroke > 0 ? divisions.find((each) => folded(each.name) === folded(text.slice(0, stroke))) : undefined;
    if (stroke > 0 && !named && !/\d\/\d/.test(text)) {
      const name = text.slice(0, stroke).trim();
      const nearest = nearestOf(
        name,
        divisions.map((each) => each.name),
      );
      this.#reporter.report({ code: "unknown-name", what: "division", name, where: null, nearest }, offset);
      return null;
    }
    const division = named ?? draft.division;
    const name = named ? text.slice(stroke + 1).trim() : text.trim();
    const index = this.#indices.get(division) ?? stopIndex(this.#draftsOf(division));
    this.#indices.set(division, index);
    const found = findStops(name, index);
    if (found.stops) return found.stops;
    if (found.why === "ambiguous")
      this.#reporter.report({ code: "ambiguous-stop", name, choices: found.choices }, offset);
    else {
      const where = `the ${division.name}`;
      this.#reporter.report({ code: "unknown-name", what: "stop", name, where, nearest: found.nearest }, offset);
    }
    return null;
  }

  #inCircle(draft: Draft): boolean {
    const circle = draft.busy || this.#deep > BORROWING_LIMIT;
    if (circle) this.#reporter.report({ code: "borrows-itself", stop: draft.entry.said }, draft.entry.node.start);
    return circle;
  }

  #while<T>(draft: Draft, find: () => T): T {
    draft.busy = true;
    this.#deep += 1;
    const found = find();
    this.#deep -= 1;
    draft.busy = false;
    return found;
  }

  #voice(draft: Draft): Voice | null {
    if (draft.voice !== undefined) return draft.voice;
    if (this.#inCircle(draft)) return null;
    draft.voice = this.#while(draft, () => this.#foundVoice(draft));
    return draft.voice;
  }

  #foundVoice(draft: Draft): Voice | null {
    const { entry, division } = draft;
    let lender: Lender | null = null;
    let lentPitch: Foot | null = null;
    if (entry.rank !== null) {
      const rank = this.#shared.get(entry.rank);
      if (!rank) {
        const nearest = nearestOf(entry.rank, [...this.#shared.keys()]);
        const facts = { what: "rank", name: entry.rank, where: "ranks:", nearest } as const;
        this.#reporter.report({ code: "unknown-name", ...facts }, startOf(entry.node, "rank"));
        return null;
      }
      this.#drawn.add(entry.rank);
      lender = rank;
    }
    if (entry.sameAs !== null) {
      const other = this.#pointedAt(entry.sameAs, "same-as", draft)?.[0];
      const voice = other && this.#voice(other);
      if (!voice) return null;
      if (entry.pitch && entry.pitch !== voice.pitch) {
        const facts = { stop: entry.said, pitch: pitchName(entry.pitch), of: entry.sameAs };
        this.#reporter.report({ code: "borrowed-pitch", ...facts }, startOf(entry.node, "pitch"));
        return null;
      }
      [lender, lentPitch] = [voice, voice.pitch];
    }
    const place = { pedal: division.kind === "pedal", base: this.#bases.get(division) ?? null, lender, lentPitch };
    return voiceOf(entry, place, this.#names, this.#reporter);
  }

  /** The keys the file gives the stop, cut at the ends of the keyboard. */
  #range(draft: Draft, voice: Voice): { from: Key; to: Key } | null {
    const { entry, division } = draft;
    const { low, high } = division.compass;
    let [from, to] = [low, high];
    if (entry.half === "bass") to = Math.min(to, division.dividedAt - 1);
    if (entry.half === "treble") from = Math.max(from, division.dividedAt);
    for (const side of ["from", "to"] as const) {
      const key = entry[side];
      if (key === null) continue;
      if (key < low || key > high) {
        const facts = {
          stop: entry.said,
          key: keyText(key),
          division: division.name,
          compass: compassText(division.compass),
        };
        this.#reporter.report({ code: "range-outside", ...facts }, startOf(entry.node, side));
      }
      if (side === "from") from = Math.max(from, key);
      else to = Math.min(to, key);
    }
    if (entry.from !== null && entry.to !== null && entry.from > entry.to) {
      const facts = { stop: entry.said, from: keyText(entry.from), to: keyText(entry.to) };
      this.#reporter.report({ code: "range-upside-down", ...facts }, startOf(entry.node, "from"));
      return null;
    }
    if (this.#inTrebleByCustom(draft, voice)) {
      from = Math.max(from, division.dividedAt);
      const facts = { stop: entry.said, from: keyText(from), low: keyText(low) };
      this.#reporter.report({ code: "treble-by-custom", ...facts }, startOf(entry.node, "name"));
    }
    if (from <= to) return { from, to };
    this.#reporter.report({ code: "no-keys", stop: entry.said }, entry.node.start);
    return null;
  }

  /** A mounted cornet begins in the middle of a long keyboard; on a short one (a Récit) it goes through. */
  #inTrebleByCustom({ entry, division }: Draft, voice: Voice): boolean {
    const silent = entry.from === null && entry.half === null && !entry.composition && !entry.rank && !entry.sameAs;
    return (
      silent &&
      voice.entry?.treble === true &&
      division.kind !== "pedal" &&
      division.compass.low < 48 &&
      division.compass.high >= division.dividedAt
    );
  }

  #uses(draft: Draft): readonly RankUse[] | null {
    if (draft.uses !== undefined) return draft.uses;
    if (this.#inCircle(draft)) return null;
    const voice = this.#voice(draft);
    const range = voice && this.#range(draft, voice);
    draft.uses =
      range &&
      this.#while(draft, () => {
        const own = this.#ownUses(draft, voice, range.from, range.to);
        return own && this.#withBass(draft, own, range.from);
      });
    return draft.uses;
  }

  #ownUses(draft: Draft, voice: Voice, from: Key, to: Key): readonly RankUse[] | null {
    const { entry } = draft;
    const id = draft.id as string;
    if (entry.rank !== null) return voice.pitch && this.#sharedUses(draft, entry.rank, voice.pitch, from, to);
    if (entry.sameAs !== null) return this.#borrowed(draft, "same-as", entry.sameAs, from, to);
    const rows = this.#rows(draft, voice, from, to);
    if (rows) return compoundUses(this.#ranks, id, rows, from, to);
    return voice.pitch ? plainUses(this.#ranks, id, voice.pitch, entry.ranks ?? 1, from, to) : [];
  }

  #rows(draft: Draft, voice: Voice, from: Key, to: Key): readonly Row[] | null {
    const { entry, division } = draft;
    if (entry.composition) {
      const first = entry.composition[0] as Row;
      if (first.from > from) {
        const facts = { stop: entry.said, key: keyText(first.from), from: keyText(from) };
        this.#reporter.report({ code: "composition-late", ...facts }, startOf(entry.node, "composition"));
      }
      return entry.composition;
    }
    const kind = compoundKind(voice.kinds);
    if (!kind) return null;
    const pedal = division.kind === "pedal";
    const typical = voice.entry?.composition ?? null;
    const pitches = usualPitches({ kind, ranks: entry.ranks, lowest: voice.pitch, pedal, typical });
    if (entry.ranks === null) {
      const facts = {
        stop: entry.said,
        ranks: pitches.length,
        composition: pitches.map((pitch) => pitchName(pitch)).join(", "),
      };
      this.#reporter.report({ code: "ranks-by-custom", ...facts }, startOf(entry.node, "name"));
    }
    return usualBreaks(kind, pitches, from, to);
  }

  /** Tells the keys of a range that have no pipes, if any. */
  #reportSilent(
    draft: Draft,
    code: "rank-short" | "borrowed-short",
    of: string,
    from: Key,
    to: Key,
    offset: number,
  ): void {
    if (from > to) return;
    this.#reporter.report({ code, stop: draft.entry.said, from: keyText(from), to: keyText(to), of }, offset);
  }

  #sharedUses(draft: Draft, id: string, pitch: Foot, from: Key, to: Key): readonly RankUse[] | null {
    const rank = this.#ranks.get(id);
    if (!rank) return null;
    const keys = keysOfRank(rank, pitch);
    const offset = startOf(draft.entry.node, "rank");
    this.#reportSilent(draft, "rank-short", id, from, Math.min(to, keys.low - 1), offset);
    this.#reportSilent(draft, "rank-short", id, Math.max(from, keys.high + 1), to, offset);
    const use = { rank: id, pitch, from: Math.max(from, keys.low), to: Math.min(to, keys.high) };
    if (use.from <= use.to) return [use];
    this.#reporter.report({ code: "no-keys", stop: draft.entry.said }, offset);
    return null;
  }

  #borrowed(draft: Draft, key: "same-as" | "bass-from", text: string, from: Key, to: Key): readonly RankUse[] | null {
    const others = this.#pointedAt(text, key, draft);
    const lent = others?.map((other) => this.#uses(other));
    if (!lent || lent.includes(null)) return null;
    const uses = usesBetween(
      lent.flatMap((each) => each ?? []),
      from,
      to,
    );
    const keys = keysOfUses(uses);
    const offset = startOf(draft.entry.node, key);
    if (!keys && lent.every((each) => each?.length === 0)) return [];
    if (!keys) {
      this.#reporter.report({ code: "no-keys", stop: draft.entry.said }, offset);
      return null;
    }
    this.#reportSilent(draft, "borrowed-short", text, from, keys.from - 1, offset);
    this.#reportSilent(draft, "borrowed-short", text, keys.to + 1, to, offset);
    return uses;
  }

  #withBass(draft: Draft, own: readonly RankUse[], from: Key): readonly RankUse[] | null {
    const { entry, division } = draft;
    if (entry.bassFrom === null) return own;
    if (entry.from === null) {
      this.#reporter.report({ code: "bass-needs-from", stop: entry.said }, startOf(entry.node, "bass-from"));
      return null;
    }
    if (from <= division.compass.low) return own;
    const bass = this.#borrowed(draft, "bass-from", entry.bassFrom, division.compass.low, from - 1);
    return bass && [...bass, ...own];
  }

  #finish(draft: Draft): Stop | null {
    const uses = this.#uses(draft);
    const voice = this.#voice(draft);
    if (!uses || !voice) return null;
    const { entry, division } = draft;
    const keys = keysOfUses(uses) ?? { from: division.compass.low, to: division.compass.high };
    const compound = entry.composition !== null || compoundKind(voice.kinds) !== null;
    const ranks =
      entry.rank === null && entry.sameAs === null && !compound && uses.length > 0
        ? Math.max(1, entry.ranks ?? 1)
        : ranksSounding(uses);
    if (entry.composition && entry.ranks !== null && entry.ranks !== ranks) {
      const facts = { stop: entry.said, stated: entry.ranks, found: ranks };
      this.#reporter.report({ code: "ranks-differ", ...facts }, startOf(entry.node, "ranks"));
    }
    const third = compound && uses.some((use) => isThird(use.pitch));
    const tierce = entry.tierce ?? (entry.composition ? third : compound && (third || voice.tierce));
    return {
      id: draft.id as string,
      division: division.name,
      name: entry.name,
      pitch: voice.pitch,
      half: entry.half,
      kinds: voice.kinds,
      family: voice.family,
      strength: voice.strength,
      brightness: entry.brightness ?? 3,
      byEar: { strength: entry.strength !== null, brightness: entry.brightness !== null },
      ranks,
      uses,
      ...keys,
      tierce,
      off: entry.off,
      note: entry.note,
    };
  }
}
