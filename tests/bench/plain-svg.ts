import type { Svg } from '@svgdotjs/svg.js'

const BARE: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** An element as text in the making: what string building without any library would do for the same bytes. */
class PlainElement {
  private attributes = ''
  private inner = ''
  private readonly children: PlainElement[] = []

  constructor(private readonly name: string) {}

  attr(names: string | Readonly<Record<string, unknown>>, value?: unknown): this {
    if (typeof names === 'string') this.set(names, value)
    else for (const name of Object.keys(names)) this.set(name, names[name])
    return this
  }

  id(value: string): this {
    this.set('id', value)
    return this
  }

  words(text: string): this {
    this.inner = escaped(text)
    return this
  }

  group(): PlainElement {
    return this.element('g')
  }

  element(name: string): PlainElement {
    const child = new PlainElement(name)
    this.children.push(child)
    return child
  }

  svg(): string {
    let inner = this.inner
    for (const child of this.children) inner += child.svg()
    return `<${this.name}${this.attributes}>${inner}</${this.name}>`
  }

  private set(name: string, value: unknown): void {
    // svg.js writes colors with six digits.
    this.attributes += ` ${name}="${value === '#000' ? '#000000' : escaped(String(value))}"`
  }
}

/** A document that has as much of svg.js's as `drawSvg` uses. */
export function plainSvg(): Svg {
  return new PlainElement('svg').attr({
    xmlns: 'http://www.w3.org/2000/svg',
    version: '1.1',
    'xmlns:xlink': 'http://www.w3.org/1999/xlink',
  }) as unknown as Svg
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => BARE[sign] ?? sign)
}
