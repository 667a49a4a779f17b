import { relative, sep } from 'node:path'
import type { CastEntry } from '../index.ts'
import type { CastRow } from './cast-work.ts'

/** The rows as sheets of an index that lies in `folder`: links lead from there to the files. */
export function castEntries(rows: readonly CastRow[], folder: string): CastEntry[] {
  return rows.map(({ folder: own, files, ...entry }) => {
    const way = relative(folder, own).split(sep).map(encodeURIComponent).join('/')
    return { ...entry, links: files.map((name) => ({ name, href: `${way}/${encodeURIComponent(name)}` })) }
  })
}
