import { VISIT_TOPICS, type VisitAnswers, type VisitTopic } from "../stoplist/visit-topic.ts";
import { visitSchema } from "./instrument-schema.ts";
import type { Reporter } from "./reporter.ts";
import { readShape, type UnknownKeys } from "./shape.ts";
import type { Patches, YamlPatcher } from "./text-patch.ts";
import type { Located } from "./yaml-text.ts";

const TOPICS = Object.keys(VISIT_TOPICS) as VisitTopic[];

/** The answers of `visit:`; `null` where there is none. A key with nothing behind it waits for its answer. */
export function readVisit(node: Located | undefined, reporter: Reporter, unknown: UnknownKeys): VisitAnswers | null {
  if (!node || node.value === null) return null;
  unknown.look(node, TOPICS, "A visit");
  const read = readShape(visitSchema, node, "The visit", reporter);
  if (!read) return null;
  const said = TOPICS.flatMap((topic) => {
    const words = String(read[topic] ?? "").trim();
    return words === "" ? [] : [[topic, words] as const];
  });
  return said.length > 0 ? (Object.fromEntries(said) as VisitAnswers) : null;
}

/** Patches that make one answer another; a new one comes behind those that are asked before it. */
export function visitPatches(root: Located, topic: VisitTopic, answer: string | null, patcher: YamlPatcher): Patches {
  const words = answer?.trim() ?? "";
  const there = root.entries?.get("visit")?.node;
  const pairs = there?.pairs ?? [];
  if (words === "") {
    if (!there?.entries?.has(topic)) return [];
    return pairs.length === 1 ? patcher.removeKey(root, "visit") : patcher.removeKey(there, topic);
  }
  if (!there || pairs.length === 0) return patcher.beginGroup(root, "visit", topic, words);
  return patcher.setKey(there, topic, words, TOPICS.slice(0, TOPICS.indexOf(topic)));
}
