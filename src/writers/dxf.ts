import { type Box, joinBoxes } from '../geometry/bounds.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import { mirrorPathX } from '../geometry/transform.ts'
import { cutLine } from '../pattern/cut-line.ts'
import type { Pattern } from '../pattern/pattern.ts'
import { drawnSide, otherSide } from '../pattern/side-names.ts'
import { everyPieceWhole, wantedPieces } from '../sheets/cut-pieces.ts'
import type { SheetInfo } from '../sheets/scene.ts'
import { insertEntity, LAYERS, lineEntity, textEntity } from './dxf-entities.ts'
import { type Group, groupsText } from './dxf-groups.ts'
import { dxfPiece } from './dxf-piece.ts'

/** What the texts say, and which pieces are written. */
export interface DxfOptions extends SheetInfo {
  /** Ids of the pieces wanted; `sleeve` also means `sleeve left` and `sleeve right`. All when absent. */
  readonly pieces?: readonly string[]
}

/** Clear space between pieces, with the texts under them, mm. */
const GAP = 40

/** The line to measure after reading the file elsewhere: a wrong unit shows at once, mm. */
const REFERENCE = 100

/**
 * The pieces for a cutter, in the layers of ASTM D6673 (see `LAYERS`): DXF of release 12 in ASCII, mm, $INSUNITS 4 and
 * a reference line of 100 mm. One block and one insert for each piece of cloth: a pair is written as its left and its
 * right piece, because a quantity of 2 does not say that the second is mirrored; a piece on the fold is written whole,
 * its center on the mirror layer. Curves are polylines within 0.05 mm, coordinates rounded to 1e-4 mm. Same input, same
 * bytes. Throws on a piece that is not there. Written here because no library among the dependencies writes DXF, and it
 * must run in a browser, too.
 */
export function writeDxf(pattern: Pattern, options: DxfOptions): string {
  const mirrors = foldsOf(pattern)
  const cuts = pairCuts(pattern)
  const whole = everyPieceWhole(pattern)
  const blocks: Group[][] = []
  const inserts: Group[][] = []
  let box: Box = { left: 0, bottom: -GAP, right: REFERENCE, top: 0 }
  let x = 0
  for (const piece of wantedPieces(whole, options.pieces)) {
    const lines = { cut: cuts.get(piece.id) ?? cutLine(piece), mirror: mirrors.get(piece.id) }
    const drawn = dxfPiece(whole, piece, lines, options)
    const name = piece.id.toUpperCase().replace(/[^A-Z0-9]+/g, '-')
    const by: Point = { x: x - drawn.box.left, y: GAP - drawn.box.bottom }
    blocks.push(block(name, drawn.entities))
    inserts.push(insertEntity(name, by))
    box = joinBoxes(box, {
      left: x,
      bottom: GAP,
      right: drawn.box.right + by.x,
      top: drawn.box.top + by.y,
    })
    x += drawn.box.right - drawn.box.left + GAP
  }
  return groupsText([
    ...section('HEADER', header(box)),
    ...section('TABLES', tables()),
    ...section('BLOCKS', blocks.flat()),
    ...section('ENTITIES', [...inserts.flat(), ...reference(), ...systemTexts(options)]),
    [0, 'EOF'],
  ])
}

/** The line that each piece on the fold is opened along, by the piece. */
function foldsOf(pattern: Pattern): ReadonlyMap<string, string> {
  return new Map(
    pattern.pieces.flatMap((piece) => {
      const fold = piece.side === 'fold' ? piece.seams.find((seam) => seam.allowance === 0) : undefined
      return fold ? [[piece.id, fold.id] as const] : []
    }),
  )
}

/** The cutting lines of every pair by their ids once apart: the other side's is the same line mirrored, to the digit. */
function pairCuts(pattern: Pattern): ReadonlyMap<string, Path> {
  return new Map(
    pattern.pieces.flatMap((piece) => {
      if (piece.side !== 'pair') return []
      const cut = cutLine(piece)
      const drawn = drawnSide(piece)
      return [[`${piece.id} ${drawn}`, cut] as const, [`${piece.id} ${otherSide(drawn)}`, mirrorPathX(cut)] as const]
    }),
  )
}

function section(name: string, groups: readonly Group[]): Group[] {
  return [[0, 'SECTION'], [2, name], ...groups, [0, 'ENDSEC']]
}

function header(box: Box): Group[] {
  return [
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, 4],
    [9, '$EXTMIN'],
    [10, box.left],
    [20, box.bottom],
    [30, 0],
    [9, '$EXTMAX'],
    [10, box.right],
    [20, box.top],
    [30, 0],
  ]
}

function tables(): Group[] {
  const layers = Object.values(LAYERS)
  return [
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, 1],
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, 0],
    [3, 'Solid line'],
    [72, 65],
    [73, 0],
    [40, 0],
    [0, 'ENDTAB'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, layers.length],
    ...layers.flatMap((layer): Group[] => [
      [0, 'LAYER'],
      [2, layer],
      [70, 0],
      [62, 7],
      [6, 'CONTINUOUS'],
    ]),
    [0, 'ENDTAB'],
  ]
}

function block(name: string, entities: readonly Group[]): Group[] {
  return [
    [0, 'BLOCK'],
    [8, LAYERS.boundary],
    [2, name],
    [70, 0],
    [10, 0],
    [20, 0],
    [30, 0],
    [3, name],
    ...entities,
    [0, 'ENDBLK'],
    [8, LAYERS.boundary],
  ]
}

function reference(): Group[] {
  return [
    ...lineEntity(LAYERS.annotation, { x: 0, y: 0 }, { x: REFERENCE, y: 0 }),
    ...textEntity({ x: 0, y: 2 }, 3, `Reference line: ${REFERENCE} mm`),
  ]
}

function systemTexts(info: SheetInfo): Group[] {
  const texts = [
    'UNITS: METRIC',
    `Style Name: ${[info.production, info.performer].filter((part) => part !== undefined).join(' - ')}`,
    ...(info.date === undefined ? [] : [`Creation Date: ${info.date}`]),
  ]
  return texts.flatMap((text, k) => textEntity({ x: 0, y: -8 - 6 * k }, 3, text))
}
