import type { Problem, Remedy } from '../../src/base/problem.ts'
import type { GivenMeasures } from '../../src/body/given.ts'
import type { Draft } from '../../src/drafting/draft.ts'
import { distance } from '../../src/geometry/point.ts'
import type { Piece } from '../../src/pattern/piece.ts'
import { seamEnd, seamLength, seamOf, seamStart } from '../../src/pattern/seam.ts'
import { performerFile, tryFile } from './try-body.ts'

/** What became of one body; plain data, to be sent from one process to another. */
export interface BodyReport {
  readonly id: string
  readonly drafted: boolean
  /** What is wrong with the pattern, or with the problems and their remedies; empty when all is well. */
  readonly faults: readonly string[]
  readonly exception?: string
  readonly problems: readonly ProblemReport[]
  /** Of a drafted pattern, by name. */
  readonly figures: Readonly<Record<string, number>>
}

export interface ProblemReport {
  readonly code: string
  readonly actual: string
  /** How many remedies give a pattern without a fault when applied; and those that leave their problem or draft with a fault. */
  readonly remedies: number
  readonly offered: number
  readonly failed: readonly string[]
}

export interface SurveyOptions {
  readonly choices?: Remedy['set']
  /** Whether armscyes and caps must be free of spikes; a body that nobody has may have one. */
  readonly fair?: boolean
}

/** Drafts a body from its file; every remedy of every problem is applied, and what it drafts is checked as strictly. */
export function surveyBody(id: string, given: GivenMeasures, options: SurveyOptions = {}): BodyReport {
  const { choices = {}, fair = true } = options
  const nothing = { id, drafted: false, faults: [], problems: [], figures: {} }
  try {
    const outcome = tryFile(performerFile(given, choices), { fair })
    if (outcome.kind === 'drafted') {
      const figures = figuresOf(outcome.draft)
      const strange = Object.entries(figures).filter(([, value]) => !Number.isFinite(value))
      const faults = [...outcome.faults, ...strange.map(([name, value]) => `${name} is ${value}`)]
      return { ...nothing, drafted: true, faults, figures }
    }
    const problems = outcome.problems.map((problem) => problemReport(problem, given, choices, fair))
    return { ...nothing, problems, faults: [...silence(outcome.problems), ...problems.flatMap(fault)] }
  } catch (error) {
    return { ...nothing, exception: error instanceof Error ? (error.stack ?? error.message) : String(error) }
  }
}

function problemReport(problem: Problem, given: GivenMeasures, choices: Remedy['set'], fair: boolean): ProblemReport {
  const failed: string[] = []
  let remedies = 0
  for (const remedy of problem.remedies ?? []) {
    const again = tryFile(performerFile(given, choices, remedy.set), { fair })
    const wrong = again.kind === 'drafted' ? again.faults : again.problems.map((p) => `${p.code}: ${p.actual}`)
    if (wrong.length === 0) remedies++
    // Where several measures are off, one remedy may bring the next problem to light; its own must be gone.
    const isSolved = again.kind === 'problems' && again.problems.every(({ code }) => code !== problem.code)
    if (wrong.length > 0 && !isSolved) failed.push(`${remedy.say} → ${wrong.join('; ')}`)
  }
  return { code: problem.code, actual: problem.actual, remedies, offered: (problem.remedies ?? []).length, failed }
}

/** A problem that does not say where, what and how to go on leaves the draper as helpless as none. */
function silence(problems: readonly Problem[]): string[] {
  if (problems.length === 0) return ['neither a pattern nor a problem']
  return problems
    .filter(({ hint, where, actual, expected }) => {
      const place = where.line ?? where.field ?? where.piece
      return hint.length <= 10 || place === undefined || actual === '' || expected === ''
    })
    .map(({ code }) => `${code} does not say where, what and how to go on`)
}

function fault({ code, failed }: ProblemReport): string[] {
  return failed.map((what) => `remedy of ${code} fails: ${what}`)
}

function figuresOf({ pattern, measures }: Draft): Record<string, number> {
  const [back, front, sleeve] = pattern.pieces as [Piece, Piece, Piece]
  const armscye = seamLength(seamOf(back, 'armscye')) + seamLength(seamOf(front, 'armscye'))
  const cap = seamOf(sleeve, 'front cap')
  const backUnderarm = seamEnd(seamOf(sleeve, 'back cap')).x
  return {
    'cap height ratio': seamEnd(cap).y / armscye,
    'grain shift, mm': -(seamStart(cap).x + backUnderarm) / 2,
    'armscye width, mm': armscyeWidth(back) + armscyeWidth(front),
    'elbow intake, mm': sleeve.darts.reduce((sum, dart) => sum + distance(...dart.mouth), 0),
    'measure missed by, mm': Math.max(...measures.map((row) => Math.abs(row.drafted - row.asked))),
  }
}

/** From the width line to the side seam at the underarm. */
function armscyeWidth(piece: Piece): number {
  const line = piece.lines.find((l) => l.id.endsWith('width line'))
  return seamStart(seamOf(piece, 'armscye')).x - (line?.path[0]?.p0.x ?? Number.NaN)
}
