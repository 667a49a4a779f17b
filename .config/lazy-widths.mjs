/** yargs asks for the widths of letters only to lay out help, and their tables take longer to make than all else it does. */
export function lazyWidths() {
  return {
    name: 'lazy-widths',
    async resolveId(id, importer) {
      if (id !== 'string-width' || !/\/node_modules\/(yargs|cliui|wrap-ansi)\//.test(importer ?? '')) return null
      const { id: file } = await this.resolve(id, importer, { skipSelf: true })
      return `${file}?lazy.cjs`
    },
    load(id) {
      const file = /^(.+)\?lazy\.cjs$/.exec(id)?.[1]
      if (file === undefined) return null
      return `module.exports = (text, options) => require(${JSON.stringify(file)}).default(text, options)`
    },
  }
}
