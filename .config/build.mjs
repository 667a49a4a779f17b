// The library as it is written, its dependencies left to whoever installs it, and the command line with everything it needs
// in few files, since looking for hundreds of modules takes longer than drafting.
// tsdown's command warns about Node 20 on every run; the function it calls does not, and Node 20 is what we promise.
import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { build } from 'tsdown'
import { lazyWidths } from './lazy-widths.mjs'
import { thirdPartyLicenses } from './third-party-licenses.mjs'

const root = new URL('../', import.meta.url)

/** Parts of the bundle by their names, so that what a command loads can be seen. */
const PARTS = {
  yaml: '/node_modules/yaml/',
  zod: '/node_modules/zod/',
  pdfkit: '/node_modules/pdfkit/',
  'svg.js': '/node_modules/@svgdotjs/',
  yargs: '/node_modules/yargs/',
  'cli-progress': '/node_modules/cli-progress/',
}
const common = {
  config: false,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  logLevel: process.argv.includes('--quiet') ? 'error' : 'info',
}
await buildPageScript()
await build({ ...common, entry: { index: 'src/index.ts' }, dts: true, clean: true })
rmSync(new URL('dist/compiled', root), { recursive: true, force: true })
await build({
  ...common,
  entry: { run: 'src/cli/run.ts', 'cast-worker': 'src/cli/cast-worker.ts' },
  // Scripts, not modules: only they take compiled code.
  format: 'cjs',
  dts: false,
  clean: false,
  deps: { alwaysBundle: [/./], onlyBundle: false },
  // Names stay, so that a trace can be read.
  minify: { compress: true, mangle: false },
  outputOptions: {
    codeSplitting: {
      groups: Object.entries(PARTS).map(([name, folder]) => ({ name, test: (id) => id.includes(folder) })),
    },
  },
  plugins: [lazyWidths(), thirdPartyLicenses()],
})
// Scripts too: Node's loader of modules takes a twentieth of a short run to be made ready.
for (const [name, file] of [
  ['cli', 'src/cli/start.ts'],
  ['start-worker', 'src/cli/start-worker.ts'],
]) {
  await build({ ...common, entry: { [name]: file }, format: 'cjs', dts: false, clean: false })
}
const { status } = spawnSync(process.execPath, [fileURLToPath(new URL('keep-compiled.mjs', import.meta.url))], {
  stdio: 'inherit',
})
if (status !== 0) process.exit(1)

/** The script of the viewing page as one text, which the library carries: a page has nothing to load it from. */
async function buildPageScript() {
  const folder = fileURLToPath(new URL('node_modules/.cache/scyewright-page/', root))
  await build({
    config: false,
    cwd: fileURLToPath(root),
    entry: { view: 'src/writers/view-page/browser/view.ts' },
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    tsconfig: 'src/writers/view-page/browser/tsconfig.json',
    minify: true,
    dts: false,
    outDir: folder,
    logLevel: 'error',
  })
  const script = readFileSync(`${folder}view.iife.js`, 'utf8').trim()
  rmSync(folder, { recursive: true, force: true })
  const file = new URL('src/writers/view-page/page-script.ts', root)
  const text = `// Made by npm run build from the files in browser/.\n/** The script of the viewing page. */\nexport const PAGE_SCRIPT = ${JSON.stringify(script)}\n`
  // Left alone where nothing has changed, so that a build does not look like a change.
  if (readFileSync(file, 'utf8') !== text) writeFileSync(file, text)
}
