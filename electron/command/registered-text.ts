import { editPieceFile, type PieceEdit, type SectionChange } from "../../shared-model/files/piece-edit.ts";
import { registrationValue } from "../../shared-model/files/registration-value.ts";
import { troubleLine } from "../../shared-model/files/trouble-words.ts";
import type { YamlGroup } from "../../shared-model/files/yaml-words.ts";
import type { PlannedSection } from "../../shared-model/plan/planned.ts";
import { registrationsOf } from "../../shared-model/plan/written.ts";
import type { Instrument } from "../../shared-model/stoplist/instrument.ts";
import { Refusal } from "./terminal.ts";

/** A planned section's registration and its later steps as a file has them. */
export function registeredValues(
  organ: Instrument,
  section: PlannedSection,
): { readonly registration: YamlGroup; readonly steps: readonly YamlGroup[] } {
  const [registration = {}, ...steps] = registrationsOf(section).map((each) => registrationValue(organ, each));
  return { registration, steps };
}

/**
 * The text of a piece file with registrations for an organ put in; everything else keeps its bytes.
 *
 * @param organInFile the organ that the file names so far; `null` for none.
 * @throws Refusal where the file cannot be changed so.
 */
export function registeredText(
  text: string,
  path: string,
  organ: Instrument,
  organInFile: string | null,
  changes: readonly SectionChange[],
): string {
  const edits: PieceEdit[] = [{ edit: "set-registrations", changes }];
  if (organInFile !== organ.name) edits.unshift({ edit: "set-key", key: "organ", value: organ.name });
  const edited = editPieceFile(text, edits, path);
  if (edited.text === null) throw new Refusal(edited.troubles.map(troubleLine).join("\n"));
  return edited.text;
}
