import { parseLength } from './base/lengths.ts'
import { READ_ONCE } from './base/read-once.ts'
import { makeReaders } from './base/readers.ts'
import { readingProblems } from './base/reading-problems.ts'
import { failure, type Result, success } from './base/result.ts'
import type { LengthUnit } from './base/units.ts'
import { isSection, readYaml, type Tree, type TreeSection } from './base/yaml-document.ts'
import { withoutBlanks } from './body/read-measures.ts'
import { correctionReaders } from './fitting/corrections.ts'
import { notAPerformer, performerSchema, readUnit } from './performer-file.ts'

/** What of one performer's file holds for another body, as it was written there. */
export interface TakenChoices {
  /** What plain numbers mean in the file they come from. */
  readonly units: LengthUnit
  /** The production's name, as it was written. */
  readonly production?: string
  /** Keys in their normal spelling; a length without a unit has its file's where the new file is in another. */
  readonly draft: Readonly<Record<string, Tree>>
  /** Seam allowances of every mock-up. */
  readonly allowance?: Tree
  /** Those of single mock-ups, by number. */
  readonly mockUps: Readonly<Record<string, Tree>>
  /** Sections that are that body's own, and stay there. */
  readonly left: readonly string[]
}

/**
 * Production, draft choices and allowances of a performer file, for a new file in `units` (that file's own when
 * absent). What was measured on the body or pinned on it is not looked at. Fails with the problems of what is taken.
 */
export function readTakenChoices(text: string, file: string, units?: LengthUnit): Result<TakenChoices> {
  const yaml = readYaml(text, file)
  if (!yaml.ok) return yaml
  const { tree } = yaml.value
  if (!isSection(tree)) return failure(notAPerformer(yaml.value))
  const unit = readUnit(typeof tree.units === 'string' ? tree.units : '')
  const own = unit.ok ? unit.value : 'mm'
  const schema = performerSchema(makeReaders(own), correctionReaders).pick({
    production: true,
    units: true,
    draft: true,
    'mock up': true,
    'mock ups': true,
  })
  const written: TreeSection = Object.fromEntries(
    Object.keys(schema.shape).flatMap((key) => {
      const value = withoutBlanks(tree[key] ?? null)
      return value === null ? [] : [[key, value]]
    }),
  )
  const parsed = schema.safeParse(written, READ_ONCE)
  if (!parsed.success) return failure(...readingProblems(parsed.error.issues, schema, yaml.value, []))
  const said = (value: Tree | undefined) =>
    value !== undefined && units !== undefined && units !== own ? withUnit(value, own) : value
  const section = (key: string) => {
    const value = said(written[key])
    return value !== undefined && isSection(value) ? value : {}
  }
  const { allowance } = section('mock up')
  return success({
    units: own,
    ...(parsed.data.production === undefined ? {} : { production: parsed.data.production }),
    draft: section('draft'),
    ...(allowance === undefined ? {} : { allowance }),
    mockUps: section('mock ups'),
    left: ['measured', 'body', 'fittings'].filter((key) => withoutBlanks(tree[key] ?? null) !== null),
  })
}

/** The tree with the unit said behind every length that has none; names and shares stay as they are. */
function withUnit(tree: Tree, unit: LengthUnit): Tree {
  if (tree === null) return null
  if (typeof tree === 'string') return needsUnit(tree) ? `${tree} ${unit}` : tree
  if (!isSection(tree)) return tree.map((item) => withUnit(item, unit))
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key, withUnit(value, unit)]))
}

/** Whether it is a length that is another one in a file of another unit. */
function needsUnit(text: string): boolean {
  const [inches, millimeters] = [parseLength(text, 'in'), parseLength(text, 'mm')]
  return inches.ok && millimeters.ok && inches.value !== millimeters.value
}
