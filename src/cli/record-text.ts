import { type Finding, type SlipEntry, slipText } from '../index.ts'
import { findingLines } from './finding-lines.ts'
import type { Written } from './output.ts'
import type { Tried } from './record-command.ts'
import { fileLines } from './summary.ts'
import type { Style } from './terminal.ts'

/** What was recorded in the slip's words, what the checks find that they did not, and where the figure is. */
export function recordedText(
  tried: Tried,
  figure: Written | undefined,
  isRecorded: boolean | undefined,
  style: Style,
): string {
  const { options, after, recorded } = tried
  const { performer, production, units } = after.performer
  const head = { performer, ...(production === undefined ? {} : { production }), units }
  const slip = slipText([slipEntryOf(tried)], head)
    .split('\n')
    .slice(1)
  const found = newFindings(tried)
  const state =
    isRecorded === undefined
      ? `To be recorded in ${options.file}${recorded.isNew ? ', in a new fitting' : ''}`
      : isRecorded
        ? `Recorded in ${options.file}${recorded.isNew ? ', in a new fitting' : ''}`
        : `Nothing was written. It would stand in ${options.file}${recorded.isNew ? ', in a new fitting' : ''}`
  const blocks = [
    [style.strong(state), ...slip].join('\n').trimEnd(),
    ...(found.length === 0 ? [] : [['New to the checks', ...findingLines(found, style)].join('\n')]),
    ...(figure ? [fileLines({ ...figure, left: [] }, style).join('\n')] : []),
  ]
  return `${blocks.join('\n\n')}\n`
}

/** The contract record/1. */
export function recordedJson(tried: Tried, figure: Written | undefined, isRecorded: boolean) {
  const { options, recorded, after } = tried
  return {
    scyewright: 'record/1',
    file: options.file,
    performer: after.performer.performer,
    recorded: isRecorded,
    fitting: recorded.fitting,
    newFitting: recorded.isNew,
    correction: recorded.correction,
    slip: slipEntryOf(tried),
    findings: newFindings(tried),
    files: figure?.files ?? [],
  }
}

/** Findings of the pattern with the correction that the one without does not have; notes on other corrections aside. */
export function newFindings({ before, after }: Tried): Finding[] {
  const key = ({ code, where }: Finding) =>
    JSON.stringify([code, where.piece, where.seam, where.join, where.fitting, where.correction])
  const known = new Set(before.report.findings.map(key))
  return after.report.findings.filter((finding) => !known.has(key(finding)))
}

function slipEntryOf({ after, recorded }: Tried): SlipEntry {
  const entry = after.report.slip.find(
    ({ fitting, correction }) => fitting === recorded.fitting && correction === recorded.correction,
  )
  if (!entry) throw new Error('the correction recorded is not on the slip')
  return entry
}
