/** Scenarios that the proposals do not meet yet, each with what stands in the way. */
export const KNOWN_DIFFERENCES: readonly { readonly id: string; readonly why: string }[] = [];
