import type { Finding, Problem, Severity } from '../base/problem.ts'
import type { PaperPages } from '../sheets/paper-pages.ts'
import { escaped } from './escaped.ts'

/** One performer's sheet of the index. */
export interface CastEntry {
  /** The performer file, as it is to be shown. */
  readonly file: string
  /** Role or code; absent where the file could not be read so far. */
  readonly performer?: string
  /** Name of the production, where the file says it. */
  readonly production?: string
  /** `draft`, or the label of the last fitting. */
  readonly version?: string
  /** Labels of the fittings made, in order. */
  readonly fittings: readonly string[]
  /** Number of the mock-up that the last fitting was on. */
  readonly mockUp?: number
  /** `findings`: at least one of severity error; `unusable`: nothing was drafted, and `problems` say why. */
  readonly status: 'ok' | 'findings' | 'unusable'
  /** What the checks noticed. */
  readonly findings: readonly Finding[]
  /** Why the file cannot be used. */
  readonly problems: readonly Problem[]
  /** Printed pages by paper. */
  readonly pages: readonly PaperPages[]
  /** What the sheet links to, with addresses as they go into a link. */
  readonly links: readonly {
    /** What is shown. */
    readonly name: string
    /** Where it leads. */
    readonly href: string
  }[]
  /** An `<svg>` element, as `thumbnail` makes one. */
  readonly picture?: string
}

/** What the page says of itself. */
export interface CastIndexOptions {
  /** Heading of the page, such as the production. */
  readonly title: string
  /** Printed on the page, ISO 8601. */
  readonly date: string
  /** A sentence on where the design is from, where all were drafted from another's. */
  readonly design?: string
}

/**
 * The index of a production as one HTML document that needs nothing else: a list, then a sheet for each performer with
 * its picture, findings and links, each on a page of its own when printed, legible in gray. Same entries, same bytes.
 */
export function castIndex(entries: readonly CastEntry[], { title, date, design }: CastIndexOptions): string {
  const ids = entries.map((_, i) => `sheet-${i + 1}`)
  const rows = entries.map(
    (entry, i) =>
      `<tr><td><a href="#${ids[i]}">${escaped(nameOf(entry))}</a></td><td>${escaped(entry.version ?? '')}</td><td>${escaped(stateOf(entry))}</td><td class="n">${pagesOf(entry)}</td></tr>`,
  )
  const sheets = entries.map((entry, i) => sheet(entry, ids[i] as string))
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${escaped(title)}</title>
<style>${STYLE}</style>
<header>
<h1>${escaped(title)}</h1>
<p>${entries.length} performer file${entries.length === 1 ? '' : 's'}, ${escaped(date)}.${design === undefined ? '' : ` ${escaped(design)}`}
Body measures are confidential: keep this page and the files with it where only those who fit may see them.</p>
</header>
<table><thead><tr><th>performer</th><th>version</th><th>status</th><th class="n">pages</th></tr></thead>
<tbody>
${rows.join('\n')}
</tbody></table>
${sheets.join('\n')}
</html>
`
}

function sheet(entry: CastEntry, id: string): string {
  const facts = [
    entry.production,
    entry.version === undefined ? undefined : `version: ${entry.version}`,
    entry.mockUp === undefined ? undefined : `mock-up ${entry.mockUp}`,
    entry.fittings.length === 0 ? undefined : `fittings: ${entry.fittings.join(', ')}`,
    `file: ${entry.file}`,
  ].filter((fact) => fact !== undefined)
  const links = entry.links.map(({ name, href }) => `<a href="${escaped(href)}">${escaped(name)}</a>`)
  return `<section id="${id}">
<h2>${escaped(nameOf(entry))} <span class="${entry.status}">${escaped(stateOf(entry))}</span></h2>
<p>${escaped(facts.join(' · '))}</p>
${entry.picture ?? ''}
${links.length === 0 ? '' : `<p class="files">${links.join(' ')}</p>`}
${notes(entry)}
</section>`
}

function notes({ findings, problems }: CastEntry): string {
  const items = [
    ...problems.map((p) => ({ ...p, severity: 'problem', where: placed(p) })),
    ...findings.map((f) => ({ ...f, where: placed(f) })),
  ].map(({ severity, where, actual, hint }) => {
    const on = where === '' ? '' : `${where}: `
    return `<li><b>${severity}</b> ${escaped(`${on}${actual}`)} <i>→ ${escaped(hint)}</i></li>`
  })
  return items.length === 0 ? '<p>No findings.</p>' : `<ul>${items.join('\n')}</ul>`
}

function placed({ where }: Finding | Problem): string {
  return where.join ?? [where.piece, where.seam].filter((part) => part !== undefined).join(' ')
}

function nameOf({ performer, file }: CastEntry): string {
  return performer ?? file
}

/** The status in words: the worst there is, and how many of it. */
function stateOf({ status, findings, problems }: CastEntry): string {
  if (status === 'unusable') return `cannot be used: ${counted(problems.length, 'problem')}`
  const worst = (['error', 'warning', 'note'] satisfies Severity[]).find((severity) =>
    findings.some((finding) => finding.severity === severity),
  )
  return worst === undefined ? 'ok' : counted(findings.filter((finding) => finding.severity === worst).length, worst)
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`
}

function pagesOf({ pages }: CastEntry): string {
  return pages.map(({ paper, count }) => `${count} ${escaped(paper)}`).join(', ')
}

const STYLE = `
body { font: 14px/1.45 'DejaVu Sans', Verdana, sans-serif; max-width: 60em; margin: 2em auto; padding: 0 1em; color: #111; background: #fff }
h1 { font-size: 1.5em } h2 { font-size: 1.2em; margin: 0 0 .2em } p { margin: .2em 0 .6em } a { color: inherit }
table { border-collapse: collapse; width: 100%; margin: 1em 0 }
th, td { text-align: left; padding: .25em .8em .25em 0; border-bottom: 1px solid #bbb; vertical-align: top }
thead { display: table-header-group } tr { break-inside: avoid } .n { text-align: right; padding-right: 0 }
section { border-top: 2px solid #111; padding: 1em 0; margin-top: 2em }
h2 span { font-size: .75em; font-weight: 600; border: 1px solid #111; border-radius: 3px; padding: .1em .5em; margin-left: .4em }
.ok { font-weight: 400 } .unusable { border-width: 3px; border-style: double }
svg { display: block; width: 100%; max-height: 22em; margin: .6em 0 }
path { fill: none; stroke: #111; vector-effect: non-scaling-stroke; stroke-linejoin: round }
.cut { stroke-width: 1.4px } .stitch { stroke-width: .7px; stroke-dasharray: 4 2.5 } .dart { stroke-width: .6px; stroke-dasharray: 1.5 1.5 }
.files a { display: inline-block; margin-right: 1em } ul { padding-left: 1.2em } li { margin: .25em 0; overflow-wrap: anywhere }
@media print { body { margin: 0; max-width: none; font-size: 10pt } section { break-before: page; border: 0; margin: 0 } a { text-decoration: none } svg { max-height: 13cm } }
@page { margin: 15mm }
`
