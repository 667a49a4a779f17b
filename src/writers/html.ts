import { rounded } from '../base/rounded.ts'
import type { Point } from '../geometry/point.ts'
import type { Booklet, BookletLine, BookletSection, BookletStep, Picture } from '../sheets/booklet.ts'
import { PENS } from '../sheets/house-style.ts'
import { KIND_ORDER, type Mark } from '../sheets/scene.ts'
import { textWidth } from '../sheets/text-width.ts'
import { escaped } from './escaped.ts'
import { pathText } from './path-text.ts'

/** A hundredth of a millimetre is finer than any small picture is seen. */
const DECIMALS = 2

export interface HtmlOptions {
  /** Language of the words, default `en`. */
  readonly language?: string
}

/**
 * The booklet as one HTML document that needs nothing else: no script, no font, no picture from elsewhere. Black on
 * white; printed, no step is torn apart that fits on a page. Same booklet, same bytes.
 */
export function writeHtml(booklet: Booklet, options: HtmlOptions = {}): string {
  return `<!doctype html>
<html lang="${escaped(options.language ?? 'en')}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(booklet.title)}</title>
<style>
${STYLE}
</style>
</head>
<body>
<header>
<h1>${escaped(booklet.title)}</h1>
<p>${escaped(booklet.subtitle)}</p>
${booklet.introduction.map((text) => `<p>${escaped(text)}</p>`).join('\n')}
</header>
${booklet.sections.map(sectionHtml).join('\n')}
</body>
</html>
`
}

const STYLE = `@page { margin: 15mm }
body { font: 11pt/1.45 'DejaVu Sans', Verdana, sans-serif; color: #000; background: #fff; max-width: 190mm; margin: 0 auto; padding: 5mm }
h1 { font-size: 1.7em; margin: 0 0 .2em }
h2 { font-size: 1.35em; margin: 1.6em 0 .6em; border-bottom: .4mm solid #000; break-after: avoid }
h3 { font-size: 1.05em; margin: 0 0 .4em; break-after: avoid }
p { margin: 0 0 .35em }
p.why { font-size: .85em; margin-left: 1.5em; font-style: italic }
article { display: flex; gap: 6mm; align-items: flex-start; margin: 0 0 6mm; break-inside: avoid }
article > div { flex: 1 }
article > svg { flex: none; max-width: 45% ; height: auto }
@media print { body { max-width: none; padding: 0; font-size: 9.5pt } }
@media (max-width: 600px) { article { flex-direction: column } article > svg { max-width: 100% } }`

function sectionHtml({ title, steps }: BookletSection): string {
  return `<section>
<h2>${escaped(title)}</h2>
${steps.map(stepHtml).join('\n')}
</section>`
}

function stepHtml({ heading, lines, picture }: BookletStep): string {
  return `<article>
<div>
<h3>${escaped(heading)}</h3>
${lines.map(lineHtml).join('\n')}
</div>
${picture ? svgOf(picture) : ''}
</article>`
}

function lineHtml({ text, why }: BookletLine): string {
  const words = `<p>${escaped(text)}</p>`
  return why === undefined ? words : `${words}\n<p class="why">${escaped(why)}</p>`
}

function svgOf({ width, height, marks, description }: Picture): string {
  const [w, h] = [rounded(width, DECIMALS), rounded(height, DECIMALS)]
  const place = (p: Point) => ({ x: p.x, y: height - p.y })
  const groups = KIND_ORDER.flatMap((kind) => {
    const ofKind = marks.filter((mark) => mark.kind === kind)
    if (ofKind.length === 0) return []
    const { weight, dash } = PENS[kind]
    const pen =
      kind === 'label'
        ? `fill="#000" font-family="'DejaVu Sans', Verdana, sans-serif" text-anchor="middle"`
        : `fill="none" stroke="#000" stroke-width="${weight}" stroke-linejoin="round"${dash ? ` stroke-dasharray="${dash.join(' ')}"` : ''}`
    return [`<g ${pen}>${ofKind.map((mark) => markSvg(mark, place)).join('')}</g>`]
  })
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}" role="img" aria-label="${escaped(description)}">
${groups.join('\n')}
</svg>`
}

function markSvg(mark: Mark, place: (p: Point) => Point): string {
  switch (mark.type) {
    case 'stroke': {
      const d = mark.paths.map((path) => pathText(path, { decimals: DECIMALS, closed: mark.closed ?? false, place }))
      return `<path d="${d.join(' ')}"/>`
    }
    case 'fill':
      return `<path d="${pathText(mark.outline, { decimals: DECIMALS, closed: true, place })}" fill="#000" stroke="none"/>`
    case 'text': {
      const { x, y } = place(mark.at)
      const width = rounded(textWidth(mark.text, mark.size), DECIMALS)
      return `<text x="${rounded(x, DECIMALS)}" y="${rounded(y, DECIMALS)}" font-size="${mark.size}" textLength="${width}" lengthAdjust="spacingAndGlyphs">${escaped(mark.text)}</text>`
    }
  }
}
