import type { Bodice } from '../drafting/bodice.ts'
import type { BodiceHalf } from '../drafting/bodice-half.ts'
import { endOf } from '../geometry/path.ts'
import { point } from '../geometry/point.ts'
import { armscyeStep } from './armscye-step.ts'
import { bodiceMarks } from './bodice-marks.ts'
import { measureWords, type Source, withEase } from './measure-words.ts'
import { openPaper, type Paper, type PaperOptions } from './paper.ts'
import { neckStep, shoulderStep } from './shoulder-steps.ts'
import { bustDartPoint, sideSeamStep } from './side-seam-step.ts'
import type { Step } from './step.ts'
import { waistStep } from './waist-step.ts'

export interface BodiceSource extends Source {
  readonly part: 'back' | 'front'
  readonly bodice: Bodice
  readonly drawn: BodiceHalf
  /** Half of a piece that goes across the center, which is then no seam. */
  readonly whole: boolean
}

/** The names of the points that later steps measure from. */
export interface BodicePoints {
  readonly waist: string
  readonly neckEnd: string
  readonly level: string
  readonly underarm: string
  readonly foot: string
}

/** A bodice half in steps, from its center line outwards. */
export function bodiceSteps(
  part: 'back' | 'front',
  bodice: Bodice,
  source: Source,
  options: PaperOptions,
): readonly Step[] {
  const from: BodiceSource = { ...source, part, bodice, drawn: bodice[part], whole: options.suffix !== '' }
  const paper = openPaper(options)
  const points = frameStep(paper, from)
  const neck = neckStep(paper, from, points)
  const shoulder = shoulderStep(paper, from, neck)
  const dart = bustDartPoint(paper, from, points)
  const side = sideSeamStep(paper, from, points, dart)
  waistStep(paper, from, points, side)
  armscyeStep(paper, from, { ...points, ...shoulder, side: side.upper })
  bodiceMarks(paper, from, { ...points, side: side.waist })
  return paper.steps
}

/** Center line, levels and the width of the half. */
function frameStep(paper: Paper, from: BodiceSource): BodicePoints {
  const { part, bodice, drawn } = from
  const { underarm, width } = drawn.frame
  const pit = endOf(drawn.neckline)
  let waist = ''
  let neckEnd = ''
  let level = ''
  let corner = ''
  let foot = ''
  paper.step('Center line and levels', (step) => {
    const { say } = step
    waist = step.start(
      point(0, 0),
      `waist at the center ${part}`,
      `rule a line up the ${paper.center} edge of the paper, the center ${part}, and mark the point on it with room for an allowance below.`,
    )
    neckEnd =
      part === 'back'
        ? step.place(waist, pit, 'nape', `${measureWords(from, 'back waist length', say)}.`)
        : step.place(
            waist,
            pit,
            'front neck pit',
            'As far below the side of the neck as the neck is deep: see the next step.',
          )
    level = step.place(
      part === 'back' ? neckEnd : waist,
      point(0, underarm.y),
      'underarm level',
      part === 'back'
        ? `${withEase(from, 'scye depth', 'armscye depth', say)}.`
        : bodice.frame.bust.intake > 0
          ? `The level of the back, raised by ${say.given(bodice.frame.bust.intake)}, which ${drawn.side.dart ? 'the bust dart takes' : 'is eased into the side seam'} (${intakeWords(from)}): so both armscyes are equally deep.`
          : 'The level of the back.',
    )
    step.straight(waist, neckEnd, { id: `center ${part}`, ...(from.whole ? {} : { seam: `center ${part}` }) })
    for (const y of [0, pit.y, underarm.y]) step.guide(point(0, y), point(underarm.x, y))
    step.note(`Rule a level line through each of ${waist}, ${neckEnd} and ${level}.`)
  })
  paper.step('Width at the underarm', (step) => {
    const { say } = step
    const name = `${part} width` as const
    foot = step.place(
      level,
      point(width, underarm.y),
      `foot of the ${part} width line`,
      `Half of ${withEase(from, name, name, say)}.`,
    )
    corner = step.place(
      foot,
      underarm,
      'underarm point',
      `Half of the armscye width of ${say.given(bodice.frame.armscyeWidth)}, which is what back and front width leave of half the bust: half of ${withEase(from, 'bust girth', 'bust', say)}.`,
    )
    step.straight(level, corner, { id: 'underarm line' })
    step.guide(point(width, underarm.y), point(width, drawn.frame.shoulder.tip.y))
    step.note(`Rule the ${name} line upright from ${foot}.`)
  })
  return { waist, neckEnd, level, underarm: corner, foot }
}

function intakeWords({ bodice }: BodiceSource): string {
  const { from } = bodice.frame.bust
  if (from === 'measured') return 'by so much the measured front waist length is longer than the back'
  return from === 'given' ? 'as chosen' : 'an estimate, since the front waist length was not measured'
}
