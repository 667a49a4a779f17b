import { advise } from './advise.ts'
import { begin } from './begin.ts'
import { cast } from './cast.ts'
import { check } from './check.ts'
import type { Command } from './command.ts'
import { compare } from './compare.ts'
import { completionOf } from './completion.ts'
import { draft } from './draft.ts'
import { explain } from './explain.ts'
import { form } from './form.ts'
import { record } from './record.ts'
import { view } from './view.ts'

/** Every command, in the order in which help lists them. */
export const COMMANDS: readonly Command[] = [
  begin,
  form,
  draft,
  check,
  compare,
  record,
  advise,
  view,
  explain,
  cast,
  completionOf(() => COMMANDS),
]
