import { stepsBetween } from "../../shared-model/console/sounding.ts";
import type { Instrument, Stop } from "../../shared-model/stoplist/instrument.ts";

export const stopsOf = (instrument: Instrument): readonly Stop[] =>
  instrument.divisions.flatMap((division) => division.stops);

/** Names that point nowhere, and things that must be unique and are not. */
function faultsOfNames(instrument: Instrument): string[] {
  const found: string[] = [];
  const unique = (what: string, names: readonly string[]): void => {
    if (new Set(names).size !== names.length) found.push(`${what} occurs twice`);
  };
  const divisions = instrument.divisions.map((division) => division.name);
  unique(
    "a rank",
    instrument.ranks.map((rank) => rank.id),
  );
  unique("a division", divisions);
  unique(
    "a stop",
    stopsOf(instrument).map((stop) => stop.id),
  );
  unique(
    "a coupler",
    instrument.couplers.map((coupler) => coupler.name),
  );
  const { tremulants, unisonOff, aids } = instrument;
  const named = [
    ...tremulants.filter((name) => name !== "all"),
    ...unisonOff,
    ...aids.ventils,
    ...Object.keys(aids.divisionals),
    ...instrument.couplers.flatMap((coupler) => [coupler.from, coupler.to]),
  ];
  for (const name of named) if (!divisions.includes(name)) found.push(`no division ${name}`);
  return found;
}

function faultsOfStop(instrument: Instrument, stop: Stop): string[] {
  const found: string[] = [];
  if (stop.from > stop.to) found.push(`${stop.id}: ${stop.from} to ${stop.to}`);
  if (!Number.isInteger(stop.strength) || stop.strength < 1 || stop.strength > 5) found.push(`${stop.id}: strength`);
  if (stop.kinds.length === 0) found.push(`${stop.id}: no kind`);
  if ((stop.ranks === 0) !== (stop.uses.length === 0)) found.push(`${stop.id}: ranks`);
  for (const use of stop.uses) {
    if (use.from < stop.from || use.to > stop.to || use.from > use.to) found.push(`${stop.id}: stretch`);
    const rank = instrument.ranks.find((each) => each.id === use.rank);
    if (!rank) {
      found.push(`${stop.id}: no rank ${use.rank}`);
      continue;
    }
    const steps = stepsBetween(rank.longest, use.pitch) - 36;
    if (use.from + steps < 0 || use.to + steps >= rank.pipes) found.push(`${stop.id}: leaves ${use.rank}`);
  }
  return found;
}

/** What is wrong with an instrument as a value; empty when every name points somewhere and every key finds its pipe. */
export function instrumentFaults(instrument: Instrument): string[] {
  const found = faultsOfNames(instrument);
  for (const rank of instrument.ranks)
    if (rank.pipes < 1 || rank.pipes > 122) found.push(`${rank.id}: ${rank.pipes} pipes`);
  for (const division of instrument.divisions) {
    if ((division.kind === "manual") !== (division.keyboard !== null)) found.push(`${division.name}: keyboard`);
    for (const stop of division.stops) {
      if (stop.division !== division.name) found.push(`${stop.id}: division`);
      if (stop.from < division.compass.low || stop.to > division.compass.high)
        found.push(`${stop.id}: outside the compass`);
      found.push(...faultsOfStop(instrument, stop));
    }
  }
  return found;
}
