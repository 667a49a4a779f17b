// Installs the packages that the lockfile names when they are missing or older than it, and does nothing
// otherwise, so that the second run needs no network. Node's own modules only: nothing else is there yet.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const root = new URL('../', import.meta.url)

/** Where a package should be and is not, or another version than the lockfile's lies; undefined when all is well. */
function firstMissing() {
  const { packages } = JSON.parse(readFileSync(new URL('package-lock.json', root), 'utf8'))
  // npm writes this file last, when an install has succeeded: an interrupted one leaves none.
  const mark = new URL('node_modules/.package-lock.json', root)
  if (!existsSync(mark)) return 'node_modules'
  const installed = JSON.parse(readFileSync(mark, 'utf8')).packages
  return Object.keys(packages).find((place) => {
    if (place === '' || (packages[place].optional && !installed[place])) return false
    return installed[place]?.version !== packages[place].version || !existsSync(new URL(`${place}/package.json`, root))
  })
}

const missing = firstMissing()
if (missing) {
  console.error(`installing packages (${missing} is missing or not the version that package-lock.json names) …`)
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  const options = ['ci', '--no-audit', '--no-fund', '--prefer-offline']
  // npm's own notes go to stderr, so that a command after this one keeps stdout to itself.
  const { status, error } = spawnSync(npm, options, {
    cwd: fileURLToPath(root),
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  })
  if (error) console.error(`npm could not be started: ${error.message}`)
  if (status !== 0) {
    console.error('The packages could not be installed. A first run needs a network or a filled npm cache.')
    process.exit(status ?? 1)
  }
}
