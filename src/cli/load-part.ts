import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Script } from 'node:vm'

/** Where the parts of the command line lie, beside this one when it is built. */
const folder = dirname(fileURLToPath(import.meta.url))
/** Their code as V8 has compiled it, made by the build and not published: V8 refuses what another V8 made. */
const compiled = join(folder, 'compiled')
const isCompiled = existsSync(compiled)
const require = createRequire(import.meta.url)
const scripts = new Map<string, Script>()
const modules = new Map<string, { exports: unknown }>()

type Factory = (
  exports: unknown,
  require: (id: string) => unknown,
  module: { exports: unknown },
  file: string,
  folder: string,
) => void

/** Loads a part of the built command line, and what it needs, once; returns what it exports. */
export function loadPart(name: string): unknown {
  const file = join(folder, name)
  // Without compiled code Node's own way is better: newer ones keep some themselves.
  if (!isCompiled) return require(file)
  const known = modules.get(name)
  if (known) return known.exports
  const module = { exports: {} }
  modules.set(name, module)
  const code = join(compiled, name)
  const text = `(function(exports,require,module,__filename,__dirname){${readFileSync(file, 'utf8')}\n})`
  const cachedData = existsSync(code) ? readFileSync(code) : undefined
  const script = new Script(text, { filename: file, cachedData })
  scripts.set(name, script)
  const needed = (id: string) => (id.startsWith('./') ? loadPart(id.slice(2)) : require(id))
  ;(script.runInThisContext() as Factory)(module.exports, needed, module, file, folder)
  return module.exports
}

/** Keeps the code of all parts loaded so far with every function that has run; for the build. */
export function keepCompiled(): void {
  for (const [name, script] of scripts) writeFileSync(join(compiled, name), script.createCachedData())
}
