import type { Finding, Problem } from '../base/problem.ts'

/**
 * The warnings about measures as problems, for a body that then cannot be drafted or fitted: a measure read in the wrong
 * unit mostly comes to light far from where it stands. Notes are left out.
 */
export function doubtedMeasures(findings: readonly Finding[]): Problem[] {
  return findings
    .filter(({ severity }) => severity === 'warning')
    .map(({ code, where, actual, expected, hint }) => ({
      code,
      where,
      actual,
      expected,
      hint: `look at the unit it was written in (a plain number takes the file's), and ${hint}`,
    }))
}
