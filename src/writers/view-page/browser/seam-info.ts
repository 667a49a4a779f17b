import { byId } from './by-id.ts'
import type { Stage } from './stage.ts'

/** What a seam that is pointed at, tapped or has the focus is, how long, and what it is sewn to. */
export function tellSeams({ svg }: Stage): void {
  const about = byId('about')
  const usual = about.textContent
  const say = (event: Event) => {
    const seam = seamAt(event)
    if (!seam) return
    about.textContent = seam.getAttribute('aria-label')
    for (const other of svg.querySelectorAll('.at')) other.classList.remove('at')
    seam.classList.add('at')
  }
  const leave = (event: Event) => {
    seamAt(event)?.classList.remove('at')
    const focused = document.activeElement?.closest('.seam')
    about.textContent = focused?.getAttribute('aria-label') ?? usual
  }
  svg.addEventListener('pointerover', say)
  svg.addEventListener('focusin', say)
  svg.addEventListener('pointerout', leave)
  svg.addEventListener('focusout', leave)
}

function seamAt({ target }: Event): Element | null {
  return target instanceof Element ? target.closest('.seam') : null
}
