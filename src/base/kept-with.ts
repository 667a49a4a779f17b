/**
 * The same answer for the same thing: made when it is first asked for, and kept with the thing for as long as that lives.
 * Only for things that never change.
 */
/* @__NO_SIDE_EFFECTS__ */
export function keptWith<Key extends object, Value extends number | object>(
  make: (key: Key) => Value,
): (key: Key) => Value {
  const kept = new WeakMap<Key, Value>()
  return (key) => {
    const known = kept.get(key)
    if (known !== undefined) return known
    const made = make(key)
    kept.set(key, made)
    return made
  }
}
