import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { performerJsonSchema } from '../../src/performer-json-schema.ts'
import { typeSchema } from './type-schema.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The types that the documents are of; fields may be added to them, so that other fields are not refused. */
const TYPES = {
  pattern: ['src/writers/pattern-json.ts', 'PatternJson'],
  report: ['src/checks/report.ts', 'Report'],
  compare: ['src/write-comparison.ts', 'ComparisonJson'],
  view: ['src/write-view-page.ts', 'ViewJson'],
  advice: ['src/cli/documents.ts', 'AdviceJson'],
  problems: ['src/cli/documents.ts', 'ProblemsJson'],
} as const

/** Every published schema, as the text of its file by the file's name. */
export function publishedSchemas(): ReadonlyMap<string, string> {
  const program = ownProgram(Object.values(TYPES).map(([file]) => `${root}${file}`))
  const outputs = Object.entries(TYPES).map(([name, [file, type]]): [string, unknown] => [
    name,
    { ...typeSchema(program, `${root}${file}`, type), title: `${name}/1` },
  ])
  const each: readonly [string, unknown][] = [['performer', performerJsonSchema()], ...outputs]
  return new Map(each.map(([name, schema]) => [`${name}.schema.json`, `${JSON.stringify(schema, null, 1)}\n`]))
}

/** The files and what they import of our own: no document holds anything of a package's, and reading those takes long. */
function ownProgram(files: readonly string[]): ts.Program {
  const { config } = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile)
  const options = { ...ts.parseJsonConfigFileContent(config, ts.sys, root).options, types: [] }
  const host = ts.createCompilerHost(options)
  host.resolveModuleNameLiterals = (literals, containing) =>
    literals.map(({ text }) =>
      text.startsWith('.') ? ts.resolveModuleName(text, containing, options, host) : { resolvedModule: undefined },
    )
  return ts.createProgram(files, options, host)
}
