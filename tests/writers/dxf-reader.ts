import type { Pt } from '../reader-curves.ts'

/** One entity of a DXF file: its groups as they stand there, and the vertices of a polyline. */
export interface Entity {
  readonly type: string
  layer: string
  readonly values: Map<number, string>
  readonly points: Pt[]
}

export interface DxfFile {
  readonly header: ReadonlyMap<string, string>
  readonly layers: readonly string[]
  readonly blocks: ReadonlyMap<string, readonly Entity[]>
  readonly entities: readonly Entity[]
}

/** A reader of group codes that shares nothing with the writer; throws on a file that is not made of pairs of lines. */
export function readDxf(text: string): DxfFile {
  const lines = text.split('\r\n')
  if (lines.pop() !== '' || lines.length % 2 !== 0) throw new Error('not pairs of lines')
  const groups: [number, string][] = []
  for (let k = 0; k < lines.length; k += 2) {
    if (!/^ *\d+$/.test(lines[k] as string)) throw new Error(`line ${k + 1} is no group code: ${lines[k]}`)
    groups.push([Number(lines[k]), lines[k + 1] as string])
  }
  const header = new Map<string, string>()
  const layers: string[] = []
  const blocks = new Map<string, Entity[]>()
  const entities: Entity[] = []
  let section = ''
  let variable = ''
  let into = entities
  let open: Entity | undefined
  let polyline: Entity | undefined
  for (const [code, value] of groups) {
    if (code === 0) {
      open = { type: value, layer: '', values: new Map(), points: [] }
      if (value === 'SECTION' || value === 'ENDSEC') section = value
      if (value === 'VERTEX') continue
      polyline = value === 'POLYLINE' ? open : undefined
      if (value === 'BLOCK') into = []
      else if (value === 'ENDBLK') into = entities
      else if (section === 'BLOCKS' || section === 'ENTITIES') {
        if (value !== 'SEQEND' && value !== 'ENDSEC') into.push(open)
      }
      continue
    }
    if (section === 'SECTION' && code === 2) section = value
    else if (section === 'HEADER') {
      if (code === 9) variable = value
      else if (!header.has(variable)) header.set(variable, value)
    } else if (open?.type === 'LAYER' && code === 2) layers.push(value)
    else if (open?.type === 'BLOCK' && code === 2) blocks.set(value, into)
    else if (open) {
      open.values.set(code, value)
      if (code === 8) open.layer = value
      if (open.type === 'VERTEX' && code === 20) polyline?.points.push([Number(open.values.get(10)), Number(value)])
    }
  }
  return { header, layers, blocks, entities }
}

/** A coordinate pair of an entity: 0 for 10/20, 1 for 11/21. */
export function pointOf({ values }: Entity, which = 0): Pt {
  return [Number(values.get(10 + which)), Number(values.get(20 + which))]
}

export function textsOf(entities: readonly Entity[]): string[] {
  return entities.flatMap((e) => (e.type === 'TEXT' ? [e.values.get(1) ?? ''] : []))
}
