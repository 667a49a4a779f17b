// The library as it is written, its dependencies left to whoever installs it, and the command line with everything it needs
// in few files, since looking for hundreds of modules takes longer than drafting.
// tsdown's command warns about Node 20 on every run; the function it calls does not, and Node 20 is what we promise.
import { build } from 'tsdown'
import { thirdPartyLicenses } from './third-party-licenses.mjs'
import { withoutFonts } from './without-fonts.mjs'

/** Parts of the bundle by their names, so that what a command loads can be seen. */
const PARTS = {
  yaml: '/node_modules/yaml/',
  zod: '/node_modules/zod/',
  pdfkit: '/node_modules/pdfkit/',
  svgdom: '/node_modules/svgdom/',
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
await build({ ...common, entry: { index: 'src/index.ts' }, dts: true, clean: true })
await build({
  ...common,
  entry: { cli: 'src/cli/run.ts', 'cast-worker': 'src/cli/cast-worker.ts' },
  dts: false,
  clean: false,
  deps: { alwaysBundle: [/./], onlyBundle: false },
  // Names stay, so that a trace can be read.
  minify: { compress: true, mangle: false },
  // svgdom evaluates selectors such as :nth-child(2n); none is ever asked for.
  inputOptions: { checks: { eval: false } },
  outputOptions: {
    codeSplitting: {
      groups: [
        ...Object.entries(PARTS).map(([name, folder]) => ({ name, test: (id) => id.includes(folder) })),
        { name: 'scyewright', test: /\/src\/(?!cli\/)/ },
      ],
    },
  },
  plugins: [withoutFonts(), thirdPartyLicenses()],
})
