import type { ViewData } from '../view-data.ts'
import { byId } from './by-id.ts'
import { followFindings, forgetFindings } from './findings.ts'
import { makeMeasuring } from './measuring.ts'
import { moveBy } from './moving.ts'
import { tellSeams } from './seam-info.ts'
import { makeStage, ZOOM_STEP } from './stage.ts'
import { makeVersions } from './versions.ts'

const data = JSON.parse(byId('data').textContent ?? '') as ViewData
const svg = byId<SVGSVGElement>('drawing')
const stage = makeStage(svg, byId('scale'), data.units)
const versions = makeVersions(svg, data)
const measure = makeMeasuring(stage, versions, data)
moveBy(stage, (event) => {
  forgetFindings(stage)
  measure(event)
})
versions.onChange(() => forgetFindings(stage))
tellSeams(stage)
followFindings(stage, versions, data.versions.length - 1)
byId('nearer').addEventListener('click', () => stage.zoom(ZOOM_STEP))
byId('farther').addEventListener('click', () => stage.zoom(1 / ZOOM_STEP))
byId('whole').addEventListener('click', stage.whole)
for (const box of document.querySelectorAll<HTMLInputElement>('input[name=layer]')) {
  const show = () => svg.classList.toggle(`hide-${box.value}`, !box.checked)
  box.addEventListener('change', show)
  show()
}
// Paper shows the whole of the drawing, whatever the screen showed.
window.addEventListener('beforeprint', stage.whole)
