import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bundleSizes } from './bundle-sizes.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const read = (file: string) => readFileSync(join(root, file), 'utf8')

/** Another project: empty but for the package as it would be published, and what it says it depends on. */
const project = mkdtempSync(join(tmpdir(), 'scye-package-'))
const installed = join(project, 'node_modules/scyewright')

interface Packed {
  readonly filename: string
  readonly size: number
  readonly unpackedSize: number
  readonly files: readonly { readonly path: string }[]
}
let packed: Packed

beforeAll(() => {
  // No network: npm packs what is here, and dependencies are those that the lockfile put beside us.
  const args = ['pack', '--json', '--ignore-scripts', '--offline', '--pack-destination', project]
  packed = JSON.parse(execFileSync('npm', args, { cwd: root, encoding: 'utf8' }))[0]
  mkdirSync(installed, { recursive: true })
  execFileSync('tar', ['-xzf', join(project, packed.filename), '--strip-components=1', '-C', installed])
  for (const name of Object.keys(JSON.parse(read('package.json')).dependencies)) {
    const place = join(project, 'node_modules', name)
    mkdirSync(dirname(place), { recursive: true })
    symlinkSync(join(root, 'node_modules', name), place)
  }
  writeFileSync(join(project, 'package.json'), '{ "type": "module", "private": true }')
}, 60_000)

afterAll(() => rmSync(project, { recursive: true, force: true }))

test('the package holds what is needed to use it and nothing else', () => {
  const paths = packed.files.map(({ path }) => path).sort()
  const built = paths.filter((path) => path.startsWith('dist/'))
  const others = paths.filter((path) => !/^dist\/|^src\/schema\/[a-z]+\.schema\.json$/.test(path))
  expect(others).toEqual(['LICENSE', 'README.md', 'bin/package.json', 'bin/scye', 'package.json'])
  expect(
    built.filter((path) => !/^dist\/(index\.d\.mts|third-party-licenses\.txt|[\w.-]+\.[cm]js)$/.test(path)),
  ).toEqual([])
  for (const needed of ['index.mjs', 'index.d.mts', 'cli.cjs', 'run.cjs']) expect(built).toContain(`dist/${needed}`)
  // The library with its comments is 1.2 MB, the command line with all libraries in it 2.7 MB, schemas 0.3 MB: a jump means
  // that a font, a fixture or a library has slipped in.
  expect(packed.size).toBeLessThan(1_250_000)
  expect(packed.unpackedSize).toBeLessThan(4_800_000)
})

test.each([
  ['nodenext', ts.ModuleKind.NodeNext, ts.ModuleResolutionKind.NodeNext],
  ['bundler', ts.ModuleKind.ESNext, ts.ModuleResolutionKind.Bundler],
] as const)(
  'its types are found under %s, take the examples and refuse what is wrong',
  (name, module, moduleResolution) => {
    const files = ['tests/consumer/own-types.ts', 'examples/own-correction.ts', 'examples/own-check.ts'].map((file) => {
      const own = join(project, `${name}-${file.replaceAll('/', '-')}`)
      writeFileSync(own, asConsumer(read(file)))
      return own
    })
    symlinkSync(join(root, 'node_modules/@types'), join(project, 'node_modules/@types'), 'dir')
    const program = ts.createProgram(files, {
      module,
      moduleResolution,
      target: ts.ScriptTarget.ES2022,
      lib: ['lib.es2023.d.ts'],
      types: ['node'],
      strict: true,
      noEmit: true,
      skipLibCheck: true,
    })
    rmSync(join(project, 'node_modules/@types'))
    const found = ts.getPreEmitDiagnostics(program)
    expect(found.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'))).toEqual([])
    const types = program.getSourceFiles().map(({ fileName }) => fileName)
    expect(types.some((file) => file.endsWith('scyewright/dist/index.d.mts'))).toBe(true)
  },
  60_000,
)

test('an example runs in the other project with the package alone, and the command beside it', () => {
  const example = ts.transpile(asConsumer(read('examples/draft-a-sleeve.ts')), {
    module: ts.ModuleKind.ESNext,
    target: ts.ScriptTarget.ES2022,
  })
  writeFileSync(join(project, 'draft-a-sleeve.mjs'), example)
  writeFileSync(
    join(project, 'main.mjs'),
    `import { draftASleeve } from './draft-a-sleeve.mjs'
     const { svg, slip } = await draftASleeve()
     const refused = await import('scyewright/dist/index.mjs').catch((error) => error.code)
     console.log(JSON.stringify({ svg: svg.slice(0, 5), end: svg.slice(-7).trim(), slip, refused }))`,
  )
  const run = (args: readonly string[]) => spawnSync(process.execPath, args, { cwd: project, encoding: 'utf8' })
  const main = run(['main.mjs'])
  expect(main.stderr).toBe('')
  const { svg, end, slip, refused } = JSON.parse(main.stdout)
  expect([svg, end]).toEqual(['<?xml', '</svg>'])
  expect(slip).toContain('let out the cap by 6 mm')
  expect(refused).toBe('ERR_PACKAGE_PATH_NOT_EXPORTED')
  const version = run([join(installed, 'bin/scye'), '--version'])
  expect(version.stdout.trim()).toBe(JSON.parse(read('package.json')).version)
})

test('a browser gets what it uses of the package, without a module of Node', async () => {
  const sizes = await bundleSizes(project)
  console.log(sizes.map(({ what, min, gz }) => `${what.padEnd(42)}${kB(min)} kB, ${kB(gz)} kB gz`).join('\n'))
  // A tenth over what they were on 2026-11-30: more is a library pulled in, or code that no longer falls away.
  const most = { 'draft alone': 300, 'draft and SVG': 475, everything: 1600 }
  expect(sizes.map(({ what }) => what)).toEqual(Object.keys(most))
  for (const { what, min } of sizes) expect(min / 1000, what).toBeLessThan(most[what as keyof typeof most])
})

function kB(bytes: number): string {
  return Math.round(bytes / 1000)
    .toString()
    .padStart(6)
}

/** The program as it would stand outside this repository. */
function asConsumer(text: string): string {
  const changed = text.replace(/from '[./]*src\/index\.ts'/, "from 'scyewright'")
  if (changed === text) throw new Error('it does not import src/index.ts')
  return changed
}
