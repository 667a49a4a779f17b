import * as z from 'zod'

/** A schema as JSON Schema 2020-12 writes it. */
export type JsonSchema = Readonly<Record<string, unknown>>

/** What a zod schema takes in, as JSON Schema. Values that stand in for absent ones are left out: they are mm and radians. */
export function jsonSchemaOf(schema: z.ZodType): JsonSchema {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, {
    io: 'input',
    override: ({ jsonSchema }) => {
      delete jsonSchema.default
      const [only, ...others] = jsonSchema.anyOf ?? []
      if (!only || others.length > 0) return
      delete jsonSchema.anyOf
      Object.assign(jsonSchema, only, { description: jsonSchema.description })
    },
  })
  return rest
}

/** A schema of which one of several parts is another; throws where there is nothing to change. */
export function changedAt(
  schema: JsonSchema,
  path: readonly string[],
  change: (part: JsonSchema) => JsonSchema,
): JsonSchema {
  const [key, ...rest] = path
  if (key === undefined) return change(schema)
  const part = schema[key]
  if (typeof part !== 'object' || part === null) throw new RangeError(`the schema has no ${path.join('.')}`)
  return { ...schema, [key]: changedAt(part as JsonSchema, rest, change) }
}

/** The schema with every part that is equal to `part` in the place of which `instead` stands. */
export function replaced(schema: JsonSchema, part: JsonSchema, instead: JsonSchema): JsonSchema {
  const text = JSON.stringify(part)
  const walk = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value
    if (Array.isArray(value)) return value.map(walk)
    if (JSON.stringify(value) === text) return instead
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, walk(one)]))
  }
  return walk(schema) as JsonSchema
}

/** A section in which whatever is left blank counts as not written, down to its parts; what it must have it must have. */
export function blanksAllowed(section: JsonSchema, blank: JsonSchema): JsonSchema {
  const { properties, required, additionalProperties, anyOf } = section
  const needed = (required as readonly string[] | undefined) ?? []
  const parts = Object.entries((properties as Record<string, JsonSchema> | undefined) ?? {}).map(([name, one]) => {
    const inner = blanksAllowed(one, blank)
    if (needed.includes(name)) return [name, inner]
    const { description, ...rest } = inner
    return [name, { ...(description === undefined ? {} : { description }), anyOf: [rest, blank] }]
  })
  return {
    ...section,
    ...(properties ? { properties: Object.fromEntries(parts) } : {}),
    ...(additionalProperties === false ? { additionalProperties: blank } : {}),
    ...(Array.isArray(anyOf) ? { anyOf: anyOf.map((one) => blanksAllowed(one, blank)) } : {}),
  }
}
