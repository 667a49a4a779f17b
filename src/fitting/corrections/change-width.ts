import * as z from 'zod'
import type { Readers } from '../../base/readers.ts'
import { failure, type Result, success } from '../../base/result.ts'
import { alongOf, nearestParameter } from '../../geometry/nearest.ts'
import { endOf, startOf } from '../../geometry/path.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { seamLength } from '../../pattern/seam.ts'
import { baseName } from '../../pattern/side-names.ts'
import { amountWithin } from '../amount-within.ts'
import {
  asDraftedPlace,
  type BodiceHalf,
  bodiceHalves,
  draftedEnds,
  halfSeam,
  outward,
  seamIdOf,
} from '../bodice-half.ts'
import type { CorrectionContext, SettingDefault, SlipWords } from '../correction.ts'
import { eachHalf } from '../each-half.ts'
import { followDart } from '../gap-at.ts'
import { noBodice } from '../no-bodice.ts'
import type { OperationResult, PatternOperation } from '../operation.ts'
import type { Half } from '../position.ts'
import { warpHalfSeam } from '../redraw-half.ts'
import { replaceSeams } from '../replace-seams.ts'

/** The most on each side, mm: more takes the shoulder with it. Our own. */
const MOST = 25.4

/** The settings of `back width` and `front width`. */
export function widthSettings(read: Readers) {
  return z.strictObject({ by: read.positiveLength(), direction: read.name('direction', ['wider', 'narrower']) })
}

export type WidthSettings = z.output<ReturnType<typeof widthSettings>>

export const WIDTH_DEFAULTS = [] as const satisfies readonly SettingDefault[]

/** Moves the armscye out or in where the width line meets it, to nothing at the underarm and the shoulder point. */
export function changeWidth(
  { worn, side }: CorrectionContext,
  which: Half,
  given: WidthSettings,
): Result<readonly PatternOperation[]> {
  const large = amountWithin(given.by, {
    correction: `${which} width`,
    most: MOST,
    why: 'more on each side moves the shoulder too',
  })
  if (large) return failure(large)
  const halves = bodiceHalves(worn, side, [which])
  if (halves.length === 0) return failure(noBodice(`${which} armscye`))
  const amount = given.direction === 'wider' ? given.by : -given.by
  if (amount === 0) return success([])
  return success(eachHalf(worn, side, [which], (pattern, half) => widen(pattern, half, amount)))
}

function widen(pattern: Pattern, half: BodiceHalf, amount: number): Result<OperationResult> {
  const length = seamLength(halfSeam(half, 'armscye'))
  const at = asDraftedPlace(half, 'armscye', widthPlace(half))
  const out = outward(half).x
  const armscye = warpHalfSeam(half, 'armscye', (p, along) => {
    const u = Math.min(1, Math.max(0, along < at ? along / at : (length - along) / (length - at)))
    return { x: p.x + out * amount * u * u * (3 - 2 * u), y: p.y }
  })
  const seam = seamIdOf(half, 'armscye')
  const seams = new Map([[seam, armscye]])
  return replaceSeams(pattern, half.piece, {
    seams,
    darts: half.piece.darts.map((dart) => followDart(half.piece, dart, seams, (p) => p)),
    effects: [{ kind: 'seam moved', piece: half.piece.id, seam, amount, from: 0, to: seamLength(armscye.seam) }],
  })
}

/** Where the armscye comes nearest to the center: the width line touches it there; else halfway up. */
function widthPlace(half: BodiceHalf): number {
  const seam = halfSeam(half, 'armscye')
  const path = seam.parts.flat()
  const lines = half.piece.lines.filter((line) => baseName(line.id) === `${half.half} width line`)
  const [underarm, tip] = draftedEnds(half, 'armscye')
  const middle = (underarm.y + tip.y) / 2
  const near = lines
    .map((line) => ({ x: (startOf(line.path).x + endOf(line.path).x) / 2, y: middle }))
    .sort((a, b) => Math.abs(a.x - tip.x) - Math.abs(b.x - tip.x))[0]
  if (!near) return asDraftedPlace(half, 'armscye', seamLength(seam) / 2)
  return alongOf(path, nearestParameter(path, near))
}

export function wordWidth(which: Half, given: WidthSettings, say: (mm: number) => string): SlipWords {
  return {
    what: `make the ${which} ${given.direction} by ${say(given.by)} on each side`,
    where: `on the armscye at the ${which} width line, to nothing at the underarm and the shoulder point`,
  }
}
