import type { Result, WriteOptions } from '../index.ts'
import { readSwitch, readText } from './common-options.ts'
import { problemsIn } from './make.ts'
import type { Typed } from './run.ts'

/** What may be drawn besides the pieces as they are. */
export type SheetOptions = Pick<WriteOptions, 'under' | 'mirrorPairs' | 'projector'>

/** What was asked with --under, --mirror-pairs and --projector. */
export function readSheetOptions(typed: Typed): Result<SheetOptions> {
  const under = readText(typed, 'under')
  const mirrorPairs = readSwitch(typed, 'mirror-pairs')
  const projector = readSwitch(typed, 'projector')
  if (!under.ok || !mirrorPairs.ok || !projector.ok) {
    return { ok: false, problems: problemsIn([under, mirrorPairs, projector]) }
  }
  return {
    ok: true,
    value: {
      mirrorPairs: mirrorPairs.value,
      projector: projector.value,
      ...(under.value === undefined ? {} : { under: under.value }),
    },
  }
}
