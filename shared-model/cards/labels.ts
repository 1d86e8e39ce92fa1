import type { JudgedPart } from "../judging/judge.ts";
import { stopLabel } from "../judging/listening.ts";
import type { Stop } from "../stoplist/instrument.ts";
import { type Labelled, LONGEST_LABEL, labelOf, octaveWords } from "./label.ts";

/** What distinguishes a registration from a twin of the same label, most telling first; empty when nothing can be said. */
function differences(labelled: Labelled, parts: readonly JudgedPart[], twin: readonly JudgedPart[]): readonly string[] {
  const stops = labelled.instrument.divisions.flatMap((division) => division.stops);
  const pedals = new Set(
    labelled.instrument.divisions.filter((each) => each.kind === "pedal").map((each) => each.name),
  );
  const only = (one: readonly JudgedPart[], other: readonly JudgedPart[]): readonly Stop[] => {
    const known = new Set(other.flatMap((part) => part.heard));
    const own = new Set(one.flatMap((part) => part.heard).filter((id) => !known.has(id)));
    return stops.filter((stop) => own.has(stop.id));
  };
  const where = (some: readonly Stop[]): string =>
    some.every((stop) => pedals.has(stop.division)) ? " in the pedal" : "";
  const heardIn = (some: readonly JudgedPart[]): readonly Stop[] => {
    const ids = new Set(some.flatMap((part) => part.heard));
    return stops.filter((stop) => ids.has(stop.id));
  };
  /** By its knob, and by its division too where another knob of that name is drawn. */
  const knob = (stop: Stop): string => {
    const namesake = [...heardIn(parts), ...heardIn(twin)].some(
      (other) => other.id !== stop.id && stopLabel(other) === stopLabel(stop) && other.division !== stop.division,
    );
    return namesake && !pedals.has(stop.division) ? `${stopLabel(stop)} of ${stop.division}` : stopLabel(stop);
  };
  const told = (some: readonly Stop[]): string => `${some.map(knob).join(" and ")}${where(some)}`;
  const [more, less] = [only(parts, twin), only(twin, parts)];
  const found: string[] = [];
  const moved = parts.flatMap((part): string[] => {
    const other = twin.find((each) => each.placing.part === part.placing.part);
    const there = other && other.placing.keyboard !== part.placing.keyboard;
    return there ? [`${part.placed.part.role} on ${part.placing.keyboard}`] : [];
  });
  // What lies on another keyboard draws other stops for that reason alone.
  if (moved.length > 0) found.push(moved.join(", "), ...moved.slice(0, moved.length > 1 ? 2 : 0));
  const [added, dropped] = [more.slice(0, 1), less.slice(0, 1)];
  if (more.length === 1 && less.length === 1) {
    const [one, other] = [added[0] as Stop, dropped[0] as Stop];
    const same = stopLabel(one) === stopLabel(other);
    found.push(
      same
        ? `${stopLabel(one)} of ${one.division}`
        : `${stopLabel(one)} for ${stopLabel(other)}${where([...more, ...less])}`,
    );
  }
  if (more.length > 0 && less.length === 0) found.push(`with ${told(more)}`);
  if (more.length === 0 && less.length > 0) found.push(`without ${told(less)}`, `without ${told(dropped)}`);
  if (more.length > 0) found.push(`with ${told(added)}`);
  for (const part of parts) {
    const other = twin.find((each) => each.placing.part === part.placing.part);
    if (!other) found.push(`with ${part.placing.part}`);
    else if (other.placing.octave !== part.placing.octave) {
      found.push(`${part.placed.part.role} ${octaveWords(part) || "at its place"}`);
    } else if (other.sound.tremulant !== part.sound.tremulant) {
      found.push(part.sound.tremulant === 1 ? "with tremulant" : "without tremulant");
    } else if (more.length + less.length === 0 && other.heard.length !== part.heard.length) {
      const where = part.placed.keyboard.kind === "pedal" ? "pedal" : part.placing.keyboard;
      found.push(`${where} ${part.heard.length > other.heard.length ? "coupled" : "uncoupled"}`);
    }
  }
  const couplers = (some: readonly JudgedPart[]): readonly string[] => [
    ...new Set(some.flatMap((part) => part.placed.couplers.map(({ name }) => name))),
  ];
  const [on, off] = [couplers(parts), couplers(twin)];
  found.push(...on.filter((name) => !off.includes(name)).map((name) => `with ${name}`));
  found.push(...off.filter((name) => !on.includes(name)).map((name) => `without ${name}`));
  if (twin.some((each) => !parts.some((part) => part.placing.part === each.placing.part))) found.push("fewer parts");
  return found;
}

/** A label and its shorter forms: without what comes behind a comma, the tremulant, what lies under the leading part. */
function shortened(label: string): readonly string[] {
  const head = label.split(", ")[0] as string;
  const still = head.replace(/ (?:with|and) tremulant/u, "");
  const lead = still.split(/ (?:over|against|in the) /u)[0] as string;
  return [label, head, still, lead, lead.split(/ with /u)[0] as string];
}

/**
 * The labels of several registrations of one section, in their order. A registration whose label an earlier one has
 * already says how it differs from that one (`Plein jeu, Positif coupled; with Bourdon 8`), where words can say it.
 */
export function labelsOf(labelled: Labelled, list: readonly (readonly JudgedPart[])[]): readonly string[] {
  const taken = new Map<string, readonly JudgedPart[]>();
  return list.map((parts) => {
    const label = labelOf(labelled, parts);
    const twin = taken.get(label);
    const told = twin
      ? differences(labelled, parts, twin)
          .flatMap((each) => shortened(label).map((short) => `${short}; ${each}`))
          .find((each) => each.length <= LONGEST_LABEL && !taken.has(each))
      : label;
    const settled = told ?? label;
    if (!taken.has(settled)) taken.set(settled, parts);
    return settled;
  });
}
