import { caseBlindKeys } from './base/case-blind-keys.ts'
import { blanksAllowed, changedAt, type JsonSchema, jsonSchemaOf, replaced } from './base/json-schema.ts'
import { namePattern } from './base/name-pattern.ts'
import { makeReaders } from './base/readers.ts'
import type { Correction } from './fitting/correction.ts'
import { CORRECTIONS, readersOf } from './fitting/corrections.ts'
import { placeReader } from './fitting/position.ts'
import { performerSchema } from './performer-file.ts'

const CORRECTION = ['properties', 'fittings', 'items', 'properties', 'corrections', 'items']
const BLANK = { $ref: '#/$defs/blank' }
const PLACE = { $ref: '#/$defs/place' }

/**
 * The JSON Schema (2020-12) of performer files, for editors and other programs: names are completed in their one normal
 * spelling and known in any other, and every measure says how it is taken. It never refuses a file that `readPerformer`
 * reads, as YAML 1.2 reads it; what takes more than the form to see, such as a length in feet or measures that
 * contradict each other, is `readPerformer`'s and `completeBody`'s to say. `corrections` are those the files may have.
 */
export function performerJsonSchema(corrections: readonly Correction[] = CORRECTIONS): JsonSchema {
  const read = makeReaders('in')
  const place = jsonSchemaOf(placeReader(read))
  const written = jsonSchemaOf(performerSchema(read, readersOf(corrections)))
  const withCorrections = changedAt(written, CORRECTION, (common) => correctionItem(common, corrections))
  const withBlanks = ['body', 'draft'].reduce(
    (schema, section) => changedAt(schema, ['properties', section], (part) => blanksAllowed(part, BLANK)),
    withCorrections,
  )
  const schema = {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Performer file',
    description:
      'One performer and costume: measures, choices and fittings. Keys may be spelled with hyphens, underscores or capitals.',
    ...topBlanks(replaced(withBlanks, place, PLACE)),
    $defs: {
      place: { description: 'A place on a seam: the name of a mark, or a section.', ...place },
      blank: {
        anyOf: [{ type: 'null' }, { type: 'object', additionalProperties: BLANK }],
      },
    },
  }
  return caseBlindKeys(schema)
}

/** Whatever stands at the top with nothing after it counts as not written, unless the file needs it. */
function topBlanks(schema: JsonSchema): JsonSchema {
  const { properties, required } = schema as { properties: Record<string, JsonSchema>; required: readonly string[] }
  const parts = Object.entries(properties).map(([name, part]) => {
    const { description, ...rest } = part
    const about = description === undefined ? {} : { description }
    return [name, required.includes(name) ? part : { ...about, anyOf: [rest, { type: 'null' }] }]
  })
  return { ...schema, properties: Object.fromEntries(parts), additionalProperties: { type: 'null' } }
}

/** What all corrections have, and for each of them by its name what it has itself. */
function correctionItem(common: JsonSchema, corrections: readonly Correction[]): JsonSchema {
  const parts = common.properties as Record<string, JsonSchema>
  const shared = Object.fromEntries(Object.keys(parts).map((name) => [name, true]))
  const { additionalProperties: _, ...rest } = common
  const known = corrections.map(({ name, does }) => ({ const: name, description: does }))
  return {
    ...rest,
    properties: {
      ...parts,
      do: {
        description: 'the correction',
        anyOf: [...known, { type: 'string', pattern: namePattern(corrections.map(({ name }) => name)) }],
      },
    },
    allOf: corrections.map((correction) => ({
      if: { required: ['do'], properties: { do: { type: 'string', pattern: namePattern([correction.name]) } } },
      // biome-ignore lint/suspicious/noThenProperty: the keyword of JSON Schema
      then: settingsOf(correction, shared),
    })),
  }
}

function settingsOf(correction: Correction, shared: Readonly<Record<string, boolean>>): JsonSchema {
  const own = jsonSchemaOf(correction.settings(makeReaders('in')))
  const parts = Object.entries(own.properties as Record<string, JsonSchema>).map(([name, part]) => {
    const given = correction.defaults.find(({ setting }) => setting === name)
    if (!given) return [name, part]
    const absent = `when absent: ${given.value} (${given.source})`
    return [name, { ...part, description: part.description === undefined ? absent : `${part.description}; ${absent}` }]
  })
  return { ...own, properties: { ...shared, ...Object.fromEntries(parts) } }
}
