/** The page's look: black on paper white, lines told apart by dash and weight as on the sheets; one gray for what was. */
export const PAGE_STYLE = `
:root { --ink: #1c1c1c; --soft: #5a5a57; --rule: #c9c7c0; --paper: #fff; --desk: #f4f2ec; --mark: #1d4f73 }
* { box-sizing: border-box }
body { margin: 0; color: var(--ink); background: var(--desk); font: 15px/1.45 'DejaVu Sans', Verdana, sans-serif; display: grid; grid-template: auto 1fr / 1fr 23rem; height: 100vh }
header { grid-column: 1 / -1; padding: .6rem 1rem; border-bottom: 1px solid var(--rule); display: flex; gap: .2rem 1.2rem; align-items: baseline; flex-wrap: wrap }
h1 { font-size: 1.1rem; margin: 0 }
h2 { font-size: .95rem; margin: 0 0 .35rem }
#shown { color: var(--ink) !important; font-weight: bold }
header p, .note { margin: 0; color: var(--soft); font-size: .85rem }
.skip { position: absolute; left: -99rem }
.skip:focus { left: 1rem; top: .4rem; background: var(--paper); padding: .3rem .6rem; z-index: 2 }
main { position: relative; min-width: 0; min-height: 0; display: flex; flex-direction: column; background: var(--paper) }
aside { overflow: auto; padding: .8rem 1rem 2rem; border-left: 1px solid var(--rule) }
section { padding-bottom: .9rem; margin-bottom: .9rem; border-bottom: 1px solid var(--rule) }
section:last-child { border: 0 }
svg { flex: 1; min-height: 0; width: 100%; display: block; touch-action: none; cursor: grab }
svg.dragging { cursor: grabbing }
svg.measuring { cursor: crosshair }
:focus-visible { outline: 3px solid var(--mark); outline-offset: 1px }
svg:focus-visible { outline-offset: -3px }
button, select, input { font: inherit; color: inherit }
button, select { background: var(--paper); border: 1px solid #8d8b84; border-radius: 4px; padding: .25rem .55rem }
button:hover, select:hover { border-color: var(--ink) }
button:disabled { color: #9a9a96; border-color: var(--rule) }
label { display: block; padding: .1rem 0 }
input[type=range] { width: 100%; margin: .3rem 0 0; accent-color: var(--mark) }
input[type=checkbox], input[type=radio] { accent-color: var(--mark); margin-right: .45rem }
select { width: 100%; margin: .1rem 0 .35rem }
.row { display: flex; gap: .4rem; align-items: center; flex-wrap: wrap }
.stops { display: flex; justify-content: space-between; gap: .5rem; font-size: .8rem; color: var(--soft) }
#floor { position: relative }
#tools { position: absolute; left: .7rem; bottom: .6rem; display: flex; gap: .35rem }
#tools button { min-width: 2.2rem; min-height: 2.2rem }
#scale { position: absolute; right: .8rem; bottom: .6rem; font-size: .8rem; text-align: center; pointer-events: none; background: #fffc; padding: 0 .3rem }
#scale span { display: block; border: solid var(--ink); border-width: 0 1.5px 1.5px; height: 6px }
#about { min-height: 2.7rem; padding: .5rem .9rem; border-top: 1px solid var(--rule); font-size: .9rem; background: var(--desk) }
#result { display: block; min-height: 1.5em; font-weight: bold }
#more { margin: 0; font-size: .85rem; min-height: 1.4em }
ol { list-style: none; margin: 0; padding: 0 }
ol li { margin: 0 0 .55rem }
ol button { width: 100%; text-align: left; padding: .4rem .6rem }
ol .plain { padding: .4rem .6rem; border: 1px dotted #8d8b84; border-radius: 4px }
ol b { text-transform: uppercase; font-size: .72rem; letter-spacing: .06em; padding-right: .4rem }
li.is-error > * { border-width: 2px 2px 2px 6px; border-style: solid; border-color: var(--ink) }
li.is-warning > * { border-left-width: 6px }
li.is-error b::before { content: '\\25b2 ' }
li.is-warning b::before { content: '\\25b3 ' }
li .note { display: block }
pre { margin: .3rem 0 0; font-size: .78rem; white-space: pre-wrap; color: var(--soft) }
.version[hidden], .under .cutting, .under .lines, .under .labels, .under .seams, .fading .seams, .fading .labels { display: none }
.hide-stitching .stitching, .hide-cutting .cutting, .hide-darts .darts, .hide-notches .notches, .hide-lines .lines, .hide-labels .labels { display: none }
svg path { fill: none; stroke: var(--ink); stroke-width: 1; vector-effect: non-scaling-stroke; stroke-linejoin: round }
svg .solid { fill: var(--ink); stroke: none }
svg text { text-anchor: middle; fill: var(--ink) }
.labels, .names { pointer-events: none }
.cutting-line { stroke-width: 1.9 }
.stitching-line { stroke-width: 1.3; stroke-dasharray: 9 3 }
.fold-line { stroke-width: 1.7; stroke-dasharray: 18 4 4 4 }
.dart { stroke-dasharray: 6 3 }
.notch { stroke-width: 1.7 }
.balance-line { stroke-width: .6 }
.ease-stitching { stroke-width: .8; stroke-dasharray: 2 3 }
svg .under path { stroke: #77756e; stroke-width: .9; stroke-dasharray: 3 3 }
svg .name { font-weight: bold }
svg .seam { stroke: transparent; stroke-width: 14; pointer-events: stroke; outline: none }
svg .seam:hover, svg .seam.at { stroke: #1d4f7338 }
svg .seam:focus-visible { stroke: #1d4f7360; outline: none }
svg .seam.found { stroke: #1d4f7360 }
#measured path { stroke: var(--mark); stroke-width: 3.2; pointer-events: none }
#measured .straight { stroke-width: 1.4; stroke-dasharray: 2 3 }
#measured circle { fill: var(--paper); stroke: var(--mark); stroke-width: 2; vector-effect: non-scaling-stroke; pointer-events: none }
@media (max-width: 50rem) {
  body { grid-template: auto 60vh auto / 1fr; height: auto }
  aside { border-left: 0; border-top: 1px solid var(--rule) }
}
@media print {
  @page { margin: 12mm }
  body { display: block; height: auto; background: none; font-size: 10pt }
  header { padding: 0 0 3mm }
  main { display: block; break-inside: avoid }
  svg { width: 100%; height: 150mm }
  aside { border: 0; padding: 4mm 0 0; overflow: visible }
  #tools, #scale, #about, .skip, .screen { display: none !important }
  section { border: 0; margin: 0 }
  li { break-inside: avoid }
  ol button, ol .plain { border: 0 !important; padding: 0 }
  svg .seam { display: none }
}
`
