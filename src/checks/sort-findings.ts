import type { Finding, Severity } from '../base/problem.ts'

const ORDER: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 }

/** Errors first, then warnings, then notes; the order within each stays. */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => ORDER[a.severity] - ORDER[b.severity])
}
