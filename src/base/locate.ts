import { normaliseName } from './names.ts'
import type { Place } from './problem.ts'
import { valueAt } from './reading-problems.ts'
import type { TreePath, YamlDocument } from './yaml-document.ts'

/**
 * Problems or findings that know only their field, such as `body.scye depth`, with the file, line and column of that
 * field in the document they came from: its value, or the nearest thing there is. Those that have a line, or no field,
 * stay as they are.
 */
export function locate<T extends { readonly where: Place }>(items: readonly T[], document: YamlDocument): T[] {
  return items.map((item) => {
    const { field, line } = item.where
    if (field === undefined || line !== undefined) return item
    return { ...item, where: { ...item.where, ...document.placeOf(pathOf(field, document)) } }
  })
}

/** List entries count from 1 in a field, from 0 in a path. */
function pathOf(field: string, document: YamlDocument): TreePath {
  const path: (string | number)[] = []
  for (const part of field.split('.')) {
    const parent = valueAt(document.tree, path)
    path.push(Array.isArray(parent) && /^\d+$/.test(part) ? Number(part) - 1 : normaliseName(part))
  }
  return path
}
