import type { BodyHalf } from '../body/body.ts'
import { measureOf } from '../body/body.ts'
import type { MeasureName } from '../body/measure.ts'
import type { Choices, EaseName } from '../drafting/choices.ts'
import { easeFor } from '../drafting/ease.ts'
import type { Speaker } from './said.ts'

/** What the words of a step are drawn from. */
export interface Source {
  readonly half: BodyHalf
  readonly choices: Choices
}

/** `back width 14⅝″`, with `(estimated)` where nobody took it. */
export function measureWords(source: Source, name: MeasureName, say: Speaker): string {
  const value = measureOf(source.half, name)
  const estimated = source.half[name]?.estimated ? ' (estimated)' : ''
  return `${name} ${name === 'shoulder slope' ? say.angle(value) : say.given(value)}${estimated}`
}

/** `back width 14⅝″ + ½″ back width ease`; the measure alone where there is no ease. */
export function withEase(source: Source, name: MeasureName, ease: EaseName, say: Speaker): string {
  return `${measureWords(source, name, say)}${plusEase(easeFor(source.choices, ease), ease, say)}`
}

export function plusEase(mm: number, ease: EaseName, say: Speaker): string {
  if (mm === 0) return ', without ease'
  return ` ${mm < 0 ? '−' : '+'} ${say.given(Math.abs(mm))} ${ease} ease`
}
