import type { Advice, AdvicePlace, Problem, Report } from '../index.ts'

/** Input that cannot be used, from any command. */
export interface ProblemsJson {
  readonly scyewright: 'problems/1'
  readonly problems: readonly Problem[]
  /** Reports of the other files of the same run, which could be used. */
  readonly reports?: readonly Report[]
}

/** What `scye advise` found. */
export interface AdviceJson extends Advice {
  readonly scyewright: 'advice/1'
  readonly source: 'common practice'
  /** The words asked for; absent where the whole list was. */
  readonly words?: string
  readonly place?: AdvicePlace
}
