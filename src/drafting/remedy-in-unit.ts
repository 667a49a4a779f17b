import { formatLength } from '../base/format-length.ts'
import { type LengthUnit, MM_PER_INCH } from '../base/units.ts'
import type { MeasureName } from '../body/measure.ts'
import { MEASURES } from '../body/measure.ts'
import type { Asked, Change, NewMeasure } from './change.ts'
import { type ChoicesTree, lengthText } from './written-choices.ts'

/** The marks of a tape, mm: what a remedy is rounded to. */
const MARK: Readonly<Record<LengthUnit, number>> = { in: MM_PER_INCH / 16, cm: 1, mm: 1 }

/** The nearest mark, then the next one on either side. */
const MARKS = [0, 1, -1] as const

/** What a length of the file was before, in the words of a remedy. */
const BEFORE = 'instead of |now |estimated as '

/** The change with its lengths on the marks of a tape in this unit where it then still works, else as it was found. */
export function changeInUnit(
  change: Change,
  { body }: Asked,
  unit: LengthUnit,
  works: (change: Change) => boolean,
): Change {
  const isAsBefore = (name: MeasureName, mm: number) =>
    [body.left, body.right].some((half) => Math.abs((half[name]?.value ?? Number.NaN) - mm) < 1e-3)
  const marked = (by: number): Change => {
    let { say } = change
    const onMark = (mm: number) => {
      const mark = (Math.round(mm / MARK[unit]) + by) * MARK[unit]
      const text = lengthText(mm).replaceAll('.', '\\.')
      say = say.replaceAll(new RegExp(`(?<!${BEFORE}|[\\d.-])${text}`, 'g'), formatLength(mark, unit))
      return mark
    }
    const length = (name: MeasureName, mm: number) => (isAsBefore(name, mm) ? mm : onMark(mm))
    const measures = Object.entries(change.body ?? {}).map(([name, value]) => [
      name,
      measureOnMark(name as MeasureName, value, length),
    ])
    const draft = change.draft && treeOnMark(change.draft, (mm) => formatLength(onMark(mm), unit))
    return {
      ...(change.body ? { body: Object.fromEntries(measures) } : {}),
      ...(draft ? { draft } : {}),
      say,
    }
  }
  for (const by of MARKS) {
    const tried = marked(by)
    if (tried.say !== change.say && works(tried)) return tried
  }
  return change
}

function measureOnMark(name: MeasureName, value: NewMeasure, length: (name: MeasureName, mm: number) => number) {
  if (value === null || MEASURES[name].kind === 'angle') return value
  if (typeof value === 'number') return length(name, value)
  return { left: length(name, value.left), right: length(name, value.right) }
}

function treeOnMark(tree: ChoicesTree, write: (mm: number) => string): ChoicesTree {
  return Object.fromEntries(
    Object.entries(tree).map(([key, value]) => {
      if (value === null) return [key, value]
      if (typeof value !== 'string') return [key, treeOnMark(value, write)]
      const mm = /^(-?[\d.]+) mm$/.exec(value)?.[1]
      return [key, mm === undefined ? value : write(Number(mm))]
    }),
  )
}
