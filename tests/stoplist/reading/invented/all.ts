import { DUTCH_AND_NORDIC } from "./dutch-and-nordic.ts";
import { EIGHTH_LOOK } from "./eighth-look.ts";
import { ENGLISH } from "./english.ts";
import { FIFTH_LOOK } from "./fifth-look.ts";
import { FOURTH_LOOK } from "./fourth-look.ts";
import { FRENCH } from "./french.ts";
import { GERMAN } from "./german.ts";
import { ITALIAN_AND_SPANISH } from "./italian-and-spanish.ts";
import { LAYOUTS } from "./layouts.ts";
import type { InventedLists } from "./list.ts";
import { SECOND_LOOK } from "./second-look.ts";
import { SEVENTH_LOOK } from "./seventh-look.ts";
import { SIXTH_LOOK } from "./sixth-look.ts";
import { THIRD_LOOK } from "./third-look.ts";
import { VARIOUS } from "./various.ts";

/** Every invented list, by group. */
export const INVENTED: readonly (readonly [group: string, lists: InventedLists])[] = [
  ["various", VARIOUS],
  ["English", ENGLISH],
  ["German", GERMAN],
  ["Dutch, Danish, Swedish", DUTCH_AND_NORDIC],
  ["French", FRENCH],
  ["Italian and Spanish", ITALIAN_AND_SPANISH],
  ["settings", LAYOUTS],
  ["second look", SECOND_LOOK],
  ["third look", THIRD_LOOK],
  ["fourth look", FOURTH_LOOK],
  ["fifth look", FIFTH_LOOK],
  ["sixth look", SIXTH_LOOK],
  ["seventh look", SEVENTH_LOOK],
  ["eighth look", EIGHTH_LOOK],
];
