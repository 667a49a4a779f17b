/** How many pages a pattern takes on one paper. */
export interface PaperPages {
  /** Name of the paper, such as `a4`. */
  readonly paper: string
  /** Pages of it. */
  readonly count: number
}
