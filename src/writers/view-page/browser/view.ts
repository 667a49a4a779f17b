import type { ViewData } from '../view-data.ts'
import { byId } from './by-id.ts'
import { followFindings } from './findings.ts'
import { makeMeasuring } from './measuring.ts'
import { moveBy } from './moving.ts'
import { tellSeams } from './seam-info.ts'
import { makeStage, zoomFactor } from './stage.ts'
import { makeVersions } from './versions.ts'

const data = JSON.parse(byId('data').textContent ?? '') as ViewData
const svg = byId<SVGSVGElement>('drawing')
const stage = makeStage(svg, byId('scale'), data.units)
const versions = makeVersions(svg, data)
moveBy(stage, makeMeasuring(stage, versions, data))
tellSeams(stage)
followFindings(stage, versions, data.versions.length - 1)
byId('nearer').addEventListener('click', () => stage.zoom(zoomFactor))
byId('farther').addEventListener('click', () => stage.zoom(1 / zoomFactor))
byId('whole').addEventListener('click', stage.whole)
for (const box of document.querySelectorAll<HTMLInputElement>('input[name=layer]')) {
  const show = () => svg.classList.toggle(`hide-${box.value}`, !box.checked)
  box.addEventListener('change', show)
  show()
}
// Paper shows the whole of the drawing, whatever the screen showed.
window.addEventListener('beforeprint', stage.whole)
