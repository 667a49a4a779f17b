import type { z } from 'zod'
import type { Readers } from '../base/readers.ts'
import type { Correction } from './correction.ts'

/** One setting of a correction, as somebody who fills it in must know it. */
export interface SettingKind {
  /** As it stands in the performer file. */
  readonly name: string
  /** What may stand there, in words. */
  readonly expected: string
  /** The correction cannot be made without it. */
  readonly required: boolean
  /** What holds without it, where that is told. */
  readonly usual?: string
  /** Takes places on the pattern. */
  readonly place: boolean
  /** Takes several. */
  readonly list: boolean
  /** The names it takes, where it takes names. */
  readonly names?: readonly string[]
}

/** Every setting of a correction in the order in which it is written, told from the schema that reads it. */
export function settingKinds(correction: Correction, read: Readers): SettingKind[] {
  const { shape } = correction.settings(read)
  return Object.entries(shape).map(([name, type]) => {
    const schema = type as z.ZodType
    const list = schema.safeParse(['shoulder notch', 'front notch']).success || namesOf(innerOf(schema)).list
    const names = namesOf(innerOf(schema)).names
    const usual = correction.defaults.find(({ setting }) => setting.split(', ').includes(name))?.value
    return {
      name,
      expected: expectedOf(schema),
      required: !schema.safeParse(undefined).success,
      ...(usual === undefined ? {} : { usual }),
      place: schema.safeParse({ between: ['shoulder notch', 'front notch'] }).success,
      list,
      ...(names === undefined ? {} : { names }),
    }
  })
}

interface Definition {
  readonly type: string
  readonly innerType?: z.ZodType
  readonly in?: z.ZodType
  readonly options?: readonly z.ZodType[]
}

/** Without what makes it optional or gives it a default. */
function innerOf(schema: z.ZodType): z.ZodType {
  const { innerType } = schema._zod.def as unknown as Definition
  return innerType ? innerOf(innerType) : schema
}

/** The names of a reader of names, or of a list of them. */
function namesOf(schema: z.ZodType): { readonly names?: readonly string[]; readonly list: boolean } {
  const own = enumOf(schema)
  if (own) return { names: own, list: false }
  const def = schema._zod.def as unknown as Definition
  const item = (def.in?._zod.def as unknown as Definition | undefined)?.options?.map(enumOf).find((names) => names)
  return item ? { names: item, list: true } : { list: false }
}

function enumOf(schema: z.ZodType): readonly string[] | undefined {
  const ways = schema.meta()?.anyOf as readonly { readonly enum?: readonly string[] }[] | undefined
  return ways?.find((way) => way.enum)?.enum
}

/** In the reader's own words; of a place or a list those of what it refuses. */
function expectedOf(schema: z.ZodType): string {
  const inner = innerOf(schema)
  if (inner.description !== undefined) return inner.description
  const refused = schema.safeParse({ '': '' })
  return refused.success ? 'a value' : (refused.error.issues[0]?.message ?? 'a value')
}
