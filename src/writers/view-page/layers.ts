import type { MarkKind } from '../../sheets/scene.ts'

/** What can be shown and hidden on the page, in the order of its list. */
export const LAYERS = [
  { id: 'stitching', name: 'stitching lines', kinds: ['stitching line'] },
  { id: 'cutting', name: 'cutting lines and folds', kinds: ['cutting line', 'fold line'] },
  { id: 'darts', name: 'darts', kinds: ['dart'] },
  { id: 'notches', name: 'notches and marks', kinds: ['notch', 'landmark'] },
  {
    id: 'lines',
    name: 'grain, balance lines, ease stitching',
    kinds: ['grain line', 'balance line', 'ease stitching'],
  },
  { id: 'labels', name: 'labels', kinds: ['label'] },
] as const satisfies readonly { readonly id: string; readonly name: string; readonly kinds: readonly MarkKind[] }[]
