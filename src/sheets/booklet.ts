import type { Mark, SheetInfo } from './scene.ts'

/** A small picture: marks in mm, y up, lower left corner at the origin. */
export interface Picture {
  readonly width: number
  readonly height: number
  readonly marks: readonly Mark[]
  /** What it shows, for those who cannot see it. */
  readonly description: string
}

export interface BookletLine {
  readonly text: string
  /** The reason, set small. */
  readonly why?: string
}

/** One step: heading, words, and a picture beside them. */
export interface BookletStep {
  readonly heading: string
  readonly lines: readonly BookletLine[]
  readonly picture?: Picture
}

export interface BookletSection {
  readonly id: string
  readonly title: string
  readonly steps: readonly BookletStep[]
}

/** Instructions in steps, to be read on paper or on a screen. */
export interface Booklet {
  readonly info: SheetInfo
  readonly title: string
  readonly subtitle: string
  /** How to read it, before the first section. */
  readonly introduction: readonly string[]
  readonly sections: readonly BookletSection[]
}
