// Replays the Ferry Pilot's fittings one after the other and says what each did to the pattern, seam by seam; then does
// the same as if the last correction had never been made: nothing is undone, the file is replayed without it.
// Run it from the project's folder: npx tsx examples/replay-a-fitting.ts
import { readFileSync } from 'node:fs'
import {
  CORRECTIONS,
  compareVersions,
  completeBody,
  draftPattern,
  type FittingRecord,
  formatLength,
  type Result,
  readersOf,
  readPerformer,
  replay,
} from '../src/index.ts'

/** What every fitting moved, a line each, and the versions that the fittings made. */
export function replayFittings(
  change: (fittings: readonly FittingRecord[]) => readonly FittingRecord[] = (all) => all,
) {
  const text = readFileSync(new URL('ferry-pilot.yaml', import.meta.url), 'utf8')
  const { body, choices, allowances, fittings, units } = need(
    readPerformer(text, 'ferry-pilot.yaml', readersOf(CORRECTIONS)),
  )
  const draft = need(draftPattern(need(completeBody(body)).body, choices, allowances.standard))
  const { versions, slip } = need(replay(draft.pattern, change(fittings), allowances, { units }))
  const lines = versions.slice(1).flatMap((version, i) => {
    const { seams } = compareVersions(versions[i] ?? version, version)
    const moved = seams.filter(({ move }) => move > 0.8).sort((a, b) => b.move - a.move)
    return moved.map(
      ({ piece, seam, move, before, after }) =>
        `${version.label}: ${piece}, ${seam} moved by up to ${formatLength(move, units)}, ` +
        `${formatLength(before, units)} before, ${formatLength(after, units)} after`,
    )
  })
  return { versions, slip, lines }
}

/** The fittings as they would stand without the last correction. */
export function withoutLast(fittings: readonly FittingRecord[]): readonly FittingRecord[] {
  return fittings.map((fitting, i) =>
    i < fittings.length - 1 ? fitting : { ...fitting, corrections: fitting.corrections.slice(0, -1) },
  )
}

/** A result's value; its problems say what to change. */
function need<T>(result: Result<T>): T {
  if (result.ok) return result.value
  throw new Error(result.problems.map(({ actual, hint }) => `${actual}: ${hint}`).join('\n'))
}

if (process.argv[1]?.endsWith('replay-a-fitting.ts')) {
  console.log(replayFittings().lines.join('\n'))
  console.log(`without the last correction:\n${replayFittings(withoutLast).lines.join('\n')}`)
}
