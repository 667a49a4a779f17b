/**
 * Makes ids for one document: words to kebab-case, and a number after an id that was given out before. The same
 * calls in the same order give the same ids.
 */
export function idMaker(): (...words: readonly string[]) => string {
  const given = new Map<string, number>()
  return (...words) => {
    const id = words
      .join(' ')
      .normalize('NFD')
      .replace(/[\u0300-\u036f]/g, '')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
    const named = /^[a-z]/.test(id) ? id : `n-${id}`
    const count = (given.get(named) ?? 0) + 1
    given.set(named, count)
    if (count === 1) return named
    // A numbered id may itself have been asked for; take the next free one.
    let number = count
    while (given.has(`${named}-${number}`)) number++
    given.set(`${named}-${number}`, 1)
    return `${named}-${number}`
  }
}
