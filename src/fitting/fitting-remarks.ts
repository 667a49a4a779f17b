import type { Finding } from '../base/problem.ts'
import type { FittingRecord } from './record.ts'

/**
 * What must be said of fittings wherever the pattern goes, a line each for sheets: that one was on a stand-in or a
 * form, and corrections that no longer count.
 */
export function fittingRemarks(fittings: readonly FittingRecord[]): string[] {
  return fittings.flatMap(({ label, provisional, corrections }) => {
    const voided = corrections.flatMap(({ voided }, i) => (voided === undefined ? [] : [i + 1]))
    return [
      ...(provisional === undefined ? [] : [`provisional: ${label}, on ${provisional}`]),
      ...(voided.length === 0
        ? []
        : [`voided: ${label}, correction${voided.length > 1 ? 's' : ''} ${voided.join(', ')}`]),
    ]
  })
}

/** The same as notes of the report, each at its place in the file. */
export function fittingNotes({ label, provisional, corrections, where }: FittingRecord): Finding[] {
  const notes: Finding[] = []
  if (provisional !== undefined) {
    notes.push({
      code: 'fitting-provisional',
      severity: 'note',
      where: { ...where, fitting: label },
      actual: `fitted on ${provisional}, not on the performer`,
      expected: 'a fitting on the performer before the pattern is cut in cloth',
      hint: 'fit the next mock-up on the performer; then take provisional: out or leave it as the record',
    })
  }
  corrections.forEach((correction, i) => {
    if (correction.voided === undefined) return
    notes.push({
      code: 'correction-voided',
      severity: 'note',
      where: { ...correction.where, fitting: label, correction: i + 1 },
      actual: `${correction.do} does not count: ${correction.voided}`,
      expected: 'nothing to do; it stays on the slip, with the reason',
      hint: 'take voided: out to make it count again',
    })
  })
  return notes
}
