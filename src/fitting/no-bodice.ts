import type { Problem } from '../base/problem.ts'

/** The problem of a correction of the bodice on a pattern that has none. */
export function noBodice(seam: string): Problem {
  return {
    code: 'no-such-seam',
    where: { seam },
    actual: `no ${seam} on this pattern`,
    expected: 'a bodice',
    hint: 'record this on a pattern with a bodice',
  }
}
