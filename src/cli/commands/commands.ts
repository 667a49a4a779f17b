import { advise } from './advise.ts'
import { begin } from './begin.ts'
import { cast } from './cast.ts'
import { check } from './check.ts'
import type { Command } from './command.ts'
import { compare } from './compare.ts'
import { completionOf } from './completion.ts'
import { draft } from './draft.ts'

/** Every command, in the order in which help lists them. */
export const COMMANDS: readonly Command[] = [begin, draft, check, compare, cast, advise, completionOf(() => COMMANDS)]
