import { percent } from '../base/percent.ts'
import type { Finding } from '../base/problem.ts'
import { pathLength } from '../geometry/path-length.ts'
import type { Bodice } from './bodice.ts'
import type { Choices } from './choices.ts'
import { BUST_DART } from './defaults.ts'

/** What the draft did about the bust: where nobody measured it, where a choice was not used, where nothing is left for a dart. */
export function bustFindings({ frame, front }: Bodice, choices: Choices): Finding[] {
  const { bust } = frame
  const findings: Finding[] = []
  if (bust.from === 'estimated') {
    findings.push({
      code: 'bust-intake-estimated',
      severity: 'note',
      where: { piece: 'bodice front', seam: 'side seam' },
      actual: `a bust intake of ${bust.intake.toFixed(0)} mm, estimated (common practice)`,
      expected: 'a measured front waist length',
      hint: 'measure from the side of the neck over the bust point straight down to the waist',
    })
  }
  const given = choices.bustDart
  if (bust.from === 'measured' && given !== undefined && given !== 'eased') {
    findings.push({
      code: 'bust-dart-not-used',
      severity: 'warning',
      where: { field: 'draft.bust dart' },
      actual: `bust dart ${given === 'flat' ? 'flat' : `${given.toFixed(0)} mm`}; the front waist length asks for ${bust.intake.toFixed(0)} mm`,
      expected: 'a front waist length or a bust dart, not both',
      hint: 'the measure decides; leave the front waist length blank to draft the given bust dart',
    })
  }
  if (!front.side.dart && bust.intake > 0) {
    const share = bust.intake / front.side.parts.reduce((sum, part) => sum + pathLength(part), 0)
    findings.push({
      code: 'bust-intake-eased',
      severity: share > BUST_DART.eased.flat ? 'warning' : 'note',
      where: { piece: 'bodice front', seam: 'side seam' },
      actual: `the front side seam is ${bust.intake.toFixed(1)} mm longer than the back one`,
      expected: `a bust dart from ${BUST_DART.least} mm of intake on`,
      hint:
        share > BUST_DART.eased.flat
          ? `${percent(share)} of the seam to ease in: it gathers; draw the bust dart unless gathers are wanted`
          : 'ease the front side seam to the back one over the bust',
    })
  }
  if (given === 'eased' && bust.intake === 0) {
    findings.push({
      code: 'nothing-to-ease',
      severity: 'note',
      where: { field: 'draft.bust dart' },
      actual: 'bust dart: eased, but the front is no longer than the back',
      expected: 'a bust intake above zero',
      hint: 'leave it: the side seams are equal without easing',
    })
  }
  if (bust.balance < -BUST_DART.least) {
    findings.push({
      code: 'back-longer-than-front',
      severity: 'note',
      where: { field: 'body.front waist length' },
      actual: `the front is ${(-bust.balance).toFixed(0)} mm shorter than the back, and so is the front armscye`,
      expected: 'a front as long as the back, or longer',
      hint: 'right for a round or a long back; otherwise measure front waist length and back waist length again',
    })
  }
  return findings
}
