import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { locate } from '../../src/base/locate.ts'
import { readYaml, type YamlDocument } from '../../src/base/yaml-document.ts'

function read(text: string): YamlDocument {
  const result = readYaml(text, 'f.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

function problemsOf(text: string) {
  const result = readYaml(text, 'f.yaml')
  if (result.ok) throw new Error(`read as ${JSON.stringify(result.value.tree)}`)
  return result.problems
}

describe('the tree', () => {
  test('keeps every value as it was written (CASES 26)', () => {
    const { tree } = read('a: 15 1/2\nb: 015\nc: 12:30\nd: no\ne: 1e3\nf: 15½″\ng: "15 1/2\\""\nh: 0x10\ni: 1_000\n')
    expect(tree).toEqual({
      a: '15 1/2',
      b: '015',
      c: '12:30',
      d: 'no',
      e: '1e3',
      f: '15½″',
      g: '15 1/2"',
      h: '0x10',
      i: '1_000',
    })
  })

  test('has keys in one spelling and null where nothing is written', () => {
    const { tree } = read('Mock-Up: {}\nbust_girth:\nWaist   Girth: ~\nx: ""\nlist: [a, { B_c: d }]\n')
    expect(tree).toEqual({ 'mock up': {}, 'bust girth': null, 'waist girth': null, x: '', list: ['a', { 'b c': 'd' }] })
  })

  test('is the same with a byte order mark and with Windows line ends', () => {
    expect(read('\ufeffa: 1\r\nb:\r\n  c: 2\r\n').tree).toEqual({ a: '1', b: { c: '2' } })
  })

  test('has the places of a file whose lines end with carriage returns alone', () => {
    expect(read('a: 1\rb: x\r').placeOf(['b'])).toMatchObject({ line: 2, column: 4 })
  })

  test('cannot be reached through names of the language', () => {
    const { tree } = read('constructor: 1\n__proto__: 2\ntoString: 3\n')
    expect(Object.entries(tree as object)).toEqual([
      ['constructor', '1'],
      ['proto', '2'],
      ['tostring', '3'],
    ])
  })
})

describe('places', () => {
  const document = read(
    'body:\n  Bust_Girth:  37\n  wrist:\nfittings:\n  - label: x\n    corrections:\n      - do: y\n',
  )

  test.each<[string, (string | number)[], number, number, string]>([
    ['a value', ['body', 'bust girth'], 2, 16, 'body.Bust_Girth'],
    ['a blank value: its key', ['body', 'wrist'], 3, 3, 'body.wrist'],
    ['something missing: its parent', ['body', 'waist girth'], 1, 1, 'body.waist girth'],
    ['something missing in nothing', ['draft', 'fit'], 1, 1, 'draft.fit'],
    ['an entry of a list', ['fittings', 0], 5, 5, 'fittings.1'],
    ['deep inside', ['fittings', 0, 'corrections', 0, 'do'], 7, 13, 'fittings.1.corrections.1.do'],
    ['missing deep inside', ['fittings', 0, 'corrections', 0, 'by'], 7, 9, 'fittings.1.corrections.1.by'],
  ])('%s', (_, path, line, column, field) => {
    expect(document.placeOf(path)).toEqual({ file: 'f.yaml', line, column, field })
  })

  test('of a key', () => {
    expect(document.placeOfKey(['body', 'bust girth'])).toMatchObject({ line: 2, column: 3 })
  })

  test('are found again from a field', () => {
    const text = 'units: in\nbody:\n  Scye_Depth: 8\nfittings:\n  - label: x\n'
    const written = read(text)
    const where = (field: string) => locate([{ where: { field } }], written)[0]?.where
    expect(where('body.scye depth')).toEqual({ file: 'f.yaml', line: 3, column: 15, field: 'body.Scye_Depth' })
    expect(where('body.back width')).toMatchObject({ line: 2, column: 1 })
    expect(where('fittings.1.label')).toMatchObject({ line: 5, column: 12 })
    const placed = { where: { field: 'body', line: 9 } }
    expect(locate([placed], written)[0]).toBe(placed)
  })
})

describe('what cannot be read', () => {
  test.each<[string, string, string, number, number]>([
    ['an empty file', '', 'empty-file', 1, 1],
    ['comments only', '# begun\n\n  # later\n---\n', 'empty-file', 1, 1],
    ['a picture', '\u0089PNG\r\n\u001a\n\u0000\u0000', 'not-text', 2, 1],
    ['bytes that are not UTF-8', 'a: 1\nb: \ufffd\n', 'not-text', 2, 4],
    ['a tab as indent', 'a:\n\tb: 1\n', 'not-yaml', 2, 1],
    ['a key twice', 'a: 1\nb: 2\na: 3\n', 'duplicate-key', 3, 1],
    ['a key twice, spelled apart', 'body:\n  bust girth: 1\n  Bust-Girth: 2\n', 'duplicate-key', 3, 3],
    ['an open bracket', 'a: [1\nb: 2\n', 'not-yaml', 2, 1],
    ['an open quote', 'a: "x\n', 'not-yaml', 2, 1],
    ['no colon', 'bust girth 37\nwaist: 2\n', 'not-yaml', 1, 1],
    ['a colon too many', 'a: b: c\n', 'not-yaml', 1, 4],
    ['a reference', 'a: &x 1\nb: *x\n', 'not-yaml', 2, 4],
    ['two documents', 'a: 1\n---\nb: 2\n', 'not-yaml', 2, 1],
    ['a tag', 'a: !!int 5\n', 'not-yaml', 1, 4],
    ['a list as key', '? [a]\n: 1\n', 'not-a-section', 1, 3],
  ])('%s', (_, text, code, line, column) => {
    const [problem] = problemsOf(text)
    expect(problem).toMatchObject({ code, where: { file: 'f.yaml', line, column } })
    expect(problem?.hint).not.toBe('')
  })

  test('is said without the words of the parser', () => {
    for (const text of [
      'a: !!null\n',
      'a: [1\nb: 2\n',
      'a: b: c\n',
      'a: "x\n',
      'a: @x\n',
      '%YAML x\n',
      'a: "\\q"\n',
      'a: *b\n',
    ]) {
      const [problem] = problemsOf(text)
      expect(problem?.code).toBe('not-yaml')
      expect(problem?.actual).not.toMatch(/tag:|implicit|scalar|flow|token|anchor|alias|mapping|null|Unresolved/i)
    }
  })

  test('a duplicate names the line of the first', () => {
    expect(problemsOf('a: 1\nA: 2\n')[0]?.expected).toMatch(/line 1/)
  })

  // Each of these made the parser recurse until the process aborted, or took seconds.
  test.each<[string, string]>([
    ['brackets', '['.repeat(100_000)],
    ['brackets on lines of their own', '[\n'.repeat(50_000)],
    ['sections in brackets', '{a: '.repeat(50_000)],
    ['lists in lists', '- '.repeat(100_000)],
    ['keys of keys', '? '.repeat(100_000)],
    ['keys of keys behind a name', `a: ${'? '.repeat(5000)}`],
    ['brackets that quotes hide', `a: ${'["]", '.repeat(20_000)}`],
    ['sections in a line', 'a: '.repeat(60_000)],
    ['sections under sections', Array.from({ length: 600 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
    ['a large file', 'x: 1\n'.repeat(100_000)],
    ['references to references', `a: &a [x]\n${'abcdefghijk'.replace(/./g, (l) => `${l}1: &${l}1 [*a, *a]\n`)}`],
  ])('%s without end are refused at once', (_, text) => {
    const start = performance.now()
    expect(problemsOf(text).length).toBeGreaterThan(0)
    expect(performance.now() - start).toBeLessThan(3000)
  })

  test('any text at all is read or refused with places inside it, never a throw', () => {
    const yamlish = fc.string({ unit: fc.constantFrom(...'ab:- \n[]{},"\'#&*!|>?%@~\t'), maxLength: 40 })
    fc.assert(
      fc.property(fc.oneof(yamlish, fc.string({ unit: 'binary' })), (text) => {
        const result = readYaml(text, 'f.yaml')
        if (result.ok) return
        for (const { where } of result.problems) {
          expect(where.line).toBeGreaterThanOrEqual(1)
          expect(where.line).toBeLessThanOrEqual(text.split(/\r\n|\r|\n/).length + 1)
          expect(where.column).toBeGreaterThanOrEqual(1)
        }
      }),
      { numRuns: 1500 },
    )
  })
})
