import type { BodySide } from '../base/side.ts'
import type { Body } from '../body/body.ts'
import { distance } from '../geometry/point.ts'
import type { Piece, Seam } from '../pattern/piece.ts'
import { pointOnSeam, seamLength } from '../pattern/seam.ts'
import type { Check, CheckContext, Found } from './check.ts'
import { onSide } from './tries-for-join.ts'
import { sayLength } from './words.ts'

/** Steps in which an opening is tried, mm: no opening is planned finer. */
const STEP = 5

/** A hand that just passes needs a little more, mm. */
const ROOM = 0.5

/** An opening may run this share of the way up the underarm seam: about to the elbow. */
const TO_ELBOW = 0.5

/** The hand passes the wrist of each sleeve, or an opening in the back underarm seam lets it through. */
export const handPasses: Check = {
  name: 'hand-passes',
  looksAt: 'whether the hand passes the wrist, or how long an opening lets it through',
  mild: true,
  replaces: ['hand-does-not-pass'],
  run: (context) => context.pattern.pieces.flatMap((piece) => passes(context, piece)),
}

function passes({ body, units }: CheckContext, piece: Piece): Found[] {
  const wrist = seamNamed(piece, 'wrist')
  const front = seamNamed(piece, 'front underarm seam')
  const back = seamNamed(piece, 'back underarm seam')
  if (!body || !wrist || !front || !back) return []
  const sides: readonly BodySide[] = piece.side === 'left' || piece.side === 'right' ? [piece.side] : ['left', 'right']
  const width = seamLength(wrist)
  // On a sleeve for both sides one hand may pass and the other not.
  const stuck = sides.filter((side) => (body[side]['hand girth']?.value ?? 0) > width)
  const hand = largest(body, stuck)
  if (!hand) return []
  const only = stuck.length < sides.length ? stuck[0] : undefined
  const opening = openingFor(hand.value, front, back)
  const more = sayLength(hand.value - width, units)
  return [
    {
      code: 'hand-does-not-pass',
      severity: opening === undefined ? 'warning' : 'note',
      where: { piece: piece.id, seam: wrist.id },
      actual: `${only === undefined ? '' : `${only}: `}hand girth ${hand.estimated ? `${sayLength(Math.round(hand.value), units)} (estimated)` : sayLength(hand.value, units)}, wrist ${sayLength(width, units)}`,
      tries: [
        {
          do: 'widen',
          at: 'wrist',
          by: `${Math.ceil(hand.value - width + ROOM)} mm`,
          ...(only === undefined ? onSide(piece) : { side: only }),
        },
      ],
      expected: 'a wrist that lets the hand through, or an opening',
      hint:
        opening === undefined
          ? `open to the elbow the sleeve still does not let the hand through: add ${more} of wrist ease`
          : `leave the back underarm seam open for ${sayLength(opening, units)} from the wrist, or add wrist ease`,
    },
  ]
}

function seamNamed(piece: Piece, id: string): Seam | undefined {
  return piece.seams.find((seam) => seam.id === id)
}

function largest(body: Body, sides: readonly BodySide[]) {
  const hands = sides.flatMap((side) => body[side]['hand girth'] ?? [])
  return hands.reduce<(typeof hands)[number] | undefined>((a, b) => (a && a.value >= b.value ? a : b), undefined)
}

/** How far from the wrist the seam must be open until the sleeve is as wide as the hand; undefined below the elbow. */
function openingFor(hand: number, front: Seam, back: Seam): number | undefined {
  const [frontLength, backLength] = [seamLength(front), seamLength(back)]
  // Both seams begin or end at the wrist: on a sleeve seen in the mirror they run the other way.
  const fromWrist = (seam: Seam, length: number, up: number, starts: boolean) =>
    pointOnSeam(seam, starts ? up : length - up)
  const wide = (up: number, mirrored: boolean) =>
    distance(fromWrist(front, frontLength, up, !mirrored), fromWrist(back, backLength, up, mirrored))
  const mirrored = wide(0, true) < wide(0, false)
  for (let up = STEP; up <= TO_ELBOW * Math.min(frontLength, backLength); up += STEP) {
    if (wide(up, mirrored) >= hand) return up
  }
  return undefined
}
