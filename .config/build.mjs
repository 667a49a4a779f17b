// tsdown's command warns about Node 20 on every run; the function it calls does not, and Node 20 is what we promise.
import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { build } from 'tsdown'

const logLevel = process.argv.includes('--quiet') ? 'error' : 'info'
const root = new URL('../', import.meta.url)

await buildPageScript()
await build({ logLevel })

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
