import { footOf } from "../pitch/foot.ts";
import { idsOf, named, soundingBelow } from "./naming.ts";
import type { AdviceRule } from "./rule.ts";

/** Stops at 16 and deeper that an old bellows feeds at once, and any bellows. Common practice. */
const OLD = 3;
const ANY = 4;
const OLD_BEFORE = 1850;

export const windForManyBasses: AdviceRule = {
  id: "wind-for-many-basses",
  conventions: [29],
  reads: "advice",
  statement: "Many low stops at once ask much of the wind, of an old organ above all.",
  why: "Big pipes take most of the wind: the treble sinks when they speak.",
  source: "werckmeister-1698",
  severity: "note",
  advise: (_sound, context, heard) => {
    const deep = soundingBelow(heard.stops, footOf(8), context);
    const old = context.instrument.year !== null && context.instrument.year < OLD_BEFORE;
    if (deep.length < (old ? OLD : ANY)) return null;
    return {
      text: `${named(deep)} together take much wind.`,
      remedy: "Hold a full chord and listen whether the pitch sinks; if it does, take one of them off.",
      stops: idsOf(deep),
    };
  },
  examples: {
    speaks: [
      {
        organ: "Pedal: Untersatz 32, Principal 16, Subbass 16, Posaune 16, Oktave 8",
        plays: "bass on Pedal",
        says: "Untersatz 32, Principal 16, Subbass 16 and Posaune 16 together take much wind.",
      },
      {
        organ: "Pedal: Principal 16, Subbass 16, Violon 16, Posaune 16",
        plays: "bass on Pedal",
        says: "Principal 16, Subbass 16, Violon 16 and Posaune 16 together take much wind.",
      },
    ],
    silent: [
      { organ: "Pedal: Principal 16, Subbass 16, Oktave 8", plays: "bass on Pedal" },
      { organ: "Pedal: Principal 16, Subbass 16, Posaune 16, Oktave 8, Choralbass 4", plays: "bass on Pedal" },
    ],
  },
};
