/** The wearer's left and right. */
export type BodySide = 'left' | 'right'

export const BODY_SIDES: readonly BodySide[] = ['left', 'right']
