import type { Asked } from './change.ts'
import { draftLength, lessUpperArmEase, lowerCap, moreCapEase, moreEase, moreUpperArmEase } from './ease-ladders.ts'
import { type Ladder, type Maker, once, setDraft } from './ladder.ts'
import { leftOut, startAgain } from './leave-out.ts'
import { blank, larger, smaller } from './measure-ladders.ts'
import type { SidedProblem } from './sided-problem.ts'
import type { ChoicesTree } from './written-choices.ts'

/** What to try for a problem, each on its own; what works is offered in this order. Amounts: the most, mm. */
const LADDERS: Readonly<Record<string, readonly Maker[]>> = {
  'ease-out-of-range': [],
  'intake-out-of-range': [],
  'choices-disagree': [
    setDraft('draw two elbow darts', { 'elbow darts': 'two' }),
    setDraft('draw no elbow dart', { 'elbow darts': 'none', 'elbow intake': null }),
  ],
  'no-room-for-armscye': [
    moreEase('bust', 80),
    smaller('back width'),
    smaller('front width'),
    larger('bust girth'),
    blank('back width'),
    blank('front width'),
  ],
  'armscye-too-low': [
    larger('front waist length'),
    larger('scye depth'),
    smaller('back waist length'),
    blank('front waist length'),
    blank('shoulder slope'),
  ],
  'too-much-to-ease': [smaller('front waist length'), blank('front waist length')],
  'cap-too-low': [
    moreEase('armscye depth', 60),
    lessUpperArmEase,
    moreCapEase,
    lowerCap,
    draftLength('cap height', 'capHeight', 1, 200),
    draftLength('biceps width', 'bicepsWidth', -1, 200),
    smaller('upper arm girth'),
    larger('scye depth'),
    blank('upper arm girth flexed'),
  ],
  'no-such-cap': [
    draftLength('cap height', 'capHeight', 1, 200),
    draftLength('cap height', 'capHeight', -1, 200),
    draftLength('biceps width', 'bicepsWidth', 1, 200),
    draftLength('biceps width', 'bicepsWidth', -1, 200),
  ],
  'cap-too-short': [draftLength('cap height', 'capHeight', 1, 200), draftLength('biceps width', 'bicepsWidth', 1, 200)],
  'cap-contradicts-itself': [],
  'sleeve-narrower-than-arm': [
    draftLength('biceps width', 'bicepsWidth', 1, 300),
    draftLength('cap height', 'capHeight', -1, 200),
    moreUpperArmEase,
  ],
  'no-room-for-bust-dart': [
    easedBust,
    smaller('front waist length'),
    larger('neck to bust point'),
    smaller('bust point width'),
    blank('bust point width'),
    blank('neck to bust point'),
  ],
  'bust-point-too-low': [smaller('neck to bust point'), larger('front waist length'), blank('neck to bust point')],
  'back-too-short': [smaller('scye depth'), larger('back waist length'), blank('scye depth')],
  'no-room-for-waist-darts': [
    moreEase('waist', 150),
    smaller('bust girth'),
    larger('waist girth'),
    smaller('neck to bust point'),
    smaller('bust point width'),
  ],
  'bust-point-out-of-reach': [
    larger('neck to bust point'),
    smaller('bust point width'),
    blank('bust point width'),
    blank('neck to bust point'),
  ],
  'bust-point-beyond-side': [smaller('bust point width'), larger('bust girth'), blank('bust point width')],
  'elbow-out-of-place': [
    smaller('shoulder to elbow'),
    larger('shoulder to elbow'),
    draftLength('cap height', 'capHeight', -1, 300),
    larger('outer arm length'),
    blank('shoulder to elbow'),
  ],
  'no-room-for-elbow-darts': [
    setDraft('draw no elbow dart', { 'elbow darts': 'none', 'elbow intake': null }),
    moreEase('elbow', 120),
    larger('elbow girth'),
  ],
  'wrist-out-of-reach': [
    smaller('wrist girth'),
    larger('wrist girth'),
    moreEase('elbow', 150),
    blank('wrist girth'),
    blank('elbow girth'),
  ],
  'draft-does-not-settle': [moreEase('waist', 150), larger('waist girth'), blank('front waist length')],
}

/**
 * What to try for a problem. `own`: what belongs to it, then every choice of the file that could be left out. `last`,
 * for where nothing else works: to start again from what must be measured.
 */
export function laddersFor(
  { problem, side }: SidedProblem,
  asked: Asked,
): { readonly own: Ladder[]; readonly last: Ladder[] } {
  const own = (LADDERS[problem.code] ?? []).flatMap((make) => make(asked, side) ?? [])
  return {
    own: [...computed(problem.remedies), ...own, ...leftOut(asked.choices)],
    last: [startAgain(asked), startAgain(asked, true)],
  }
}

/** Remedies that were computed where the problem was found. */
function computed(remedies: SidedProblem['problem']['remedies'] = []): Ladder[] {
  return remedies.map(({ say, set }) => once({ say, draft: set.draft as ChoicesTree }))
}

function easedBust(): Ladder {
  const draft = { bust: null, 'bust dart': 'eased' }
  return once({ say: 'draw no bust dart: ease the front side seam to the back one', draft })
}
