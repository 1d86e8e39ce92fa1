/** What a table keeps for a key; made when it is first asked for. */
export function madeIn<Key, Value>(
  table: { get(key: Key): Value | undefined; set(key: Key, value: Value): unknown },
  key: Key,
  make: () => Value,
): Value {
  let value = table.get(key);
  if (value === undefined) {
    value = make();
    table.set(key, value);
  }
  return value;
}
