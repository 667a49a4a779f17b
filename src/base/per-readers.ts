import type { Readers } from './readers.ts'

/** The same schema for the same readers: making one takes longer than reading a value with it. */
/* @__NO_SIDE_EFFECTS__ */
export function perReaders<T extends object>(make: (read: Readers) => T): (read: Readers) => T {
  const made = new WeakMap<Readers, T>()
  return (read) => {
    const schema = made.get(read) ?? make(read)
    made.set(read, schema)
    return schema
  }
}
