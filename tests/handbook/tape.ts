/**
 * The finest division of a tape, 1/16 in, mm: handbooks give inches, the draft's defaults are whole millimetres, and a
 * default that is a handbook's limit may differ by the rounding and no more.
 */
export const TAPE = 25.4 / 16

export const IN = 25.4
