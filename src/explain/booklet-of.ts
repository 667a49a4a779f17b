import type { LengthUnit } from '../base/units.ts'
import type { Booklet, BookletSection } from '../sheets/booklet.ts'
import { saidEstimate } from '../sheets/estimate-words.ts'
import type { SheetInfo } from '../sheets/scene.ts'
import { drawStep } from './draw-step.ts'
import type { Section } from './step.ts'

const RULERS: Readonly<Record<LengthUnit, string>> = {
  in: 'All lengths are to the nearest sixteenth of an inch.',
  cm: 'All lengths are to the nearest millimetre.',
  mm: 'All lengths are to the nearest millimetre.',
}

/** The sections as a booklet: a picture for every step that draws something, and how to read it all in front. */
export function bookletOf(sections: readonly Section[], info: SheetInfo): Booklet {
  const estimates = (info.estimates ?? []).map(saidEstimate)
  return {
    info,
    title: [info.production, info.performer].filter((part) => part !== undefined).join(' · '),
    subtitle: ['the draft by hand', 'before any fitting', info.date].filter((part) => part !== undefined).join(', '),
    introduction: [
      'You need paper, a long ruler, a set square and a curve. Every point has a letter; letters begin again on each paper. “From B so much right and so much up” is: along the level through B to the right, then square up. Measure from the point as you have drawn it: roundings are taken up at the next point.',
      `For a curve rule the chord thin from letter to letter, divide it into equal parts, and at each mark measure square from the chord to the side that is said; then draw one smooth line through all of it. It leaves and arrives in the directions given. ${RULERS[info.units]}`,
      'In the pictures the new lines are heavy, what was there is thin, and what only helps is dashed. All lines are stitching lines: seam allowances come last.',
      ...(estimates.length > 0 ? [`Not measured but estimated: ${estimates.join(', ')}.`] : []),
      'Shears and points away from hands and skin. Measurements are confidential.',
    ],
    sections: sections.map(sectionOf),
  }
}

function sectionOf({ piece, title, suffix, steps }: Section): BookletSection {
  return {
    id: `${piece}${suffix}`,
    title,
    steps: steps.map((step, k) => {
      const picture = drawStep(steps, k)
      return {
        heading: `${step.number}. ${step.title}`,
        lines: step.lines,
        ...(picture === undefined ? {} : { picture }),
      }
    }),
  }
}
