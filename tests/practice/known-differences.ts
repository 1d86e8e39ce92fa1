/** Scenarios that the proposals do not meet yet, each with what stands in the way. */
export const KNOWN_DIFFERENCES: readonly { readonly id: string; readonly why: string }[] = [
  {
    id: "town-full-swell",
    why:
      "Through the sub-octave coupler of the Swell, Fifteenth 2 counts as the 4 that the recipe asks for, Cornopean 8 " +
      "as the reed of 16 and Clarion 4 as the one of 8, so Principal 4 seems to be one stop too many. A player draws " +
      "the 4 at its own pitch; the coupler thickens a full chorus and replaces no step of it.",
  },
];
