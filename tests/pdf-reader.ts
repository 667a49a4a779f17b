import { inflateSync } from 'node:zlib'

/** A pair of mm, from the lower left corner of the page. */
export type Place = readonly [number, number]

/** What one painting operator of a page draws: control points of its lines and curves, moved into place. */
export interface ReadPath {
  readonly operator: 'S' | 'f' | 'W'
  /** One list of points for each part; curves by all their control points. */
  readonly parts: readonly (readonly Place[])[]
  readonly layers: readonly string[]
}

export interface ReadText {
  readonly text: string
  readonly at: Place
  readonly layers: readonly string[]
}

export interface ReadPage {
  /** mm. */
  readonly width: number
  readonly height: number
  readonly paths: readonly ReadPath[]
  readonly texts: readonly ReadText[]
}

const MM = 25.4 / 72

type Matrix = readonly [number, number, number, number, number, number]

/**
 * Reads what this project's PDFs hold with nothing but inflate: the pages of a file without object streams, their
 * paths in mm and their text by the font's own table of characters. It knows the operators that the writer may use
 * and throws on any other.
 */
export function readPdf(bytes: Uint8Array): ReadPage[] {
  const objects = objectsOf(bytes)
  const object = (ref: string) => objects.get(Number(ref)) ?? fail(`no object ${ref}`)
  const pagesRoot = [...objects.values()].find(({ dict }) => /\/Type \/Pages\b/.test(dict)) ?? fail('no pages')
  const kids = Array.from(
    (/\/Kids \[([^\]]*)\]/.exec(pagesRoot.dict)?.[1] ?? '').matchAll(/(\d+) 0 R/g),
    (m) => m[1] ?? '',
  )
  return kids.map((kid) => {
    const page = object(kid)
    const [, , width = 0, height = 0] = (/\/MediaBox \[([^\]]*)\]/.exec(page.dict)?.[1] ?? '').split(' ').map(Number)
    const resources = object(/\/Resources (\d+) 0 R/.exec(page.dict)?.[1] ?? '').dict
    const refs = (key: string) => {
      const inside = new RegExp(`/${key} <<([\\s\\S]*?)>>`).exec(resources)?.[1] ?? ''
      return new Map(Array.from(inside.matchAll(/\/(\w+) (\d+) 0 R/g), (m) => [m[1] ?? '', m[2] ?? ''] as const))
    }
    const names = new Map([...refs('Properties')].map(([name, ref]) => [name, nameOf(object(ref).dict)] as const))
    const fonts = new Map([...refs('Font')].map(([name, ref]) => [name, lettersOf(object(ref).dict, object)] as const))
    const content = object(/\/Contents (\d+) 0 R/.exec(page.dict)?.[1] ?? '').stream ?? fail('no content')
    return { width: width * MM, height: height * MM, ...readContent(content, names, fonts) }
  })
}

interface PdfObject {
  readonly dict: string
  readonly stream?: string
}

function objectsOf(bytes: Uint8Array): Map<number, PdfObject> {
  const whole = Buffer.from(bytes)
  const text = whole.toString('latin1')
  const found = new Map<number, PdfObject>()
  for (const head of text.matchAll(/^(\d+) 0 obj\n/gm)) {
    const start = head.index + head[0].length
    const dict = text.slice(start, text.indexOf('endobj', start))
    const stream = dict.indexOf('\nstream\n')
    if (stream < 0) {
      found.set(Number(head[1]), { dict })
      continue
    }
    const length = Number(/\/Length (\d+)/.exec(dict)?.[1])
    const from = start + stream + 8
    const raw = whole.subarray(from, from + length)
    const plain = dict.slice(0, stream).includes('/FlateDecode') ? inflateSync(raw) : raw
    found.set(Number(head[1]), { dict: dict.slice(0, stream), stream: plain.toString('latin1') })
  }
  return found
}

/** A text string: bytes, or UTF-16 after its mark, as pdfkit writes any letter beyond ASCII. */
function nameOf(dict: string): string {
  const raw = (/\/Name \(((?:\\.|[^\\)])*)\)/s.exec(dict)?.[1] ?? '').replace(/\\(.)/gs, '$1')
  if (!raw.startsWith('þÿ')) return raw
  return Buffer.from(raw.slice(2), 'latin1').swap16().toString('utf16le')
}

