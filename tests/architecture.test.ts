import { readdirSync, readFileSync } from 'node:fs'
import { builtinModules } from 'node:module'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, test } from 'vitest'

const src = fileURLToPath(new URL('../src', import.meta.url))

/** What each folder may import from beside itself; a stage reaches everything below it. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  geometry: ['base'],
  body: ['base'],
  pattern: ['geometry', 'base'],
  drafting: ['pattern', 'body', 'geometry', 'base'],
  fitting: ['drafting', 'pattern', 'body', 'geometry', 'base'],
  checks: ['fitting', 'drafting', 'pattern', 'body', 'geometry', 'base'],
  sheets: ['pattern', 'geometry', 'base'],
  explain: ['sheets', 'drafting', 'pattern', 'body', 'geometry', 'base'],
  writers: ['sheets', 'pattern', 'geometry', 'base'],
  // The files that stand above the stages.
  '': ['writers', 'explain', 'sheets', 'checks', 'fitting', 'drafting', 'pattern', 'body', 'geometry', 'base'],
  // Reaches the rest through the public index only (see below).
  cli: ['index.ts'],
}

/** Names that stand for the machine: files, clock, console, chance. */
const MACHINE = [
  'process',
  'console',
  'Date',
  'performance',
  'Buffer',
  'setTimeout',
  'setInterval',
  'crypto',
  '__dirname',
  'require',
]

interface Module {
  readonly file: string
  readonly folder: string
  readonly source: ts.SourceFile
}

interface Import {
  readonly from: string
  readonly specifier: string
  /** Types vanish when the code runs. */
  readonly typeOnly: boolean
  /** `import(…)`, loaded where it is needed. */
  readonly lazy: boolean
}

function read(file: string, text: string): Module {
  const inside = relative(src, file)
  return {
    file: inside,
    folder: inside.includes('/') ? (inside.split('/')[0] ?? '') : '',
    source: ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true),
  }
}

const modules = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
  .map((file) => read(join(src, file), readFileSync(join(src, file), 'utf8')))

function importsOf(module: Module): Import[] {
  const found: Import[] = []
  const visit = (node: ts.Node): void => {
    const add = (specifier: ts.Node | undefined, typeOnly: boolean, lazy: boolean) => {
      if (specifier && ts.isStringLiteralLike(specifier))
        found.push({ from: module.file, specifier: specifier.text, typeOnly, lazy })
    }
    if (ts.isImportDeclaration(node)) {
      const clause = node.importClause
      const named = clause?.namedBindings
      const each = named && ts.isNamedImports(named) && !clause.name && named.elements.every((e) => e.isTypeOnly)
      add(node.moduleSpecifier, clause?.phaseModifier === ts.SyntaxKind.TypeKeyword || each === true, false)
    } else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly, false)
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal, true, false)
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false, true)
    ts.forEachChild(node, visit)
  }
  visit(module.source)
  return found
}

/** Why an import may not be, or undefined. */
function fault(module: Module, { specifier, lazy, typeOnly }: Import): string | undefined {
  if (specifier.startsWith('.')) {
    const target = relative(src, join(dirname(join(src, module.file)), specifier))
    const folder = target.startsWith('..')
      ? '(outside src)'
      : target.includes('/')
        ? (target.split('/')[0] ?? '')
        : target
    if (!specifier.endsWith('.ts')) return 'has no .ts ending'
    if (folder === module.folder || (module.folder === '' && target === folder)) return undefined
    const allowed = MAY_IMPORT[module.folder]
    if (!allowed) return `is in a folder that the design does not know: ${module.folder}`
    return allowed.includes(folder) ? undefined : `points the wrong way: ${module.folder || 'the top'} → ${folder}`
  }
  const name = specifier.replace(/^node:/, '')
  if (specifier.startsWith('node:') || builtinModules.includes(name))
    return module.folder === 'cli' ? undefined : 'needs Node'
  if ((specifier === 'paper' || specifier.startsWith('paper/')) && !lazy && !typeOnly)
    return 'loads paper at the top of a module'
  return undefined
}

/** Uses of the machine in a module that must run anywhere and repeat itself. */
function machineUses(module: Module): string[] {
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && MACHINE.includes(node.text) && isFreeUse(node))
      found.push(`${module.file}: ${node.text}`)
    if (ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random')
      found.push(`${module.file}: Math.random`)
    // Engines differ in the last bits of these: base/trig.ts has them alike everywhere.
    if (ts.isPropertyAccessExpression(node) && /^Math\.a?(?:sin|cos|tan2?)h?$/.test(node.getText()))
      found.push(`${module.file}: ${node.getText()}`)
    if (ts.isIdentifier(node) && node.text === 'globalThis' && !asksForBrowser(node))
      found.push(`${module.file}: globalThis`)
    ts.forEachChild(node, visit)
  }
  visit(module.source)
  return found
}

