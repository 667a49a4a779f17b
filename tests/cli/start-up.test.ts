import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { lamplighter, temporaryFolder } from '../scye.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Records every module that Node is asked for. */
const HOOK = `export async function resolve(name, context, next) {
  const found = await next(name, context)
  if (!found.url.startsWith('node:')) process.stderr.write(found.url + '\\n')
  return found
}`

/** Says the file of every script that is run and every module that is required, but Node's own. */
const SPY = `import module, { isBuiltin, syncBuiltinESMExports } from 'node:module'
  import vm from 'node:vm'
  const say = (file) => isBuiltin(file) || process.stderr.write('file://' + file + '\\n')
  const { Script } = vm
  vm.Script = class extends Script {
    constructor(text, options) {
      say(options.filename)
      super(text, options)
    }
  }
  const { _load } = module
  module._load = (name, ...more) => {
    say(name)
    return _load(name, ...more)
  }
  syncBuiltinESMExports()`

/** Names of the parts of the built command that a run loads, in their order. */
function loaded(...args: readonly string[]): string[] {
  const script = `${SPY}
    import { register } from 'node:module'
    register('data:text/javascript,' + encodeURIComponent(${JSON.stringify(HOOK)}))
    const { run } = module.createRequire(${JSON.stringify(root)})('./dist/cli.cjs')
    process.exitCode = await run(${JSON.stringify(args)})
    await new Promise((done) => setTimeout(done, 100))`
  const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
    cwd: temporaryFolder(),
    encoding: 'utf8',
  })
  expect(status, stderr).toBe(0)
  const urls = stderr.split('\n').filter((url) => url !== '')
  // Nothing but parts of the bundle: no package is looked for while a command runs.
  for (const url of urls) expect(url).toContain('/dist/')
  return urls.map((url) => (url.split('/').pop() ?? '').replace(/(-[\w-]{8})?\.[cm]js$/, ''))
}

describe('what a command loads', () => {
  test('--version: nothing but itself', () => {
    expect(loaded('--version')).toEqual(['cli', 'run', 'rolldown-runtime'])
  })

  test('--help: the parser, no pattern and nothing that reads or draws one', () => {
    const parts = loaded('--help')
    expect(parts).toContain('yargs')
    for (const part of ['corrections', 'yaml', 'zod', 'pdfkit', 'svg.js']) expect(parts).not.toContain(part)
  })

  test('check: the pattern, nothing that draws', () => {
    const parts = loaded('check', lamplighter, '--quiet')
    for (const part of ['corrections', 'yaml', 'zod']) expect(parts).toContain(part)
    for (const part of ['pdfkit', 'svg.js', 'cli-progress', 'view-command', 'explain-command'])
      expect(parts).not.toContain(part)
  })

  test('draft --as svg: no PDF; --as pdf: no SVG', () => {
    const svg = loaded('draft', lamplighter, '--quiet', '--as', 'svg', '-o', 'out')
    expect(svg).toContain('svg.js')
    expect(svg).not.toContain('pdfkit')
    const pdf = loaded('draft', lamplighter, '--quiet', '--as', 'pdf', '--pieces', 'sleeve', '-o', 'out')
    expect(pdf).toContain('pdfkit')
    expect(pdf).not.toContain('svg.js')
  })
})
