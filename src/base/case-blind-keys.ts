import type { JsonSchema } from './json-schema.ts'
import { aroundGaps, namePattern } from './name-pattern.ts'

/**
 * The schema of a file whose keys may be spelled in capitals, with hyphens or with underscores: `properties` keep the one
 * normal spelling, which editors complete, and `patternProperties` send every other one to the same place. What is required
 * may stand in any spelling. `pointer` is where the schema stands in its document, as in `#/properties/body`.
 */
export function caseBlindKeys(schema: JsonSchema, pointer = '#'): JsonSchema {
  const entries = Object.entries(schema).map(([keyword, value]): [string, unknown] => [
    keyword,
    inside(keyword, value, `${pointer}/${keyword}`),
  ])
  const own = Object.fromEntries(entries)
  const { properties, required, propertyNames, ...rest } = own as Record<string, Record<string, JsonSchema>>
  const names = Object.keys(properties ?? {})
  const others = names.map((name) => [
    otherSpelling(name),
    { $ref: `${pointer}/properties/${encodeURIComponent(name.replace(/~/g, '~0').replace(/\//g, '~1'))}` },
  ])
  return {
    ...rest,
    ...(properties ? { properties, patternProperties: Object.fromEntries(others) } : {}),
    ...(propertyNames ? { propertyNames: gapsAllowed(propertyNames as JsonSchema) } : {}),
    ...(Array.isArray(required) && required.length > 0
      ? { allOf: [...((rest.allOf as readonly unknown[] | undefined) ?? []), ...required.map(present)] }
      : {}),
  }
}

function inside(keyword: string, value: unknown, pointer: string): unknown {
  if (keyword === 'enum' || keyword === 'const' || keyword === 'default') return value
  if (Array.isArray(value)) return value.map((one, k) => (isSchema(one) ? caseBlindKeys(one, `${pointer}/${k}`) : one))
  if (!isSchema(value)) return value
  if (keyword !== 'properties' && keyword !== '$defs') return caseBlindKeys(value, pointer)
  const each = Object.entries(value).map(([name, one]) => [
    name,
    isSchema(one) ? caseBlindKeys(one, `${pointer}/${encodeURIComponent(name)}`) : one,
  ])
  return Object.fromEntries(each)
}

function isSchema(value: unknown): value is JsonSchema {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** The name as it is spelled for the files' own reader is left to `properties`. */
function otherSpelling(name: string): string {
  return namePattern([name]).replace('^', `^(?!${name.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&')}$)`)
}

/** Not every name is another one: one of them is this, in whatever spelling. The plain wording is for editors' messages. */
function present(name: string): JsonSchema {
  return { anyOf: [{ required: [name] }, { not: { propertyNames: { not: { pattern: namePattern([name]) } } } }] }
}

function gapsAllowed(names: JsonSchema): JsonSchema {
  const { pattern, ...rest } = names
  return typeof pattern === 'string' ? { ...rest, pattern: aroundGaps(pattern.replace(/^\^|\$$/g, '')) } : names
}
