/** The element that the page was written with; throws where it has none. */
export function byId<T extends Element = HTMLElement>(id: string): T {
  const element = document.getElementById(id)
  if (!element) throw new Error(`the page has no ${id}`)
  return element as unknown as T
}
