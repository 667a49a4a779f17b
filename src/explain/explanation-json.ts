import { rounded } from '../base/rounded.ts'
import type { Point } from '../geometry/point.ts'
import type { Chord, Direction, DrawnLine, Placing, Run, SaidNumber, Section, Step, StepLine } from './step.ts'

type Xy = readonly [number, number]

/** The contract `explain/1`; mm, to a millionth. Fields may be added, never renamed. */
export interface ExplanationJson {
  /** Name and number of the contract. */
  readonly scyewright: 'explain/1'
  /** A role or a code. */
  readonly performer: string
  /** Absent where the file names none. */
  readonly production?: string
  /** Of all lengths. */
  readonly unit: 'mm'
  /** The axis that points up. */
  readonly up: 'y'
  /** What the reader's ruler shows: lengths are multiples of it, mm. */
  readonly ruler: number
  /** One for each paper, the checks last. */
  readonly sections: readonly SectionJson[]
  /** Names of the files written. */
  readonly files: readonly string[]
}

/** The steps of one paper. */
export interface SectionJson {
  /** Id of the piece in `pattern/1`; `checks` for the walk by hand. */
  readonly piece: string
  /** Its heading. */
  readonly title: string
  /** In their order. */
  readonly steps: readonly StepJson[]
}

/** One step: its words, and the same as numbers. */
export interface StepJson {
  /** From 1 on each paper. */
  readonly number: number
  /** Its heading. */
  readonly title: string
  /** What is printed. */
  readonly lines: readonly StepLine[]
  /** Every number of the words, in their order. */
  readonly numbers: readonly SaidNumber[]
  /** Points that the step marks. */
  readonly points: readonly {
    /** Its letter. */
    readonly name: string
    /** What it is called in the trade. */
    readonly what: string
    /** How it is found. */
    readonly placing: Placing
    /** Where the draft has it, in the frame of `pattern/1`. */
    readonly at: Xy
  }[]
  /** Lines that the step draws. */
  readonly draw: readonly {
    /** Its name. */
    readonly id: string
    /** The seam that it is a part of. */
    readonly seam?: string
    /** The dart whose leg it is. */
    readonly dart?: string
    /** From where to where, and how it curves. */
    readonly run: Run
  }[]
  /** Notches that the step marks. */
  readonly notches: readonly {
    /** Its id in the pattern. */
    readonly id: string
    /** The seam that it lies on. */
    readonly seam: string
    /** The point from which it is measured along the seam. */
    readonly from: string
    /** How far, mm. */
    readonly along: number
    /** Number of marks. */
    readonly marks: number
    /** From one mark to the next, away from the point, mm. */
    readonly step?: number
    /** Where the draft has the marks. */
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

/** Engines differ in the last bits of a sine. */
function millionth(mm: number): number {
  return rounded(mm, 6)
}