/** `'document' in globalThis` only looks. */
function asksForBrowser({ parent }: ts.Node): boolean {
  return ts.isBinaryExpression(parent) && parent.operatorToken.kind === ts.SyntaxKind.InKeyword
}

/** Whether a name is used as a value of the outside, not as a property, a key, a declared name or a type. */
function isFreeUse(node: ts.Identifier): boolean {
  const { parent } = node
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) return false
  if (ts.isPropertyAssignment(parent) && parent.name === node) return false
  if (ts.isPropertySignature(parent) || ts.isTypeReferenceNode(parent) || ts.isPropertyDeclaration(parent)) return false
  // A date made from a text is the same everywhere; one made from nothing is the clock.
  if (node.text === 'Date' && ts.isNewExpression(parent) && parent.arguments?.length) return false
  if (ts.isParameter(parent) || ts.isBindingElement(parent)) return false
  return !(ts.isVariableDeclaration(parent) && parent.name === node)
}

const faults = (module: Module) =>
  importsOf(module).flatMap((one) => {
    const why = fault(module, one)
    return why ? [`${one.from}: import of ${one.specifier} ${why}`] : []
  })

describe('imports', () => {
  test('every module and many imports were read', () => {
    expect(modules.length).toBeGreaterThan(80)
    expect(modules.flatMap(importsOf).length).toBeGreaterThan(300)
    for (const folder of Object.keys(MAY_IMPORT))
      expect(modules.filter((m) => m.folder === folder).length, folder).toBeGreaterThan(0)
  })

  test('point one way', () => {
    expect(modules.flatMap(faults)).toEqual([])
  })

  test('no module leads back to itself at run time', () => {
    const targets = new Map(
      modules.map((m) => [
        m.file,
        importsOf(m)
          .filter((i) => i.specifier.startsWith('.') && !i.typeOnly)
          .map((i) => relative(src, join(dirname(join(src, m.file)), i.specifier))),
      ]),
    )
    const done = new Set<string>()
    const circles: string[] = []
    const walk = (file: string, trail: readonly string[]): void => {
      if (trail.includes(file)) circles.push([...trail.slice(trail.indexOf(file)), file].join(' → '))
      if (done.has(file) || trail.includes(file)) return
      for (const target of targets.get(file) ?? []) walk(target, [...trail, file])
      done.add(file)
    }
    for (const file of targets.keys()) walk(file, [])
    expect(circles).toEqual([])
  })

  test('everything but the command line runs anywhere and repeats itself', () => {
    expect(modules.filter((m) => m.folder !== 'cli').flatMap(machineUses)).toEqual([])
  })

  test('nothing is exported by default or wholesale', () => {
    const wholesale = modules.flatMap((m) =>
      m.source.statements
        .filter((s) => ts.isExportAssignment(s) || (ts.isExportDeclaration(s) && !s.exportClause))
        .map((s) => `${m.file}: ${s.getText()}`),
    )
    expect(wholesale).toEqual([])
  })
})

describe('the test itself', () => {
  const inFolder = (folder: string, text: string) => read(join(src, folder, 'made-up.ts'), text)

  test.each([
    ['geometry', "import { a } from '../pattern/piece.ts'", 'wrong way'],
    ['pattern', "export { a } from '../drafting/draft.ts'", 'wrong way'],
    ['checks', "import type { A } from '../sheets/scene.ts'", 'wrong way'],
    ['cli', "import { a } from '../drafting/draft.ts'", 'wrong way'],
    ['cli', "const a = await import('../pipeline.ts')", 'wrong way'],
    ['drafting', "import { a } from '../index.ts'", 'wrong way'],
    ['base', "import { a } from '../../tests/scye.ts'", 'wrong way'],
    ['writers', "import { readFileSync } from 'node:fs'", 'needs Node'],
    ['writers', "import path from 'path'", 'needs Node'],
    ['geometry', "import paper from 'paper/dist/paper-core.js'", 'loads paper'],
    ['geometry', "import { a } from './path'", '.ts ending'],
  ])('in %s sees %s', (folder, text, why) => {
    expect(faults(inFolder(folder, text)).join()).toContain(why)
  })

  test.each([
    'const t = Date.now()',
    'const t = new Date()',
    'console.log(1)',
    'const r = Math.random()',
    'const s = Math.sin(1)',
    'const a = Math.atan2(1, 2)',
    'process.exit(1)',
  ])('sees %s', (text) => {
    expect(machineUses(inFolder('sheets', text))).toHaveLength(1)
  })

  test('leaves names alone that are not the machine', () => {
    expect(machineUses(inFolder('sheets', 'const row = { date: 1, process: 2 }; row.process; new Date(text)'))).toEqual(
      [],
    )
  })
})
