import type { ViewData } from '../view-data.ts'
import { byId } from './by-id.ts'

/** Which version is seen: at a stop of the slider one alone, between two stops both, the one fading into the other. */
export interface Versions {
  /** The version that is measured: the nearest stop. */
  readonly current: () => number
  readonly go: (stop: number) => void
  readonly onChange: (listener: () => void) => void
}

export function makeVersions(svg: SVGSVGElement, { versions }: ViewData): Versions {
  const groups = [...svg.querySelectorAll<SVGGElement>('.version')]
  const last = versions.length - 1
  const listeners: (() => void)[] = []
  const slider = document.querySelector<HTMLInputElement>('#when')
  const under = document.querySelector<HTMLSelectElement>('#under')
  const words = byId('when-label')
  let at = last
  const label = (k: number) => versions[k]?.label ?? ''
  const show = () => {
    const [before, after] = [Math.floor(at), Math.ceil(at)]
    const share = at - before
    groups.forEach((group, k) => {
      const isBelow = under !== null && under.value === String(k) && k !== before && k !== after
      const opacity = before === after ? 1 : k === before ? 1 - share : share
      group.toggleAttribute('hidden', k !== before && k !== after && !isBelow)
      group.classList.toggle('under', isBelow)
      group.classList.toggle('fading', before !== after && !isBelow)
      group.style.opacity = isBelow ? '1' : String(opacity)
    })
    const said =
      before === after
        ? label(before)
        : `${label(before)} fading into ${label(after)}: both as they are, nothing between them was drafted`
    words.textContent = said
    byId('shown').textContent = said
    if (slider) slider.setAttribute('aria-valuetext', said)
    byStep('earlier', at <= 0)
    byStep('later', at >= last)
    for (const listener of listeners) listener()
  }
  const go = (stop: number) => {
    at = Math.min(last, Math.max(0, stop))
    if (slider) slider.value = String(at)
    show()
  }
  slider?.addEventListener('input', () => go(Number(slider.value)))
  under?.addEventListener('change', show)
  document.querySelector('#earlier')?.addEventListener('click', () => go(Math.ceil(at) - 1))
  document.querySelector('#later')?.addEventListener('click', () => go(Math.floor(at) + 1))
  // A browser may have kept the slider of an earlier visit.
  go(last)
  return { current: () => Math.round(at), go, onChange: (listener) => listeners.push(listener) }
}

function byStep(id: string, disabled: boolean): void {
  const button = document.querySelector<HTMLButtonElement>(`#${id}`)
  if (button) button.disabled = disabled
}
