import { basename, dirname, extname, join, resolve } from 'node:path'
import {
  type Format,
  type MadePattern,
  type Paper,
  type Problem,
  type Report,
  type Result,
  type TileOptions,
  writePattern,
} from '../index.ts'
import { findingsStatus, reportsJson } from './check-command.ts'
import { type CommonOptions, readCommon, readList, readText } from './common-options.ts'
import { makeAll, problemsIn } from './make.ts'
import { readFormats, readPapers, readPieces } from './options.ts'
import { type Written, writeFiles } from './output.ts'
import { reportProblems } from './report-problems.ts'
import type { Status, Typed } from './run.ts'
import { readSheetOptions, type SheetOptions } from './sheet-options.ts'
import { summary } from './summary.ts'
import { labelFont, today } from './surroundings.ts'
import type { Terminal } from './terminal.ts'
import { readTileOptions } from './tile-options.ts'

interface DraftOptions extends CommonOptions {
  readonly output?: string
  readonly formats: readonly Format[]
  readonly papers?: readonly Paper[]
  readonly tiles: TileOptions
  readonly sheet: SheetOptions
  readonly pieces?: readonly string[]
}

interface Done {
  readonly made: MadePattern
  readonly written: Written
  readonly report: Report
}

/** `scye draft`: makes and writes the pattern of every file; a file that cannot be used writes nothing. */
export async function draftCommand(typed: Typed, terminal: Terminal): Promise<Status> {
  const options = readOptions(typed)
  if (!options.ok)
    return reportProblems(options.problems, { json: typed.json === true, written: true }, () => undefined, terminal)
  const { json, quiet, files } = options.value
  const { each, textOf } = makeAll(options.value)
  const results: Result<Done>[] = []
  const taken = new Map<string, string>()
  for (const { file, result } of each) {
    if (!result.ok) {
      results.push(result)
      continue
    }
    const folder = folderFor(file, result.value, options.value)
    const first = taken.get(folder)
    taken.set(folder, first ?? file)
    results.push(
      first === undefined ? await written(result.value, folder, options.value) : sameFolder(file, first, folder),
    )
  }
  const done = results.flatMap((result) => (result.ok ? [result.value] : []))
  const reports = done.map((one) => one.report)
  const problems = problemsIn(results)
  if (!json && !quiet) terminal.out(done.map((one) => summary(one.made, one.written, terminal.styleOut)).join('\n'))
  if (problems.length > 0) {
    const others = files.length > 1 ? { reports } : {}
    return reportProblems(problems, { json, written: true, ...others }, textOf, terminal)
  }
  if (json) terminal.out(reportsJson(reports))
  return findingsStatus(reports, quiet && !json, terminal)
}

function readOptions(typed: Typed): Result<DraftOptions> {
  const common = readCommon(typed)
  const output = readText(typed, 'output')
  const formats = readFormats(readList(typed, 'as'))
  const papers = readPapers(readList(typed, 'paper'))
  const tiles = readTileOptions(typed)
  const sheet = readSheetOptions(typed)
  const pieces = readPieces(readList(typed, 'pieces'))
  if (!common.ok || !output.ok || !formats.ok || !papers.ok || !tiles.ok || !sheet.ok || !pieces.ok) {
    return { ok: false, problems: problemsIn([common, output, formats, papers, tiles, sheet, pieces]) }
  }
  return {
    ok: true,
    value: {
      ...common.value,
      formats: formats.value,
      tiles: tiles.value,
      sheet: sheet.value,
      ...(output.value === undefined ? {} : { output: output.value }),
      ...(papers.value === undefined ? {} : { papers: papers.value }),
      ...(pieces.value === undefined ? {} : { pieces: pieces.value }),
    },
  }
}

async function written(made: MadePattern, folder: string, options: DraftOptions): Promise<Result<Done>> {
  const { formats, papers, tiles, sheet, pieces } = options
  const files = await writePattern(made, {
    formats,
    tiles,
    ...sheet,
    date: today(),
    font: labelFont,
    ...(papers === undefined ? {} : { papers }),
    ...(pieces === undefined ? {} : { pieces }),
  })
  if (!files.ok) return files
  const result = writeFiles(folder, files.value.files)
  return result.ok ? { ok: true, value: { made, written: result.value, report: files.value.report } } : result
}

/** `-o DIR` with one file is DIR, with several DIR/<stem>; without it <stem>-pattern beside the file. */
export function folderFor(
  file: string,
  made: MadePattern,
  { output, files }: { readonly output?: string; readonly files: readonly string[] },
): string {
  const stem = file === '-' ? slug(made.performer.performer) : basename(file, extname(file))
  if (output !== undefined) return files.length === 1 ? resolve(output) : join(resolve(output), stem)
  return join(resolve(file === '-' ? '.' : dirname(file)), `${stem}-pattern`)
}

function slug(name: string): string {
  const words = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  return words === '' ? 'performer' : words
}

function sameFolder(file: string, first: string, folder: string): Result<never> {
  const problem: Problem = {
    code: 'same-folder',
    where: { file },
    actual: `${first} is written to ${folder} already`,
    expected: 'a folder for each file',
    hint: 'give the files different names, or draft them one at a time with -o DIR',
  }
  return { ok: false, problems: [problem] }
}
