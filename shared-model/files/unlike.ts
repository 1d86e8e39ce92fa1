/**
 * The name itself where nobody has it, else with the first number behind it that makes it another.
 *
 * @param numbered puts the number, 2 or more, to the name; `Pedal (2)` when left out.
 */
export function unlike(
  name: string,
  isTaken: (name: string) => boolean,
  numbered: (name: string, count: number) => string = (plain, count) => `${plain} (${count})`,
): string {
  let unique = name;
  for (let count = 2; isTaken(unique); count += 1) unique = numbered(name, count);
  return unique;
}
