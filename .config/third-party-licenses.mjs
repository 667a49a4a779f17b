import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Writes the licences of all packages whose code is in the bundle beside it: they ask to be kept with copies. */
export function thirdPartyLicenses() {
  return {
    name: 'third-party-licenses',
    generateBundle(_options, bundle) {
      const modules = Object.values(bundle).flatMap((chunk) => chunk.moduleIds ?? [])
      const folders = modules.flatMap((id) => /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(id) ?? [])
      const texts = [...new Set(folders)].map(licenceOf).sort()
      this.emitFile({
        type: 'asset',
        fileName: 'third-party-licenses.txt',
        source: texts.join(`\n${'-'.repeat(80)}\n\n`),
      })
    },
  }
}

function licenceOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry))
  return `${name} ${version}, ${license}\n\n${file ? readFileSync(join(folder, file), 'utf8').trim() : 'No licence text is published with it.'}\n`
}
