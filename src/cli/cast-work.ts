import type { CastEntry, Format, Paper, Performer, Problem } from '../index.ts'

/** What all files of a cast are drafted with; sent to every worker once. */
export interface CastSettings {
  readonly formats: readonly Format[]
  readonly papers?: readonly Paper[]
  readonly until?: string
  readonly raw: boolean
  readonly date: string
  readonly design?: { readonly file: string; readonly performer: Pick<Performer, 'choices' | 'allowances'> }
}

/** One file to draft. */
export interface CastTask {
  readonly file: string
  readonly folder: string
}

/** What came of a file: its sheet in the index, before links are known, and the names of its files. */
export interface CastRow extends Omit<CastEntry, 'links'> {
  readonly folder: string
  readonly files: readonly string[]
}

/** The row of a file that cannot be used. */
export function unusable({ file, folder }: CastTask, problems: readonly Problem[]): CastRow {
  return { file, folder, status: 'unusable', problems, findings: [], fittings: [], pages: [], files: [] }
}
