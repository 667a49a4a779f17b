import { gzipSync } from 'node:zlib'
import { build, type Metafile } from 'esbuild'

/** Bytes that a browser loads for one use of the package, minified and without what falls away. */
export interface BundleSize {
  readonly what: string
  readonly min: number
  readonly gz: number
}

/** Uses of the package, and the libraries that are loaded when they are called. */
const USES = [
  { what: 'draft alone', names: 'completeBody, draftPattern', later: [] },
  { what: 'draft and SVG', names: 'completeBody, draftPattern, layOut, writeSvg', later: ['@svgdotjs/svg.js'] },
  { what: 'everything', names: '*', later: ['@svgdotjs/svg.js', 'pdfkit'] },
] as const

/** The sizes of each use, bundled in a project that has the package. Throws where a module of Node would be needed. */
export async function bundleSizes(project: string): Promise<BundleSize[]> {
  return Promise.all(USES.map((use) => bundleSize(project, use)))
}

async function bundleSize(project: string, { what, names, later }: (typeof USES)[number]): Promise<BundleSize> {
  const { outputFiles, metafile } = await build({
    stdin: { contents: `export ${names === '*' ? '*' : `{ ${names} }`} from 'scyewright'`, resolveDir: project },
    absWorkingDir: project,
    outdir: 'out',
    bundle: true,
    splitting: true,
    minify: true,
    format: 'esm',
    platform: 'browser',
    metafile: true,
    write: false,
    logLevel: 'silent',
  })
  const outside = Object.values(metafile.inputs).flatMap(({ imports }) => imports.filter(({ external }) => external))
  if (outside.length > 0) throw new Error(`left outside: ${outside.map(({ path }) => path).join(', ')}`)
  const begun = Object.keys(metafile.outputs).filter((name) => isLoaded(name, metafile, later))
  const loaded = new Set(begun.flatMap((name) => withImports(name, metafile)))
  const files = outputFiles.filter(({ path }) => [...loaded].some((name) => path.endsWith(name)))
  return {
    what,
    min: files.reduce((sum, { contents }) => sum + contents.length, 0),
    gz: files.reduce((sum, { contents }) => sum + gzipSync(contents).length, 0),
  }
}

/** The entry, and the entries of libraries that are loaded later. */
function isLoaded(name: string, { outputs }: Metafile, later: readonly string[]): boolean {
  const entry = outputs[name]?.entryPoint
  if (entry === undefined) return false
  return entry === '<stdin>' || later.some((library) => entry.includes(`node_modules/${library}/`))
}

function withImports(name: string, metafile: Metafile): string[] {
  const imports = metafile.outputs[name]?.imports.filter(({ kind }) => kind === 'import-statement') ?? []
  return [name, ...imports.flatMap(({ path }) => withImports(path, metafile))]
}
