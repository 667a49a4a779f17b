import { escaped } from './escaped.ts'

/** As much of a DOM element as svg.js needs to build a document and have its text. */
class SvgNode {
  readonly childNodes: SvgNode[] = []
  parentNode: SvgNode | null = null
  private readonly attributes = new Map<string, string>()
  private data = ''

  constructor(readonly nodeName: string) {}

  get children(): SvgNode[] {
    return this.childNodes.filter(({ nodeName }) => nodeName !== '#text')
  }

  appendChild(child: SvgNode): SvgNode {
    child.parentNode = this
    this.childNodes.push(child)
    return child
  }

  get lastChild(): SvgNode | undefined {
    return this.childNodes.at(-1)
  }

  hasChildNodes(): boolean {
    return this.childNodes.length > 0
  }

  removeChild(child: SvgNode): void {
    this.childNodes.splice(this.childNodes.indexOf(child), 1)
  }

  hasAttribute(name: string): boolean {
    return this.attributes.has(name)
  }

  getAttribute(name: string): string | null {
    return this.attributes.get(name) ?? null
  }

  removeAttribute(name: string): void {
    this.attributes.delete(name)
  }

  setAttribute(name: string, value: string): void {
    this.attributes.set(name, value)
  }

  setAttributeNS(_namespace: string, name: string, value: string): void {
    this.attributes.set(name, value)
  }

  set textContent(text: string) {
    this.childNodes.length = 0
    this.appendChild(textNode(text))
  }

  get outerHTML(): string {
    if (this.nodeName === '#text') return escaped(this.data)
    const attributes = Array.from(this.attributes, ([name, value]) => ` ${name}="${escaped(value)}"`).join('')
    const inner = this.childNodes.map((child) => child.outerHTML).join('')
    return `<${this.nodeName}${attributes}>${inner}</${this.nodeName}>`
  }

  static text(data: string): SvgNode {
    const node = new SvgNode('#text')
    node.data = data
    return node
  }
}

function textNode(data: string): SvgNode {
  return SvgNode.text(data)
}

/**
 * A window for svg.js's `withWindow`: elements and texts can be made, appended and written, nothing else. The same in
 * Node, on a page and in a worker, which has no document, so that the same drawing is the same bytes everywhere; Node's
 * DOMs read fonts and files and cannot be bundled for a browser.
 */
export function svgWindow() {
  const document = {
    createElementNS: (_namespace: string, name: string) => new SvgNode(name),
    createTextNode: textNode,
  }
  return { document, Node: SvgNode, SVGElement: SvgNode }
}
