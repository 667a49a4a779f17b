/**
 * For reading with a schema that was made for one file: without this, zod writes and compiles a parser for each of its
 * sections first, which takes several times as long as reading one value with it.
 */
export const READ_ONCE = { jitless: true } as const
