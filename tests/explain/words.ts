// The same student with nothing but the printed sentences: turns them into points and lines again.

import type { drawnByStudent } from './student.ts'

type StepToDraw = Parameters<typeof drawnByStudent>[0][number]
type Placing = StepToDraw['points'][number]['placing']
type Draw = StepToDraw['draw'][number]
type Direction = Extract<Draw['run'], { kind: 'curve' }>['leaving']

const NAME = '[A-Z]2?'
const WAYS: Readonly<Record<string, 1 | -1>> = { right: 1, up: 1, left: -1, down: -1 }

const EIGHTHS: Readonly<Record<string, number>> = { '⅛': 1, '¼': 2, '⅜': 3, '½': 4, '⅝': 5, '¾': 6, '⅞': 7 }

/** `15 3⁄16″`, `1⅜″`, `39.4 cm`, `416 mm` in mm. */
function mm(text: string): number {
  const metric = /^(\d+(?:\.\d+)?) (mm|cm)$/.exec(text)
  if (metric) return Number(metric[1]) * (metric[2] === 'cm' ? 10 : 1)
  const sixteenths = /^(?:(\d+) )?(\d+)⁄(\d+)″$/.exec(text)
  if (sixteenths) return 25.4 * (Number(sixteenths[1] ?? 0) + Number(sixteenths[2]) / Number(sixteenths[3]))
  const eighths = /^(\d*)([⅛¼⅜½⅝¾⅞]?)″$/.exec(text)
  if (!eighths || text === '″') throw new Error(`"${text}" is no length`)
  return 25.4 * (Number(eighths[1]) + (EIGHTHS[eighths[2] as string] ?? 0) / 8)
}

/** The points and lines that the sentences of a step name. Throws on a sentence about points that it cannot read. */
export function stepFromWords(lines: readonly string[]): StepToDraw {
  const points: { name: string; placing: Placing }[] = []
  const draw: Draw[] = []
  for (let k = 0; k < lines.length; k++) {
    const line = lines[k] as string
    const straight = new RegExp(`^((?:${NAME}–)+${NAME}): straight to the eye`).exec(line)?.[1]
    const placed = new RegExp(`^(${NAME}), .*?: (from .*|at ${NAME}|rule .*)\\.$`).exec(line)
    if (placed) points.push({ name: placed[1] as string, placing: placingOf(placed[2] as string) })
    else if (straight) draw.push(...pairs(straight).map(straightLine))
    else if (line.startsWith('Curve ')) {
      const words = new RegExp(
        `^Curve ((?:${NAME}–)+${NAME}): it leaves (${NAME}) (.+?) and arrives at (${NAME}) (.+)\\.$`,
      ).exec(line)
      if (!words) throw new Error(line)
      const chords = pairs(words[1] as string).map(([from, to], i) => chordOf(lines[k + 1 + i] as string, from, to))
      k += chords.length
      const [leaving, arriving] = [directionOf(words[3] as string, 1), directionOf(words[5] as string, -1)]
      draw.push({ id: line, seam: 'any', run: { kind: 'curve', leaving, arriving, chords } })
    } else if (line.startsWith('Rule ')) {
      draw.push(
        ...[...line.matchAll(new RegExp(`${NAME}–${NAME}`, 'g'))].map(([pair]) => straightLine(pairs(pair)[0] as Pair)),
      )
    } else if (new RegExp(`\\b${NAME}–${NAME}\\b`).test(line)) throw new Error(`not understood: ${line}`)
  }
  return { points, draw, notches: [] }
}

type Pair = readonly [string, string]

function pairs(names: string): Pair[] {
  const list = names.split('–')
  return list.slice(1).map((to, k) => [list[k] as string, to])
}

function straightLine([from, to]: Pair): Draw {
  return { id: `${from}–${to}`, seam: 'any', run: { kind: 'straight', from, to } }
}

