import { prescriptionsFor } from "../music/prescriptions/catalogue.ts";
import { STAND_INS } from "../music/prescriptions/stand-ins.ts";
import { nearestTexture } from "../music/section.ts";
import type { Section } from "../music/texture.ts";
import { RULES } from "../rules/index.ts";
import type { Rule } from "../rules/rule.ts";
import type { Instrument } from "../stoplist/instrument.ts";
import { type Problem, problemOf } from "./problem.ts";

/**
 * A section on an instrument, ready to be proposed for or checked, with the recipes of its tradition and every rule.
 * Parts written by hand are served by the recipes of the neutral texture of their shape. Keep the result while the
 * section stays the same: what it has reckoned is used again.
 *
 * @param rules other rules than those of the trade: a survey judges by fewer and by stricter ones.
 */
export function prepare(instrument: Instrument, section: Section, rules: readonly Rule[] = RULES): Problem {
  const texture = section.texture ?? nearestTexture(section.parts).id;
  const recipes = prescriptionsFor(texture, section.tradition, section.dynamic);
  return problemOf(instrument, section, recipes, STAND_INS, rules);
}
