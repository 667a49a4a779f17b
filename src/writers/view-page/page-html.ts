import type { Finding } from '../../base/problem.ts'
import { escaped } from '../escaped.ts'
import { embedded } from './embedded.ts'
import { LAYERS } from './layers.ts'
import { PAGE_STYLE } from './page-style.ts'
import type { ViewData } from './view-data.ts'

/** What stands on the page round the drawing. */
export interface PageContent {
  readonly title: string
  /** What else there is to say in its head: the date, estimates, remarks; a line each. */
  readonly remarks: readonly string[]
  readonly drawing: string
  readonly data: ViewData
  readonly findings: readonly PlacedFinding[]
  /** The page's script, compiled. */
  readonly script: string
}

/** A finding and the seams, or the piece, that it is about. */
export interface PlacedFinding {
  readonly finding: Finding
  /** What it is on, in words; empty where it is on the whole. */
  readonly on: string
  readonly piece?: string
  readonly seams: readonly { readonly piece: string; readonly seam: string }[]
}

/** The whole page: it asks nothing of any network, and its rules forbid it to. */
export function pageHtml({ title, remarks, drawing, data, findings, script }: PageContent): string {
  const rules = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:"
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${rules}">
<meta name="referrer" content="no-referrer">
<link rel="icon" href="data:,">
<title>${escaped(title)}</title>
<style>${PAGE_STYLE}</style>
</head>
<body>
<header><a class="skip" href="#side">to versions, measuring and findings</a><h1>${escaped(title)}</h1><p id="shown">${escaped(data.versions.at(-1)?.label ?? '')}</p>${remarks.map((line) => `<p>${escaped(line)}</p>`).join('')}</header>
<main>
${drawing}
<div id="floor"><div id="tools" class="screen"><button type="button" id="nearer" aria-label="zoom in" title="zoom in (+)">+</button><button type="button" id="farther" aria-label="zoom out" title="zoom out (−)">−</button><button type="button" id="whole" title="show everything (0)">all</button></div>
<div id="scale" aria-hidden="true"></div></div>
<div id="about" role="status" aria-live="polite">Point at a stitching line, or go to it with the tab key, for its length and what it is sewn to.</div>
</main>
<aside id="side" tabindex="-1">
${versionsHtml(data)}
${layersHtml(data)}
${MEASURING}
${findingsHtml(findings, data.versions.at(-1)?.label ?? '')}
<p class="note">To look at and to measure in. Cut from the sheets of scye draft, printed at 100 %. It shows a person's measures: keep it confidential.</p>
</aside>
<script type="application/json" id="data">${embedded(data)}</script>
<script>${script.replace(/<\/(script)/gi, '<\\/$1').replace(/<!--/g, '<\\!--')}</script>
</body>
</html>
`
}

function versionsHtml({ versions }: ViewData): string {
  const last = versions.length - 1
  if (last === 0)
    return `<section class="screen"><h2>Version</h2><p id="when-label">${escaped(versions[0]?.label ?? '')}</p><p class="note">No fitting yet.</p></section>`
  return `<section class="screen"><h2 id="versions">Versions</h2>
<p id="when-label" role="status" aria-live="polite">${escaped(versions[last]?.label ?? '')}</p>
<div class="screen"><input type="range" id="when" min="0" max="${last}" step="0.05" value="${last}" aria-labelledby="versions" list="stops">
<datalist id="stops">${versions.map((_, k) => `<option value="${k}"></option>`).join('')}</datalist>
<div class="stops">${versions.map(({ label }) => `<span>${escaped(label)}</span>`).join('')}</div>
<div class="row"><button type="button" id="earlier">‹ earlier</button><button type="button" id="later">later ›</button></div></div></section>`
}

function layersHtml({ versions }: ViewData): string {
  const boxes = LAYERS.map(
    ({ id, name }) => `<label><input type="checkbox" name="layer" value="${id}" checked>${escaped(name)}</label>`,
  )
  const under =
    versions.length === 1
      ? ''
      : `<label for="under">An earlier version under it, thin and dashed</label><select id="under"><option value="">none</option>${versions.map(({ label }, k) => `<option value="${k}">${escaped(label)}</option>`).join('')}</select>`
  return `<section class="screen"><h2>Show</h2>${boxes.join('')}${under}</section>`
}

const MEASURING = `<section class="screen"><h2>Measure</h2>
<div class="row" role="radiogroup" aria-label="how to measure"><label><input type="radio" name="mode" value="" checked>off</label><label><input type="radio" name="mode" value="along">along the seam</label><label><input type="radio" name="mode" value="straight">straight</label></div>
<p class="note">Tap two points in the drawing; they go to the stitching line, and to a notch or a corner that is near. Or name them:</p>
<label for="from">from</label><select id="from"></select>
<label for="to">to</label><select id="to"></select>
<output id="result" for="from to"></output><p id="more"></p></section>`

function findingsHtml(findings: readonly PlacedFinding[], version: string): string {
  if (findings.length === 0) return '<section><h2>Findings</h2><p>No findings.</p></section>'
  return `<section><h2>Findings on ${escaped(version)}</h2><ol>${findings.map(findingHtml).join('')}</ol></section>`
}

function findingHtml({ finding, on, piece, seams }: PlacedFinding): string {
  const { severity, actual, expected, hint, mend } = finding
  const words = `<b>${severity}</b>${on === '' ? '' : `${escaped(on)}: `}${escaped(actual)}${severity === 'note' ? '' : `<span class="note">expected: ${escaped(expected)}</span>`}<span class="note">→ ${escaped(hint)}</span>`
  const write = mend === undefined ? '' : `<pre>${escaped(mend)}</pre>`
  if (piece === undefined) return `<li class="is-${severity}"><div class="plain">${words}</div>${write}</li>`
  const target = `data-piece="${escaped(piece)}" data-seams="${escaped(JSON.stringify(seams))}"`
  return `<li class="is-${severity}"><button type="button" class="finding" ${target}>${words}</button>${write}</li>`
}
