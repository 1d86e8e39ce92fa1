/** A list with one more name, or without it. */
export const toggled = (names: readonly string[], name: string): readonly string[] =>
  names.includes(name) ? names.filter((each) => each !== name) : [...names, name];
