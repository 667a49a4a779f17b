import type { EaseRange, Join } from '../pattern/pattern.ts'
import { isCapJoin } from '../pattern/sewn-line.ts'
import type { Check, CheckContext, Found } from './check.ts'
import { triesForJoin } from './tries-for-join.ts'
import { type WalkedJoin, walkJoin } from './walk-join.ts'
import { sayEase, sayLength } from './words.ts'

/** Rounding of lengths, mm: an ease nearer than this to its limit is on it. */
const ROUNDING = 0.001

/** A seam that may take no more than this is meant to lie plain: too long is as wrong as too short, mm. */
const PLAIN = 2

/** Shops accept 1/32 to 1/16 in between two notches (CASES 17); mm. */
const NOTCH_TO_NOTCH = 25.4 / 16

/** Walks every join of the pattern, in all and notch to notch, and holds the ease against what was declared. */
export const walk: Check = {
  name: 'walk',
  looksAt: 'every sewn join, its total and notch to notch, against the declared ease',
  run: (context) => context.pattern.joins.flatMap((join) => walkOne(context, join)),
}

function walkOne(context: CheckContext, join: Join): Found[] {
  const walked = walkJoin(context.pattern, join)
  if (walked) return [...totalFindings(context, walked), ...spanFindings(context, walked)]
  const named = [...join.a, ...join.b].map((part) => `${part.seam} of ${part.piece}`).join(', ')
  return [
    {
      code: 'join-without-seam',
      severity: 'error',
      where: { join: join.id },
      actual: `the join is of ${named}; a seam or a part of one is not in the pattern`,
      expected: 'every seam that is sewn is there',
      hint: 'a correction has taken the seam away: void it, or name the seam as it is now',
    },
  ]
}

function totalFindings({ units, cloth }: CheckContext, { id, ease, declared, a, b }: WalkedJoin): Found[] {
  const cap = isCapJoin({ id })
  const where = { join: id }
  const lengths = `${sayLength(a, units)} is sewn to ${sayLength(b, units)}: ease ${sayEase(ease, units)}`
  const range = `ease ${sayEase(declared.min, units)} to ${sayEase(declared.max, units)}`
  if (ease < declared.min - ROUNDING) {
    return [
      {
        code: cap ? 'cap-too-short' : 'join-too-short',
        severity: 'error',
        where,
        actual: lengths,
        expected: range,
        tries: triesForJoin(id, ease - declared.target),
        hint: cap
          ? `the cap is ${sayLength(declared.min - ease, units)} too short for its armscye: let the cap out, or raise the underarm of the bodice`
          : `lengthen the first seam, or shorten the second, by ${sayLength(declared.target - ease, units)}`,
      },
    ]
  }
  if (ease <= declared.max + ROUNDING) return []
  const plain = !cap && declared.max - declared.target <= PLAIN
  return [
    {
      code: cap ? 'cap-too-full' : 'join-too-long',
      severity: plain ? 'error' : 'warning',
      where,
      actual: lengths,
      expected: range,
      tries: triesForJoin(id, ease - declared.target),
      hint: cap
        ? `${sayLength(ease - declared.max, units)} more than ${cloth ?? 'the cloth'} eases in without gathers: take the cap in, lower the underarm of the bodice, or cut a cloth that takes more`
        : `shorten the first seam, or lengthen the second, by ${sayLength(ease - declared.target, units)}`,
    },
  ]
}

function spanFindings({ units }: CheckContext, { id, spans, declared }: WalkedJoin): Found[] {
  if (spans.length < 2) return []
  return spans.flatMap((span, i): Found[] => {
    const [least, most] = spanRange(declared, isCapJoin({ id }), i === spans.length - 1)
    const off = span.ease < least ? least - span.ease : Math.max(0, span.ease - most)
    if (off <= NOTCH_TO_NOTCH) return []
    const lengths = `${sayLength(span.a, units)} is sewn to ${sayLength(span.b, units)}`
    return [
      {
        code: 'notches-do-not-meet',
        severity: 'warning',
        where: { join: id },
        actual: `from ${span.from} to ${span.to} ${lengths}: ease ${sayEase(span.ease, units)}`,
        expected: `ease ${sayEase(span.ease < least ? least : most, units)}, to ${sayLength(NOTCH_TO_NOTCH, units)}`,
        tries: isCapJoin({ id }) ? triesForJoin(id, 0) : [],
        hint: `true the seam between ${span.from} and ${span.to}, or move the notch by ${sayLength(off, units)}`,
      },
    ]
  })
}

/** Least and most ease between two marks: all the ease of a cap lies above its notches, none below. */
function spanRange(declared: EaseRange, cap: boolean, last: boolean): [number, number] {
  if (!cap) return [Math.min(0, declared.min), Math.max(0, declared.max)]
  return last ? [declared.min, Infinity] : [0, 0]
}
