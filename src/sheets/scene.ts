import type { LengthUnit } from '../base/units.ts'
import type { Box } from '../geometry/bounds.ts'
import { movePath, type Path } from '../geometry/path.ts'
import { add, type Point } from '../geometry/point.ts'
import type { Estimate } from './estimate-words.ts'
import type { Segment } from './ink.ts'

/** What a mark means to a cutter; each kind has one look (house-style.ts), one SVG group and one PDF layer. */
export type MarkKind =
  | 'cutting line'
  | 'stitching line'
  | 'fold line'
  | 'dart'
  | 'notch'
  | 'grain line'
  | 'balance line'
  | 'ease stitching'
  | 'landmark'
  | 'line before'
  | 'line after'
  | 'move'
  | 'body outline'
  | 'tape'
  | 'piece outline'
  | 'blank'
  | 'help line'
  | 'earlier line'
  | 'new line'
  | 'label'
  | 'measured square'
  | 'calibration grid'
  | 'page frame'

/** From the bottom up: what must stay legible is drawn last. */
export const KIND_ORDER: readonly MarkKind[] = [
  'calibration grid',
  'body outline',
  'balance line',
  'ease stitching',
  'grain line',
  'help line',
  'earlier line',
  'new line',
  'line before',
  'line after',
  'dart',
  'stitching line',
  'fold line',
  'cutting line',
  'piece outline',
  'notch',
  'landmark',
  'move',
  'tape',
  'measured square',
  'blank',
  'page frame',
  'label',
]

/** The name of a group or a layer of the kind. */
export function pluralOf(kind: MarkKind): string {
  if (kind === 'ease stitching') return kind
  if (kind === 'line before' || kind === 'line after') return kind.replace('line', 'lines')
  return kind === 'notch' ? 'notches' : `${kind}s`
}

/** What every mark has. */
interface OfVersion {
  /** The version that the mark belongs to, where it is not the sheet's own: a layer of its own in a PDF. */
  readonly version?: string
}

/** Lines drawn with the pen of their kind. */
export interface StrokeMark extends OfVersion {
  /** Tells the marks apart. */
  readonly type: 'stroke'
  /** What it stands for; picks its pen and its layer. */
  readonly kind: MarkKind
  /** Unique in its group. */
  readonly id: string
  /** The lines, mm. */
  readonly paths: readonly Path[]
  /** True where each path runs back to its beginning. */
  readonly closed?: boolean
  /** Dashes that replace the pen's own, mm. */
  readonly dash?: readonly number[]
  /** Weight that replaces the pen's own, mm. */
  readonly weight?: number
}

/** A small solid shape: an arrow head. */
export interface FillMark extends OfVersion {
  /** Tells the marks apart. */
  readonly type: 'fill'
  /** What it stands for; picks its layer. */
  readonly kind: MarkKind
  /** Unique in its group. */
  readonly id: string
  /** The shape's edge, closed, mm. */
  readonly outline: Path
}

/** One line of text centered on its baseline, which passes through `at` in the direction `angle`. */
export interface TextMark extends OfVersion {
  /** Tells the marks apart. */
  readonly type: 'text'
  /** What it stands for; picks its layer. */
  readonly kind: MarkKind
  /** Unique in its group. */
  readonly id: string
  /** The words. */
  readonly text: string
  /** Middle of the baseline, mm. */
  readonly at: Point
  /** Direction of the baseline, radians anticlockwise from the right. */
  readonly angle: number
  /** Height of the em, mm. */
  readonly size: number
}

/** Anything drawn on a sheet. */
export type Mark = StrokeMark | FillMark | TextMark

/** A piece ready to be put on a sheet: its marks where the draft has them, and the box of all their ink. */
export interface PieceDrawing {
  /** Id of the piece. */
  readonly id: string
  /** Its name as printed, with its side. */
  readonly title: string
  /** What a reader that cannot see it is told. */
  readonly description: string
  /** Everything drawn, in the frame of the draft, mm. */
  readonly marks: readonly Mark[]
  /** Round all of it, pens and text included, mm. */
  readonly box: Box
  /** The same drawing with its text clear of these lines, in the drawing's frame, wherever there is room: of page edges. */
  readonly labelled?: (walls: readonly Segment[]) => PieceDrawing
}

/** A drawing moved to its place on a sheet: `at` is added to every point. */
export interface PlacedDrawing {
  /** The drawing as it was made. */
  readonly drawing: PieceDrawing
  /** How far it is moved, mm. */
  readonly at: Point
}

/** A whole sheet, y up, lower left corner at the origin: pieces, and the marks of the sheet itself. */
export interface Scene {
  /** What the labels say. */
  readonly info: SheetInfo
  /** mm. */
  readonly width: number
  /** mm. */
  readonly height: number
  /** The drawings, each in its place. */
  readonly pieces: readonly PlacedDrawing[]
  /** Marks that belong to no piece: the foot with its text and squares. */
  readonly sheet: readonly Mark[]
}

/** What the labels say besides the pattern. */
export interface SheetInfo {
  /** A role or a code, not a legal name. */
  readonly performer: string
  /** Name of the production. */
  readonly production?: string
  /** Which replay this is: `draft`, or the label of the last fitting applied. */
  readonly version: string
  /** Labels of the fittings applied, in order. */
  readonly fittings?: readonly string[]
  /** What must be said of them, a line each: fitted on a stand-in, corrections that no longer count. */
  readonly remarks?: readonly string[]
  /** Measures that were estimated, not taken. */
  readonly estimates?: readonly Estimate[]
  /** Day as printed, `2026-10-09`; none is printed when absent. */
  readonly date?: string
  /** Label of the version that is drawn thin under this one. */
  readonly under?: string
  /** The unit that labels speak in. */
  readonly units: LengthUnit
}

/** The mark shifted by a vector. */
export function moveMark(mark: Mark, by: Point): Mark {
  const move = (p: Point) => add(p, by)
  switch (mark.type) {
    case 'stroke':
      return { ...mark, paths: mark.paths.map((path) => movePath(path, move)) }
    case 'fill':
      return { ...mark, outline: movePath(mark.outline, move) }
    case 'text':
      return { ...mark, at: move(mark.at) }
  }
}

/** All marks of a placed drawing, in the sheet's frame. */
export function placedMarks(placed: PlacedDrawing): Mark[] {
  return placed.drawing.marks.map((mark) => moveMark(mark, placed.at))
}
