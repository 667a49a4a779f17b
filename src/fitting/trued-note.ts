import type { Finding } from '../base/problem.ts'
import type { FittingRecord } from './record.ts'
import type { TruedEdge } from './true-seams.ts'

/** What shows on paper, mm. */
const SEEN = 0.1

/** What was trued after a fitting, in one note; none where nothing was that shows on paper. The report lists every edge. */
export function truedNote(fitting: FittingRecord, edges: readonly TruedEdge[]): Finding[] {
  const most = edges.reduce<TruedEdge | undefined>((a, b) => (a === undefined || b.move > a.move ? b : a), undefined)
  if (most === undefined || most.move < SEEN) return []
  const reach = Math.max(...edges.map((edge) => edge.reach))
  const others = edges.length - 1
  const rest = others === 0 ? '' : `; ${others} other edge${others === 1 ? '' : 's'} less`
  return [
    {
      code: 'trued',
      severity: 'note',
      where: { ...fitting.where, fitting: fitting.label },
      actual: `the ${most.seam} of ${most.piece} is trued across the ${most.across} by ${most.move.toFixed(1)} mm at most, within ${reach.toFixed(0)} mm of it${rest}`,
      expected: 'small corners trued, lengths and notches kept',
      hint: 'nothing to do; --no-true shows the seams as the corrections left them',
    },
  ]
}
