/** The one spelling of a key or a name: lower case, with single spaces where spaces, hyphens or underscores stood. */
export function normaliseName(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\s_\u2010-\u2015-]+/g, ' ')
    .trim()
}

/**
 * The known name that a misspelt one most likely meant, or undefined when none is near: at most a quarter of its
 * letters wrong, missing, too many or swapped with their neighbour, or the same words in another order.
 */
export function nearestName(text: string, known: readonly string[]): string | undefined {
  const name = normaliseName(text)
  const sorted = sortedWords(name)
  let best: string | undefined
  let least = Infinity
  for (const candidate of known) {
    const normal = normaliseName(candidate)
    const distance = sortedWords(normal) === sorted ? 0 : editDistance(name, normal)
    if (distance < least && distance <= Math.max(1, Math.floor(normal.length / 4))) {
      least = distance
      best = candidate
    }
  }
  return best
}

function sortedWords(name: string): string {
  return name.split(' ').sort().join(' ')
}

/** Letters to change, add, drop or swap with a neighbour (optimal string alignment). */
function editDistance(a: string, b: string): number {
  const rows = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  const at = (i: number, j: number) => (rows[i] as number[])[j] as number
  for (let i = 1; i <= a.length; i++) {
    rows.push([i])
    for (let j = 1; j <= b.length; j++) {
      let cost = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, at(i - 2, j - 2) + 1)
      ;(rows[i] as number[]).push(cost)
    }
  }
  return at(a.length, b.length)
}
