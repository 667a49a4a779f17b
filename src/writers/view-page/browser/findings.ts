import type { Stage } from './stage.ts'
import type { Versions } from './versions.ts'
import { type Viewport, widened } from './viewport.ts'

/** Seen round a seam that a finding is about, mm. */
const AROUND = 40

interface Target {
  readonly piece: string
  readonly seam: string
}

/** What was found is marked until something else is done on the drawing. */
export function forgetFindings({ svg }: Stage): void {
  for (const found of svg.querySelectorAll('.found')) found.classList.remove('found')
}

/** A finding leads to its seam, or its piece, on the last version; the seam is marked and has the focus. */
export function followFindings(stage: Stage, versions: Versions, last: number): void {
  for (const button of document.querySelectorAll<HTMLButtonElement>('.finding')) {
    button.addEventListener('click', () => {
      versions.go(last)
      const targets = JSON.parse(button.dataset.seams ?? '[]') as readonly Target[]
      const all = [...stage.svg.querySelectorAll<SVGPathElement>(`.version[data-version="${last}"] .seam`)]
      forgetFindings(stage)
      const seams = all.filter(({ dataset }) =>
        targets.some((t) => t.piece === dataset.piece && t.seam === dataset.seam),
      )
      for (const seam of seams) seam.classList.add('found')
      // Of what is sewn together the first piece's seams are looked at; the others are marked as well.
      const piece = button.dataset.piece
      const looked = seams.filter(({ dataset }) => dataset.piece === piece)
      const box = boxOf(looked.length > 0 ? looked : all.filter(({ dataset }) => dataset.piece === piece))
      if (box) stage.fit(widened(box, AROUND))
      const first = looked[0] ?? all.find(({ dataset }) => dataset.piece === piece)
      first?.focus({ preventScroll: true })
      // On a narrow screen the drawing is above the list.
      stage.svg.scrollIntoView({ block: 'nearest' })
    })
  }
}

function boxOf(paths: readonly SVGPathElement[]): Viewport | undefined {
  if (paths.length === 0) return undefined
  const boxes = paths.map((path) => path.getBBox())
  const x = Math.min(...boxes.map((box) => box.x))
  const y = Math.min(...boxes.map((box) => box.y))
  return {
    x,
    y,
    width: Math.max(...boxes.map((box) => box.x + box.width)) - x,
    height: Math.max(...boxes.map((box) => box.y + box.height)) - y,
  }
}
