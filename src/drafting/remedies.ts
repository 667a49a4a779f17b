import type { Problem, Remedy } from '../base/problem.ts'
import type { Body, BodyHalf } from '../body/body.ts'
import type { MeasureName } from '../body/measure.ts'
import type { Choices, EaseName } from './choices.ts'
import { easeFor } from './ease.ts'

/** A change of choices or measures that might make a problem go away. */
interface Attempt {
  readonly say: string
  readonly body: Body
  readonly choices: Choices
  readonly set: Remedy['set']
}

/** Tries one thing with growing amounts. */
type Search = (body: Body, choices: Choices) => Iterable<Attempt>

/** What to try for a problem, each on its own, gentlest first. */
const SEARCHES: Readonly<Record<string, readonly Search[]>> = {
  'no-room-for-armscye': [moreEase('bust', 80), smallerMeasure('back width'), smallerMeasure('front width')],
  'cap-too-low': [moreEase('armscye depth', 60), lessUpperArmEase, lowerCap],
  'no-room-for-bust-dart': [easedBust],
  'bust-point-too-low': [smallerMeasure('neck to bust point'), largerMeasure('front waist length')],
  'back-too-short': [smallerMeasure('scye depth'), largerMeasure('back waist length')],
  'no-room-for-waist-darts': [moreEase('waist', 150), smallerMeasure('bust girth'), largerMeasure('waist girth')],
  'bust-point-out-of-reach': [largerMeasure('neck to bust point'), smallerMeasure('bust point width')],
  'elbow-out-of-place': [smallerMeasure('shoulder to elbow'), largerMeasure('shoulder to elbow')],
}

/**
 * The problem with the remedies that work: each is the smallest step of its kind with which the pattern drafts,
 * found by drafting (`drafts` says whether a body with these choices does).
 */
export function withRemedies(
  problem: Problem,
  body: Body,
  choices: Choices,
  drafts: (body: Body, choices: Choices) => boolean,
): Problem {
  const searches = SEARCHES[problem.code]
  if (!searches || problem.remedies) return problem
  const remedies = searches.flatMap((search) => {
    for (const attempt of search(body, choices)) {
      if (drafts(attempt.body, attempt.choices)) return [{ say: attempt.say, set: attempt.set }]
    }
    return []
  })
  return { ...problem, remedies }
}

/** Steps of 2 mm: finer than anyone pins, coarse enough to be found at once. */
const STEP = 2

function moreEase(name: EaseName, most: number): Search {
  return function* (body, choices) {
    const present = easeFor(choices, name)
    for (let by = STEP; by <= most; by += STEP) {
      const ease = present + by
      yield {
        say: `${name} ease ${text(ease)} instead of ${text(present)}`,
        body,
        choices: { ...choices, ease: { ...choices.ease, [name]: ease } },
        set: { draft: { ease: { [name]: text(ease) } } },
      }
    }
  }
}

/** Relaxed and flexed ease go down together, whichever decides; a sleeve as tight as the arm is no remedy. */
function* lessUpperArmEase(body: Body, choices: Choices): Iterable<Attempt> {
  const relaxed = easeFor(choices, 'upper arm')
  const flexed = easeFor(choices, 'upper arm flexed')
  for (let by = STEP; by < Math.min(relaxed, flexed); by += STEP) {
    const ease = { 'upper arm': relaxed - by, 'upper arm flexed': flexed - by }
    yield {
      say: `upper arm ease ${text(ease['upper arm'])} instead of ${text(relaxed)}`,
      body,
      choices: { ...choices, ease: { ...choices.ease, ...ease } },
      set: { draft: { ease: { 'upper arm': text(ease['upper arm']), 'upper arm flexed': text(ease['upper arm flexed']) } } },
    }
  }
}

function* lowerCap(body: Body, choices: Choices): Iterable<Attempt> {
  for (let percent = 14; percent >= 6; percent--) {
    yield {
      say: `accept a cap as low as ${percent} % of the armscye: a wide sleeve that folds under a hanging arm`,
      body,
      choices: { ...choices, leastCapRatio: percent / 100 },
      set: { draft: { 'least cap height': `${percent} %` } },
    }
  }
}

function* easedBust(body: Body, choices: Choices): Iterable<Attempt> {
  yield {
    say: 'draw no bust dart: ease the front side seam to the back one',
    body,
    choices: { ...choices, bustDart: 'eased' },
    set: { draft: { 'bust dart': 'eased' } },
  }
}

function smallerMeasure(name: MeasureName): Search {
  return (body, choices) => measureSteps(name, -1, body, choices)
}

function largerMeasure(name: MeasureName): Search {
  return (body, choices) => measureSteps(name, 1, body, choices)
}

/** A measure up to a quarter off what was given: farther off it was not a slip of the tape. */
function* measureSteps(name: MeasureName, sign: 1 | -1, body: Body, choices: Choices): Iterable<Attempt> {
  const { left, right } = body
  const present = right[name]?.value
  // Apart left and right, one value for both would lose one of them.
  if (present === undefined || left[name]?.value !== present) return
  for (let by = STEP; by <= present / 4; by += STEP) {
    const value = present + sign * by
    yield {
      say: `${name} ${text(value)}, if that is what the tape says: now ${text(present)}`,
      body: { left: withMeasure(left, name, value), right: withMeasure(right, name, value) },
      choices,
      set: { body: { [name]: text(value) } },
    }
  }
}

function withMeasure(half: BodyHalf, name: MeasureName, value: number): BodyHalf {
  return { ...half, [name]: { value, estimated: false } }
}

/** A length as a performer file reads it in any unit, to a micrometre. */
function text(mm: number): string {
  return `${Math.round(mm * 1000) / 1000} mm`
}