function placingOf(words: string): Placing {
  if (words.startsWith('rule ')) return { how: 'start' }
  const at = new RegExp(`^at (${NAME})$`).exec(words)
  if (at) return { how: 'square', from: at[1] as string, across: 0, up: 0 }
  const toward = new RegExp(`^from (${NAME}) straight toward (${NAME}), (.+)$`).exec(words)
  if (toward)
    return { how: 'toward', from: toward[1] as string, toward: toward[2] as string, by: mm(toward[3] as string) }
  const square = new RegExp(`^from (${NAME}) (.+)$`).exec(words)
  if (!square) throw new Error(words)
  return { how: 'square', from: square[1] as string, ...vectorOf(square[2] as string) }
}

/** `5⅜″ right and 1″ down`, or one of both. */
function vectorOf(words: string): { across: number; up: number } {
  const vector = { across: 0, up: 0 }
  for (const part of words.split(' and ')) {
    const [, length = '', way = ''] = /^(.+) (right|left|up|down)$/.exec(part) ?? []
    const value = (WAYS[way] ?? Number.NaN) * mm(length)
    if (way === 'up' || way === 'down') vector.up = value
    else vector.across = value
  }
  return vector
}

/** A direction forward along the curve; `sign` is −1 for words that say where a curve comes from. */
function directionOf(words: string, sign: 1 | -1): Direction {
  const line = new RegExp(`^(square to|along) (${NAME})–(${NAME})$`).exec(words)
  if (line) {
    const names: Pair = [line[2] as string, line[3] as string]
    return line[1] === 'along' ? { along: names } : { square: names }
  }
  // Level or upright, whichever way the curve goes on: square to the other axis.
  if (words === 'level') return { square: ['upright from', 'upright to'] }
  if (words === 'upright') return { square: ['level from', 'level to'] }
  const toward = /^(?:toward|from the direction of) a point (.+) from there$/.exec(words)
  if (!toward) throw new Error(words)
  const { across, up } = vectorOf(toward[1] as string)
  return { across: sign * across, up: sign * up }
}

function chordOf(line: string, from: string, to: string) {
  if (line === `${from}–${to} is straight to the eye.`) return { from, to, parts: 2, offsets: [0], sides: [''] }
  const words = /^Rule (\S+) thin, in (two|four|eight) equal parts; from (\S+) on, square from the marks: (.+)\.$/.exec(
    line,
  )
  if (words?.[1] !== `${from}–${to}` || words[3] !== from) throw new Error(`${from}–${to}: ${line}`)
  const each = (words[4] as string).split(', ').map((mark) => {
    const [, length = '', side = ''] = /^(.+) (right|left|up|down)$/.exec(mark) ?? []
    return mark === 'on the line' ? { off: 0, side: '' } : { off: mm(length), side }
  })
  return { from, to, parts: each.length + 1, offsets: each.map(({ off }) => off), sides: each.map(({ side }) => side) }
}

/** Turns offsets to a side of the paper into offsets to the left of the chord, once its ends are known. */
export function sidesTaken(step: StepToDraw, at: (name: string) => readonly [number, number]): StepToDraw {
  const draw = step.draw.map((line): Draw => {
    const { run } = line
    if (run.kind === 'straight') return line
    const chords = run.chords.map((chord) => {
      const { from, to, offsets } = chord
      const sides = (chord as { sides?: readonly string[] }).sides ?? []
      const [a, b] = [at(from), at(to)]
      const left = [a[1] - b[1], b[0] - a[0]] as const
      const signed = offsets.map((off, k) => {
        const side = sides[k] ?? ''
        const along = side === 'up' || side === 'down' ? left[1] : left[0]
        return side === '' ? 0 : off * Math.sign(along) * (WAYS[side] ?? Number.NaN)
      })
      return { ...chord, offsets: signed }
    })
    return { ...line, run: { ...run, chords } }
  })
  return { ...step, draw }
}
