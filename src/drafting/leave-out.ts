import type { Asked, Change } from './change.ts'
import type { Choices } from './choices.ts'
import { CAP } from './defaults.ts'
import { type Ladder, once } from './ladder.ts'
import { takenWithoutNeed } from './measure-ladders.ts'
import type { ChoicesTree } from './written-choices.ts'

const GIVEN = [
  ['bicepsWidth', 'biceps width', 'what else is given then decides it'],
  ['capHeight', 'cap height', 'what else is given then decides it'],
  ['bustDart', 'bust dart', 'the measures or an estimate then decide it'],
  ['elbowIntake', 'elbow intake', 'the usual one'],
  ['elbowDarts', 'elbow darts', 'the usual two'],
  ['shoulderDart', 'shoulder dart', 'the back shoulder is then eased'],
  ['leastCapRatio', 'least cap height', `${CAP.leastRatio * 100} % of the armscye`],
] as const satisfies readonly (readonly [keyof Choices, string, string])[]

/** Each choice of the file left out, for the draft's own. */
export function leftOut(choices: Choices): Ladder[] {
  return [...easeLeftOut(choices), ...choicesLeftOut(choices)].map(([say, draft]) => once({ say, draft }))
}

type LeftOut = readonly [say: string, draft: ChoicesTree]

function easeLeftOut({ ease, capEase }: Choices): LeftOut[] {
  return [
    ...Object.keys(ease).map((name): LeftOut => [`leave the ${name} ease out: the fit's own`, { [name]: null }]),
    ...(capEase === undefined ? [] : [["leave the cap ease out: the cloth's own", { cap: null }] satisfies LeftOut]),
  ].map(([say, draft]) => [say, { ease: draft }])
}

function choicesLeftOut(choices: Choices): LeftOut[] {
  return GIVEN.filter(([key]) => choices[key] !== undefined).map(([, name, instead]) => [
    `leave the ${name} out: ${instead}`,
    // The same choice has two spellings.
    name === 'bust dart' ? { [name]: null, bust: null } : { [name]: null },
  ])
}

/** Everything blank that need not be measured; with `choicesToo` every ease and choice of the file left out as well. */
export function startAgain(asked: Asked, choicesToo = false): Ladder {
  const names = takenWithoutNeed(asked)
  const blank = names.length > 0 ? names.join(', ') : 'nothing'
  const change: Change = {
    say: `measure again; until then leave blank what can be estimated (${blank})`,
    body: Object.fromEntries(names.map((name) => [name, null])),
  }
  if (!choicesToo) return once(change)
  const ease = Object.assign({}, ...easeLeftOut(asked.choices).map(([, draft]) => draft.ease)) as ChoicesTree
  const others = Object.assign({}, ...choicesLeftOut(asked.choices).map(([, draft]) => draft)) as ChoicesTree
  return once({
    ...change,
    say: `${change.say}, and take the draft's own ease and darts`,
    draft: { ...others, ease },
  })
}
