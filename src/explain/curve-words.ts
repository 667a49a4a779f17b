import { leftOf, type Point, scale } from '../geometry/point.ts'
import { isStraight } from './chord.ts'
import type { Speaker } from './said.ts'
import type { Chord, Direction } from './step.ts'

const EQUAL: Readonly<Record<number, string>> = { 2: 'two', 4: 'four', 8: 'eight' }

/** How a curve is measured from a chord; `run` is the chord as the reader has it. */
export function chordWords(chord: Chord, run: Point, say: Speaker): string {
  const { from, to, parts, offsets } = chord
  if (isStraight(chord)) return `${from}–${to} is straight to the eye.`
  const left = leftOf(run)
  const upright = Math.abs(run.y) > Math.abs(run.x)
  const way = (offset: number) => {
    const toward = scale(left, offset)
    return upright ? (toward.x > 0 ? 'right' : 'left') : toward.y > 0 ? 'up' : 'down'
  }
  const each = offsets.map((offset) => (offset === 0 ? 'on the line' : `${say.ruled(Math.abs(offset))} ${way(offset)}`))
  return `Rule ${from}–${to} thin, in ${EQUAL[parts]} equal parts; from ${from} on, square from the marks: ${each.join(', ')}.`
}

/** In which direction a curve leaves its first point, or arrives at its last: a curve that arrives comes from the other way. */
export function directionWords(direction: Direction, end: 'from' | 'to', say: Speaker): string {
  if ('square' in direction) return `square to ${direction.square.join('–')}`
  if ('along' in direction) return `along ${direction.along.join('–')}`
  const sign = end === 'to' ? -1 : 1
  const [across, up] = [sign * direction.across, sign * direction.up]
  if (up === 0) return 'level'
  if (across === 0) return 'upright'
  const ways = `${say.ruled(Math.abs(across))} ${across > 0 ? 'right' : 'left'} and ${say.ruled(Math.abs(up))} ${up > 0 ? 'up' : 'down'} from there`
  return end === 'to' ? `from the direction of a point ${ways}` : `toward a point ${ways}`
}

/** The points that a direction is told by. */
export function namesIn(direction: Direction): readonly string[] {
  if ('square' in direction) return direction.square
  return 'along' in direction ? direction.along : []
}
