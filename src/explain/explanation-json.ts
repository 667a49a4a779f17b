import type { Point } from '../geometry/point.ts'
import type { Chord, Direction, DrawnLine, Placing, Run, SaidNumber, Section, Step, StepLine } from './step.ts'

type Xy = readonly [number, number]

/** The contract `explain/1`; mm, to a millionth. Fields may be added, never renamed. */
export interface ExplanationJson {
  readonly scyewright: 'explain/1'
  readonly performer: string
  readonly production?: string
  readonly unit: 'mm'
  readonly up: 'y'
  /** What the reader's ruler shows: lengths are multiples of it, mm. */
  readonly ruler: number
  readonly sections: readonly SectionJson[]
  readonly files: readonly string[]
}

export interface SectionJson {
  readonly piece: string
  readonly title: string
  readonly steps: readonly StepJson[]
}

export interface StepJson {
  readonly number: number
  readonly title: string
  readonly lines: readonly StepLine[]
  readonly numbers: readonly SaidNumber[]
  readonly points: readonly { readonly name: string; readonly what: string; readonly placing: Placing; readonly at: Xy }[]
  readonly draw: readonly { readonly id: string; readonly seam?: string; readonly dart?: string; readonly run: Run }[]
  readonly notches: readonly {
    readonly id: string
    readonly seam: string
    readonly from: string
    readonly along: number
    readonly marks: number
    readonly step?: number
    readonly at: readonly Xy[]
  }[]
}

/** The sections of an explanation as plain data, in the order of the contract. */
export function sectionJson({ piece, title, steps }: Section): SectionJson {
  return { piece, title, steps: steps.map(stepJson) }
}

function stepJson({ number, title, lines, numbers, points, drawn, notches }: Step): StepJson {
  return {
    number,
    title,
    lines,
    numbers: numbers.map((said) => ({ ...said, value: millionth(said.value) })),
    points: points.map(({ name, what, placing, at }) => ({ name, what, placing: placingJson(placing), at: pair(at) })),
    draw: drawn.map(drawJson),
    notches: notches.map(({ step, at, ...notch }) => ({
      ...notch,
      along: millionth(notch.along),
      ...(step === undefined ? {} : { step: millionth(step) }),
      at: at.map(pair),
    })),
  }
}

function placingJson(placing: Placing): Placing {
  switch (placing.how) {
    case 'start':
      return placing
    case 'square':
      return { ...placing, across: millionth(placing.across), up: millionth(placing.up) }
    case 'toward':
      return { ...placing, by: millionth(placing.by) }
  }
}

function drawJson({ id, seam, dart, run }: DrawnLine): StepJson['draw'][number] {
  return { id, ...(seam === undefined ? {} : { seam }), ...(dart === undefined ? {} : { dart }), run: runJson(run) }
}

function runJson(run: Run): Run {
  if (run.kind === 'straight') return run
  const { leaving, arriving, chords } = run
  return { ...run, leaving: directionJson(leaving), arriving: directionJson(arriving), chords: chords.map(chordJson) }
}

function directionJson(direction: Direction): Direction {
  return 'across' in direction ? { across: millionth(direction.across), up: millionth(direction.up) } : direction
}

function chordJson(chord: Chord): Chord {
  return { ...chord, offsets: chord.offsets.map(millionth) }
}

function pair({ x, y }: Point): Xy {
  return [millionth(x), millionth(y)]
}

/** So that rounding does not differ between machines; 0 is never negative. */
function millionth(mm: number): number {
  return Math.round(mm * 1e6) / 1e6 + 0
}