/** The letters of an embedded font by code, from its ToUnicode map. */
function lettersOf(font: string, object: (ref: string) => PdfObject): Map<number, string> {
  const map = object(/\/ToUnicode (\d+) 0 R/.exec(font)?.[1] ?? '').stream ?? ''
  const letters = new Map<number, string>()
  for (const [, first = '', list = ''] of map.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/gi)) {
    Array.from(list.matchAll(/<([0-9a-f ]*)>/gi)).forEach(([, hex = ''], k) => {
      letters.set(
        Number.parseInt(first, 16) + k,
        Buffer.from(hex.replace(/ /g, ''), 'hex').swap16().toString('utf16le'),
      )
    })
  }
  return letters
}

const IGNORED = new Set([
  'w',
  'd',
  'J',
  'j',
  'M',
  'RG',
  'rg',
  'G',
  'g',
  'CS',
  'cs',
  'SCN',
  'scn',
  'Tr',
  'Tc',
  'Tw',
  'Tz',
  'Ts',
  'n',
  'ri',
  'i',
])

function readContent(
  content: string,
  names: ReadonlyMap<string, string>,
  fonts: ReadonlyMap<string, ReadonlyMap<number, string>>,
) {
  const paths: ReadPath[] = []
  const texts: ReadText[] = []
  let matrix: Matrix = [1, 0, 0, 1, 0, 0]
  const saved: Matrix[] = []
  const layers: string[] = []
  let parts: Place[][] = []
  let textMatrix: Matrix = matrix
  let font: ReadonlyMap<number, string> = new Map()
  let stack: string[] = []
  const number = (k: number) => Number(stack[k])
  const place = (x: number, y: number, m: Matrix = matrix): Place => [
    (m[0] * x + m[2] * y + m[4]) * MM,
    (m[1] * x + m[3] * y + m[5]) * MM,
  ]
  const six = (): Matrix => [number(0), number(1), number(2), number(3), number(4), number(5)]
  const paint = (operator: ReadPath['operator']) => {
    paths.push({ operator, parts, layers: [...layers] })
    if (operator !== 'W') parts = []
  }
  for (const [token] of content.matchAll(/\[[^\]]*\]|<[0-9a-f]*>|[^\s[\]<>]+/gi)) {
    if (/^[-+.\d[</]/.test(token)) {
      stack.push(token)
      continue
    }
    const last = parts.at(-1)
    switch (token) {
      case 'q':
        saved.push(matrix)
        break
      case 'Q':
        matrix = saved.pop() ?? fail('Q without q')
        break
      case 'cm':
        matrix = product(six(), matrix)
        break
      case 'm':
        parts.push([place(number(0), number(1))])
        break
      case 're': {
        const [x, y, w, h] = [number(0), number(1), number(2), number(3)]
        parts.push([place(x, y), place(x + w, y), place(x + w, y + h), place(x, y + h), place(x, y)])
        break
      }
      case 'l':
        last?.push(place(number(0), number(1)))
        break
      case 'c':
        last?.push(place(number(0), number(1)), place(number(2), number(3)), place(number(4), number(5)))
        break
      case 'h':
        if (last?.[0]) last.push(last[0])
        break
      case 'S':
      case 'f':
      case 'W':
        paint(token)
        break
      case 'BDC':
        layers.push(names.get((stack[1] ?? '').slice(1)) ?? fail(`no layer ${stack[1]}`))
        break
      case 'EMC':
        layers.pop()
        break
      case 'BT':
        textMatrix = matrix
        break
      case 'ET':
        break
      case 'Tf':
        font = fonts.get((stack[0] ?? '').slice(1)) ?? fail(`no font ${stack[0]}`)
        break
      case 'Tm':
        textMatrix = product(six(), matrix)
        break
      case 'TJ': {
        const codes = Array.from((stack[0] ?? '').matchAll(/<([0-9a-f]*)>/gi)).flatMap(
          ([, hex = '']) => hex.match(/.{4}/g) ?? [],
        )
        const text = codes.map((code) => font.get(Number.parseInt(code, 16)) ?? fail(`no letter ${code}`)).join('')
        texts.push({ text, at: place(0, 0, textMatrix), layers: [...layers] })
        break
      }
      default:
        if (!IGNORED.has(token)) fail(`an operator that the writer should not use: ${token}`)
        if (token === 'n') parts = []
    }
    stack = []
  }
  return { paths, texts }
}

function product(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
    a[4] * b[0] + a[5] * b[2] + b[4],
    a[4] * b[1] + a[5] * b[3] + b[5],
  ]
}

function fail(what: string): never {
  throw new Error(what)
}
