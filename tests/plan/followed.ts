import type { BoxPosition } from "../../shared-model/console/state.ts";
import type { Move } from "../../shared-model/plan/changes.ts";
import type { PlannedPiece } from "../../shared-model/plan/planned.ts";
import type { Stand } from "../../shared-model/plan/stand.ts";

/** A console as it really stands, moved knob by knob. */
class RealConsole {
  readonly drawn: Set<string>;
  readonly couplers: Set<string>;
  readonly tremulants: Set<string>;
  readonly unisonOff: Set<string>;
  readonly boxes: Map<string, BoxPosition>;

  constructor({ state }: Stand) {
    this.drawn = new Set(state.drawn);
    this.couplers = new Set(state.couplers);
    this.tremulants = new Set(state.tremulants);
    this.unisonOff = new Set(state.unisonOff);
    this.boxes = new Map(state.boxes);
  }

  /** Moves one thing; a knob that stands so already is a fault of the plan. */
  move({ what, act, id, to }: Move): string | null {
    if (what === "box") {
      this.boxes.set(id, to ?? "open");
      return null;
    }
    const set = { stop: this.drawn, coupler: this.couplers, tremulant: this.tremulants, "unison-off": this.unisonOff }[
      what
    ];
    if (set.has(id) === (act === "draw")) return `${id} stands so already`;
    if (act === "draw") set.add(id);
    else set.delete(id);
    return null;
  }

  /** A general piston brings what was stored; boxes stay. */
  press(stored: Stand): void {
    for (const [own, wanted] of [
      [this.drawn, stored.state.drawn],
      [this.couplers, stored.state.couplers],
      [this.tremulants, stored.state.tremulants],
      [this.unisonOff, stored.state.unisonOff],
    ] as const) {
      own.clear();
      for (const each of wanted) own.add(each);
    }
  }

  /** What of all that sounds in a section does not stand as it should, and what stands drawn elsewhere and is not meant to. */
  faults(plan: PlannedPiece, stand: Stand, left: ReadonlySet<string>): readonly string[] {
    const sounds = (division: string): boolean => stand.soundedBy.has(division);
    const { divisions, couplers, tremulants } = plan.instrument;
    return [
      ...[...this.drawn].filter((id) => !stand.state.drawn.has(id) && !left.has(id)),
      ...divisions
        .filter((division) => sounds(division.name))
        .flatMap((division) => division.stops.map((stop) => stop.id))
        .filter((id) => this.drawn.has(id) !== stand.state.drawn.has(id)),
      ...couplers
        .filter(
          (each) =>
            !each.fixed && sounds(each.to) && this.couplers.has(each.name) !== stand.state.couplers.has(each.name),
        )
        .map((each) => each.name),
      ...tremulants.filter(
        (name) => (name === "all" || sounds(name)) && this.tremulants.has(name) !== stand.state.tremulants.has(name),
      ),
      ...divisions
        .filter(
          ({ name, box }) =>
            box !== null && sounds(name) && (this.boxes.get(box) ?? "open") !== (stand.state.boxes.get(box) ?? "open"),
        )
        .map((division) => `box of ${division.name}`),
    ];
  }
}

/** Plays a plan through, knob by knob and piston by piston: everything that does not stand as it was planned. */
export function faultsWhenFollowed(plan: PlannedPiece): readonly string[] {
  const [first] = plan.stations;
  if (!first) return [];
  const console = new RealConsole(first.stand);
  const left = new Set<string>();
  return plan.changes.flatMap((change, at): readonly string[] => {
    const { means } = change;
    const target = plan.stations[at + 1]?.stand as Stand;
    const faults: (string | null)[] = [];
    const pressed = new Set(means.by === "divisionals" ? means.pistons.map((each) => each.division) : []);
    if (means.by === "general") {
      const piston = plan.pistons.find(
        (each) => each.division === null && each.level === means.level && each.number === means.number,
      );
      left.clear();
      console.press(plan.stations[piston?.station ?? 0]?.stand as Stand);
    }
    for (const move of [...change.moves, ...change.later]) {
      if (means.by === "general" && !means.near && move.what !== "box") continue;
      // A divisional piston moves its own stops, whatever stands there.
      if (move.what === "stop" && pressed.has(move.division)) {
        if (move.act === "draw") console.drawn.add(move.id);
        else console.drawn.delete(move.id);
      } else faults.push(console.move(move));
    }
    for (const move of change.left) left.add(move.id);
    return [...faults.filter((each) => each !== null), ...console.faults(plan, target, left)].map(
      (fault) => `change ${at + 1}: ${fault}`,
    );
  });
}
