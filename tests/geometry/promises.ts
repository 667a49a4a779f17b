import { readdirSync, readFileSync } from 'node:fs'
import ts from 'typescript'
import { INNER, INNER_FUNCTIONS, PROOFS } from './proofs.ts'

const KERNEL = new URL('../../src/geometry/', import.meta.url)
const TESTS = new URL('./', import.meta.url)

/** An exported function or constant of the kernel and what its docstring says. */
export interface Promised {
  readonly name: string
  readonly module: string
  readonly kind: 'function' | 'constant'
  readonly says: string
  /** Of a constant, as written. */
  readonly value: string
}

/** A test by the name it is written with; `…` for what its case puts in. */
export interface Proof {
  readonly file: string
  readonly name: string
  /** It never runs. */
  readonly skipped: boolean
}

/** Every exported function and constant of the modules that callers may use, in the order of modules and files. */
export function promised(): Promised[] {
  return modulesOf(KERNEL, '.ts')
    .filter((module) => !INNER.includes(module))
    .flatMap((module) => exportsOf(module, readFileSync(new URL(`${module}.ts`, KERNEL), 'utf8')))
    .filter(({ name }) => !INNER_FUNCTIONS.includes(name))
}

export function exportsOf(module: string, text: string): Promised[] {
  const source = ts.createSourceFile(`${module}.ts`, text, ts.ScriptTarget.ES2022, true)
  const found: Promised[] = []
  for (const statement of source.statements) {
    if (!isExported(statement)) continue
    const says = docOf(statement)
    if (ts.isFunctionDeclaration(statement) && statement.name)
      found.push({ name: statement.name.text, module, kind: 'function', says, value: '' })
    else if (ts.isVariableStatement(statement)) {
      for (const { name, initializer } of statement.declarationList.declarations)
        found.push({ name: name.getText(), module, kind: 'constant', says, value: initializer?.getText() ?? '' })
    } else if (ts.isClassDeclaration(statement) && statement.name)
      found.push({ name: statement.name.text, module, kind: 'function', says, value: '' })
  }
  return found
}

/** Every test of tests/geometry. */
export function proofs(): Proof[] {
  return modulesOf(TESTS, '.test.ts').flatMap((file) =>
    testsOf(file, readFileSync(new URL(`${file}.test.ts`, TESTS), 'utf8')),
  )
}

export function testsOf(file: string, text: string): Proof[] {
  const source = ts.createSourceFile(`${file}.test.ts`, text, ts.ScriptTarget.ES2022, true)
  const found: Proof[] = []
  const visit = (node: ts.Node, skipped: boolean): void => {
    const off = skipped || (ts.isCallExpression(node) && /\.(skip|todo)$/.test(node.expression.getText()))
    if (ts.isCallExpression(node) && /^(it|test)\b/.test(node.expression.getText())) {
      const name = node.arguments[0]
      if (name && (ts.isStringLiteralLike(name) || ts.isTemplateExpression(name)))
        found.push({ file, name: nameOf(name), skipped: off })
    }
    ts.forEachChild(node, (child) => visit(child, off))
  }
  visit(source, false)
  return found
}

/** What is wrong between the functions, the proofs named for them and the tests there are; nothing where all is well. */
export function complaints(
  functions: readonly Promised[],
  named: Readonly<Record<string, readonly string[]>>,
  tests: readonly Proof[],
  textOf: (file: string) => string,
): string[] {
  const found: string[] = []
  for (const { name, module, says, kind } of functions) {
    if (says === '') found.push(`${module}.ts: ${name} promises nothing`)
    if (kind === 'constant') continue
    const list = Object.hasOwn(named, name) ? (named[name] ?? []) : []
    if (list.length === 0) found.push(`${module}.ts: ${name} has no proof`)
    for (const proof of list) {
      const [file, title] = split(proof)
      const test = tests.find((one) => one.file === file && one.name === title)
      if (!test) found.push(`${name}: there is no test "${proof}"`)
      else if (test.skipped) found.push(`${name}: "${proof}" is skipped`)
      else if (!new RegExp(`import[^;]*?\\b${name}\\b[^;]*?from '../../src/geometry/${module}.ts'`).test(textOf(file)))
        found.push(`${name}: ${file}.test.ts does not import it from ${module}.ts`)
    }
  }
  for (const name of Object.keys(named))
    if (!functions.some((one) => one.name === name)) found.push(`there is no function ${name} to prove`)
  return found
}

/** The table of src/geometry/README.md: function, promise, cost, failure, proof. */
export function promisesTable(): string {
  const all = promised()
  const rows = all
    .filter(({ kind }) => kind === 'function')
    .map(({ name, module, says }) => {
      const { promise, cost, failure } = partsOf(says)
      const proof = (PROOFS[name] ?? []).map((one) => {
        const [file, title] = split(one)
        return `\`${file}\`: ${title}`
      })
      return [`[\`${name}\`](${module}.ts)`, promise, cost, failure, proof.join('<br>')]
    })
  const constants = all
    .filter(({ kind }) => kind === 'constant')
    .map(({ name, module, says, value }) => [`[\`${name}\`](${module}.ts)`, value, says])
  return [
    table(['default', 'value', 'what for'], constants),
    table(['function', 'promise', 'cost', 'fails', 'proof'], rows),
  ].join('\n\n')
}

/** A docstring's sentences: those that begin with "Cost", those about failure, and the rest. */
export function partsOf(says: string): { promise: string; cost: string; failure: string } {
  // Not after an initial: "J. D. Hobby".
  const sentences = says.split(/(?<=[^A-Z\s]\.)\s+(?=[A-Z`])/)
  const cost = sentences.filter((one) => one.startsWith('Cost: '))
  const failure = sentences.filter((one) => /^(Never t|T)hrows\b/.test(one))
  return {
    promise: sentences.filter((one) => !cost.includes(one) && !failure.includes(one)).join(' '),
    cost: cost.map((one) => one.replace('Cost: ', '').replace(/\.$/, '')).join('; '),
    failure: failure.map((one) => one.replace(/\.$/, '').replace(/^./, (letter) => letter.toLowerCase())).join('; '),
  }
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n')
}

function split(proof: string): [string, string] {
  const at = proof.indexOf(': ')
  return [proof.slice(0, at), proof.slice(at + 2)]
}

function modulesOf(folder: URL, ending: string): string[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith(ending))
    .map((file) => file.slice(0, -ending.length))
    .sort()
}

function isExported(statement: ts.Statement): boolean {
  return ts.canHaveModifiers(statement)
    ? (ts.getModifiers(statement) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
    : false
}

function docOf(node: ts.Node): string {
  const docs = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc)
  const text = ts.getTextOfJSDocComment(docs[docs.length - 1]?.comment) ?? ''
  return text.replace(/\s+/g, ' ').trim()
}

function nameOf(name: ts.StringLiteralLike | ts.TemplateExpression): string {
  if (ts.isStringLiteralLike(name)) return name.text
  return name.head.text + name.templateSpans.map(({ literal }) => `…${literal.text}`).join('')
}
