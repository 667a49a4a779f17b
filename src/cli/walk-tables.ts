import type { Finding, LengthUnit, WalkedJoin } from '../index.ts'
import { bare, bareEase } from './lengths.ts'
import { rounded, roundedParts } from './rounding.ts'
import { type Cell, type Column, table } from './table.ts'
import type { Style } from './terminal.ts'

/** A cap with more than this share of the ease that its cloth takes is nearly full. */
const NEARLY = 0.8

/** What a row shows of a join or a stretch of it; mm, rounded so that ease is a − b and the stretches add up. */
interface Shown {
  readonly a: number
  readonly b: number
  readonly ease: number
}

const right = (title: string): Column => ({ title, align: 'right' })

/** The sleeve against its armscye, each half notch to notch and the whole cap of each side. */
export function capTable(
  joins: readonly WalkedJoin[],
  findings: readonly Finding[],
  units: LengthUnit,
  style: Style,
): string[] {
  const caps = joins.filter(isCap)
  if (caps.length === 0) return ['  no sleeve is set']
  const columns = [
    { title: 'join' },
    ...['sleeve', 'armscye', 'ease front', 'ease back', 'asked', 'at most'].map(right),
    { title: 'verdict' },
  ]
  const row = (name: string, { a, b, ease }: Shown, front: boolean): Cell[] => [
    name,
    bare(a, units),
    bare(b, units),
    front ? bareEase(ease, units) : '',
    front ? '' : bareEase(ease, units),
  ]
  const rows = caps.flatMap((join): Cell[][] => {
    const front = join.id.startsWith('front')
    const { target, max } = join.declared
    return [
      [
        ...row(join.id, shownJoin(join, units), front),
        bareEase(target, units),
        bareEase(max, units),
        verdict(join, findings, style),
      ],
      ...shownSpans(join, units).map(({ name, shown }) => row(`  ${name}`, shown, front)),
    ]
  })
  return table(columns, [...rows, ...wholeCaps(caps, units)], style)
}

/** Front and back of a cap together, for each side. */
function wholeCaps(caps: readonly WalkedJoin[], units: LengthUnit): Cell[][] {
  const fronts = caps.filter((join) => join.id.startsWith('front'))
  return fronts.flatMap((front): Cell[][] => {
    const back = caps.find((join) => join.id === front.id.replace('front', 'back'))
    if (!back) return []
    const [f, b] = [shownJoin(front, units), shownJoin(back, units)]
    const share = Math.round((100 * (front.ease + back.ease)) / (front.b + back.b))
    const name = front.id.replace('front cap', 'whole cap')
    const eases = [bareEase(f.ease, units), bareEase(b.ease, units)]
    return [[name, bare(f.a + b.a, units), bare(f.b + b.b, units), ...eases, '', '', `ease ${share} % of armscye`]]
  })
}

/** Every other seam, the back's line against the front's. */
export function seamTable(
  joins: readonly WalkedJoin[],
  findings: readonly Finding[],
  units: LengthUnit,
  style: Style,
): string[] {
  const columns = [{ title: 'join' }, ...['back', 'front', 'ease', 'asked'].map(right), { title: 'verdict' }]
  const rows = joins
    .filter((join) => !isCap(join))
    .flatMap((join): Cell[][] => {
      const cells = ({ a, b, ease }: Shown) => [bare(a, units), bare(b, units), bareEase(ease, units)]
      return [
        [
          join.id,
          ...cells(shownJoin(join, units)),
          bareEase(join.declared.target, units),
          verdict(join, findings, style),
        ],
        ...shownSpans(join, units).map(({ name, shown }): Cell[] => [`  ${name}`, ...cells(shown)]),
      ]
    })
  return table(columns, rows, style)
}

function shownJoin({ b, ease }: WalkedJoin, units: LengthUnit): Shown {
  const shown = { b: rounded(b, units), ease: rounded(ease, units) }
  return { ...shown, a: shown.b + shown.ease }
}

function shownSpans({ spans }: WalkedJoin, units: LengthUnit): { readonly name: string; readonly shown: Shown }[] {
  if (spans.length < 2) return []
  const eases = roundedParts(
    spans.map((span) => span.ease),
    units,
  )
  return roundedParts(
    spans.map((span) => span.b),
    units,
  ).map((b, i) => {
    const ease = eases[i] as number
    const { from = '', to = '' } = spans[i] ?? {}
    return {
      name: `${from} to ${to}`.replaceAll(/(front|back|shoulder|side) notch/g, shortNotch),
      shown: { a: b + ease, b, ease },
    }
  })
}

/** The row stands under its join: which notch it is goes without saying. */
function shortNotch(_: string, which: string): string {
  return which === 'shoulder' ? 'shoulder' : 'notch'
}

/** What the findings say of a join, in a word or two. */
function verdict({ id, ease, declared }: WalkedJoin, findings: readonly Finding[], style: Style): Cell {
  const mine = findings.filter((f) => f.where.join === id && f.severity !== 'note')
  const cap = isCap({ id })
  if (mine.length === 0) {
    return { text: cap && ease > NEARLY * declared.max ? 'sews, nearly full' : 'sews', paint: style.good }
  }
  const paint = mine.some((f) => f.severity === 'error') ? style.bad : style.doubtful
  if (ease < declared.min) return { text: 'too short', paint }
  if (ease > declared.max) return { text: cap ? 'too full' : 'too long', paint }
  return { text: 'look again', paint }
}

function isCap({ id }: Pick<WalkedJoin, 'id'>): boolean {
  return /^(front|back) cap\b/.test(id)
}
