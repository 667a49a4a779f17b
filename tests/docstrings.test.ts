import { readFileSync } from 'node:fs'
import ts from 'typescript'
import { expect, test } from 'vitest'

const sources = new URL('../src/', import.meta.url)

function parse(text: string): ts.SourceFile {
  return ts.createSourceFile('source.ts', text, ts.ScriptTarget.ES2022, true)
}

/** What `src/index.ts` names, by the file that each name comes from. */
function publicNames(): Map<string, string[]> {
  const found = new Map<string, string[]>()
  for (const statement of parse(readFileSync(new URL('index.ts', sources), 'utf8')).statements) {
    if (!ts.isExportDeclaration(statement) || !statement.moduleSpecifier || !statement.exportClause) {
      throw new Error(`not an export by name: ${statement.getText()}`)
    }
    const file = (statement.moduleSpecifier as ts.StringLiteral).text
    const names = (statement.exportClause as ts.NamedExports).elements.map(({ name }) => name.text)
    found.set(file, [...(found.get(file) ?? []), ...names])
  }
  return found
}

/** Those of the names, and of the members of their object types, that have no docstring; and names not declared there. */
function undocumented(source: ts.SourceFile, names: readonly string[]): string[] {
  return names.flatMap((name) => {
    const statement = source.statements.find((one) => namesIn(one).includes(name))
    if (!statement) return [`${name} is not declared`]
    const members = membersOf(statement).filter(([, node]) => !isDocumented(node))
    return [...(isDocumented(statement) ? [] : [name]), ...members.map(([path]) => `${name}.${path}`)]
  })
}

function namesIn(statement: ts.Statement): string[] {
  if (ts.isVariableStatement(statement)) return statement.declarationList.declarations.map(({ name }) => name.getText())
  const named =
    ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement) || ts.isFunctionDeclaration(statement)
  return named && statement.name ? [statement.name.text] : []
}

/** Members of object types anywhere in a declaration of a type, with the way to them. */
function membersOf(node: ts.Node): [string, ts.Node][] {
  if (ts.isFunctionDeclaration(node) || ts.isVariableStatement(node)) return []
  const found: [string, ts.Node][] = []
  ts.forEachChild(node, (child) => {
    const inner = membersOf(child)
    if (!ts.isTypeElement(child) || ts.isIndexSignatureDeclaration(child)) found.push(...inner)
    else {
      const name = child.name?.getText() ?? '()'
      found.push([name, child], ...inner.map(([path, member]): [string, ts.Node] => [`${name}.${path}`, member]))
    }
  })
  return found
}

function isDocumented(node: ts.Node): boolean {
  return ts.getJSDocCommentsAndTags(node).some((doc) => /\w/.test(ts.getTextOfJSDocComment(doc.comment) ?? ''))
}

test('every public name and every member of a public type has a docstring', () => {
  const names = publicNames()
  expect([...names.values()].flat()).toContain('draftPattern')
  const missing = [...names].flatMap(([file, some]) =>
    undocumented(parse(readFileSync(new URL(file, sources), 'utf8')), some).map((name) => `${file}: ${name}`),
  )
  expect(missing).toEqual([])
})

test('a docstring taken away is missed, wherever it was', () => {
  const sample = parse(`
    /** A pin. */
    export interface Pin {
      /** mm */
      readonly at: number
      readonly by: { readonly mm: number }
    }
    /** Either. */
    export type Either = { readonly left: 1 } | {
      /** The other. */
      readonly right: 2
    }
    export function bare(): void {}
    /** */
    export const empty = 1
    /** Said. */
    export function said(options: { readonly a: 1 }): void {}`)
  const names = ['Pin', 'Either', 'bare', 'empty', 'said', 'absent']
  expect(undocumented(sample, names)).toEqual([
    'Pin.by',
    'Pin.by.mm',
    'Either.left',
    'bare',
    'empty',
    'absent is not declared',
  ])
})
