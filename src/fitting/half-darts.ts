import type { Problem } from '../base/problem.ts'
import type { Pattern } from '../pattern/pattern.ts'
import type { Dart } from '../pattern/piece.ts'
import { baseName, namedSide } from '../pattern/side-names.ts'
import { type BodiceHalf, bodiceHalves } from './bodice-half.ts'
import type { Half } from './position.ts'
import type { CorrectionSide } from './record.ts'

/** The darts on one half of the bodice. */
export function dartsOf({ piece, side }: BodiceHalf): readonly Dart[] {
  return piece.side === 'whole' ? piece.darts.filter((dart) => namedSide(dart.id) === side) : piece.darts
}

/** The dart of that name, without a side, on a half; undefined where there is none. */
export function dartNamed(half: BodiceHalf, name: string): Dart | undefined {
  return dartsOf(half).find((dart) => baseName(dart.id) === name)
}

/** The halves of the bodice that have a dart of that name. */
export function halvesWithDart(
  pattern: Pattern,
  side: CorrectionSide,
  name: string,
  which: readonly Half[] = ['front', 'back'],
): BodiceHalf[] {
  return bodiceHalves(pattern, side, which).filter((half) => dartNamed(half, name) !== undefined)
}

/** The problem of a dart that no half of the bodice has. */
export function noSuchDart(pattern: Pattern, name: string): Problem {
  const names = new Set(bodiceHalves(pattern, 'both').flatMap((half) => dartsOf(half).map((dart) => baseName(dart.id))))
  return {
    code: 'no-such-dart',
    where: { field: 'dart' },
    actual: `no ${name} there on the bodice`,
    expected: names.size > 0 ? `one of: ${[...names].join(', ')}` : 'a bodice with darts',
    hint: 'name a dart that the pattern has, or leave front or back out',
  }
}
