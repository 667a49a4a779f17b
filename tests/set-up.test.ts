import { spawnSync } from 'node:child_process'
import { copyFileSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { temporaryFolder } from './scye.ts'

const setUp = fileURLToPath(new URL('../bin/set-up.mjs', import.meta.url))

function run(command: string, args: readonly string[], cwd: string) {
  // No registry can be reached: whatever is asked of the network fails.
  const env = { ...process.env, npm_config_registry: 'http://127.0.0.1:9/', npm_config_offline: 'true' }
  const { status, stdout, stderr } = spawnSync(command, args, { cwd, env, encoding: 'utf8' })
  return { status, stdout, stderr }
}

test('does nothing, and says nothing, when everything is there', () => {
  expect(run(process.execPath, [setUp], '/')).toEqual({ status: 0, stdout: '', stderr: '' })
})

test('installs what the lockfile names, once, and again when something is gone', () => {
  const folder = temporaryFolder()
  mkdirSync(join(folder, 'bin'))
  mkdirSync(join(folder, 'tape'))
  copyFileSync(setUp, join(folder, 'bin', 'set-up.mjs'))
  writeFileSync(join(folder, 'tape', 'package.json'), '{ "name": "tape", "version": "1.0.0" }')
  writeFileSync(
    join(folder, 'package.json'),
    '{ "name": "shop", "version": "1.0.0", "dependencies": { "tape": "file:tape" } }',
  )
  expect(run('npm', ['install', '--package-lock-only', '--no-audit'], folder).status).toBe(0)
  const again = () => run(process.execPath, ['bin/set-up.mjs'], folder)
  const first = again()
  expect(first.status, first.stderr).toBe(0)
  expect(first.stdout).toBe('')
  expect(first.stderr).toContain('installing packages (node_modules is missing')
  expect(existsSync(join(folder, 'node_modules', 'tape', 'package.json'))).toBe(true)
  expect(again()).toEqual({ status: 0, stdout: '', stderr: '' })
  rmSync(join(folder, 'node_modules', 'tape'))
  expect(again().stderr).toContain('installing packages (node_modules/tape is missing')
  expect(existsSync(join(folder, 'node_modules', 'tape', 'package.json'))).toBe(true)
})

test('fails in words when packages cannot be had', () => {
  const folder = temporaryFolder()
  mkdirSync(join(folder, 'bin'))
  copyFileSync(setUp, join(folder, 'bin', 'set-up.mjs'))
  writeFileSync(
    join(folder, 'package.json'),
    '{ "name": "shop", "version": "1.0.0", "dependencies": { "tape": "1.0.0" } }',
  )
  const tape = { version: '1.0.0', resolved: 'http://127.0.0.1:9/tape-1.0.0.tgz' }
  const lock = {
    name: 'shop',
    version: '1.0.0',
    lockfileVersion: 3,
    packages: { '': { dependencies: { tape: '1.0.0' } }, 'node_modules/tape': tape },
  }
  writeFileSync(join(folder, 'package-lock.json'), JSON.stringify(lock))
  const { status, stderr } = run(process.execPath, ['bin/set-up.mjs'], folder)
  expect(status).not.toBe(0)
  expect(stderr).toContain('The packages could not be installed')
})
