import type { Problem } from '../base/problem.ts'
import type { BodySide } from '../base/side.ts'
import type { Body } from '../body/body.ts'
import { MEASURES, type MeasureName } from '../body/measure.ts'

/** A problem of one half of the body, or of both. */
export interface SidedProblem {
  readonly problem: Problem
  /** Absent where both halves have it alike. */
  readonly side?: BodySide
}

/** The problems of both halves: what they have alike once, the others each with its side in words and place. */
export function bothProblems(left: readonly Problem[], right: readonly Problem[], body: Body): SidedProblem[] {
  const alike = (a: Problem) => (b: Problem) => a.code === b.code && a.actual === b.actual
  const of = (problem: Problem, side: BodySide): SidedProblem => ({ side, problem: onSide(problem, side, body) })
  return [
    ...right.map((problem) => (left.some(alike(problem)) ? { problem } : of(problem, 'right'))),
    ...left.filter((problem) => !right.some(alike(problem))).map((problem) => of(problem, 'left')),
  ]
}

function onSide(problem: Problem, side: BodySide, body: Body): Problem {
  return { ...problem, where: placeOn(problem.where, side, body), actual: `${side}: ${problem.actual}` }
}

/** `body.upper arm girth.left` where the file gives left and right apart. */
function placeOn(where: Problem['where'], side: BodySide, { left, right }: Body): Problem['where'] {
  const [, name] = /^body\.(.+)$/.exec(where.field ?? '') ?? []
  if (name === undefined || !(name in MEASURES)) return where
  const measure = name as MeasureName
  const apart = MEASURES[measure].sided && left[measure]?.value !== right[measure]?.value
  return apart ? { ...where, field: `${where.field}.${side}` } : where
}
