import {
  isOverlap,
  LEAST_OVERLAP,
  MOST_OVERLAP,
  parseLength,
  parseSquareMeasured,
  type Result,
  type TileOptions,
} from '../index.ts'
import { readText } from './common-options.ts'
import { problemsIn } from './make.ts'
import { optionProblem } from './options.ts'
import type { Typed } from './run.ts'

/** What was asked of the tiles with --overlap and --square-measured; what is absent keeps its default. */
export function readTileOptions(typed: Typed): Result<TileOptions> {
  const overlap = read(typed, 'overlap', readOverlap)
  const square = read(typed, 'square-measured', parseSquareMeasured)
  if (!overlap.ok || !square.ok) return { ok: false, problems: problemsIn([overlap, square]) }
  return {
    ok: true,
    value: {
      ...(overlap.value === undefined ? {} : { overlap: overlap.value }),
      ...(square.value === undefined ? {} : { squareMeasured: square.value }),
    },
  }
}

function read<T>(typed: Typed, name: string, parse: (text: string) => Result<T>): Result<T | undefined> {
  const text = readText(typed, name)
  return text.ok && text.value !== undefined ? parse(text.value) : (text as Result<undefined>)
}

function readOverlap(text: string): Result<number> {
  // A bare number might be meant in the file's unit: it is asked for, as with --paper.
  const bare = text.trim()
  if (parseLength(bare, 'mm').ok && /[\d¼½¾⅓⅔⅛⅜⅝⅞]$/.test(bare)) {
    const problem = optionProblem('--overlap', {
      code: 'overlap-without-unit',
      actual: `"${bare}" without a unit`,
      expected: 'a length with its unit: mm, cm or in',
      hint: `write it with its unit, such as ${bare}mm or ${bare}in`,
    })
    return { ok: false, problems: [problem] }
  }
  const length = parseLength(text, 'mm')
  if (length.ok && isOverlap(length.value)) return length
  const problem = optionProblem('--overlap', {
    code: 'overlap-out-of-range',
    actual: length.ok ? `${Math.round(length.value * 100) / 100} mm` : `"${text}"`,
    expected: `${LEAST_OVERLAP} to ${MOST_OVERLAP} mm, so that the joining marks fit into it`,
    hint: 'write it with its unit, such as 10mm or 1/2in',
  })
  return { ok: false, problems: [problem] }
}
