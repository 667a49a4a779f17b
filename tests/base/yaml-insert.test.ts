import { describe, expect, test } from 'vitest'
import { readYaml, type Tree, type TreePath } from '../../src/base/yaml-document.ts'
import { insertYaml } from '../../src/base/yaml-insert.ts'
import { flowText, scalarText } from '../../src/base/yaml-text.ts'

const BLOCK = ['fittings', 'corrections']
const CORRECTION: Tree = { do: 'let out', seam: 'wrist', by: '1/4', at: [{ line: 'cap line' }, 'underarm'] }
const FITTING: Tree = { label: 'second fitting', 'mock-up': '2', corrections: [CORRECTION] }

/** What was put in: the text without it is, byte for byte, what was there. */
function piece(text: string, path: TreePath, value: Tree): string {
  const result = insertYaml(text, 'a.yaml', path, value, BLOCK)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const added = result.value.length - text.length
  const starts = Array.from({ length: text.length + 1 }, (_, at) => at).filter(
    (at) => result.value.slice(0, at) + result.value.slice(at + added) === text,
  )
  expect(starts.length).toBeGreaterThan(0)
  // Of the places where it could have been put in the one that begins a line, if any does.
  const at = starts.find((one) => one === 0 || result.value[one - 1] === '\n') ?? (starts.at(-1) as number)
  return result.value.slice(at, at + added)
}

const file = (fittings: string) => `performer: A # a code\nbody:\n  bust girth: 37 3/4\n${fittings}`

const WHOLE = `    - do: let out
      seam: wrist
      by: 1/4
      at: [ { line: cap line }, underarm ]
`

describe('a correction put into a fitting', () => {
  test.each([
    [
      'behind the last one and the comments that belong to it',
      'fittings:\n- label: first # one\n  corrections:\n    - do: rematch cap # why\n      # because\n\n# end\n',
      1,
      WHOLE,
    ],
    [
      'at the end of a file without a last line end',
      'fittings:\n- label: first\n  corrections:\n    - do: rematch cap',
      1,
      `\n${WHOLE.trimEnd()}`,
    ],
    [
      'with the indents of the file',
      'fittings:\n    -   label: first\n        corrections:\n        -   do: rematch cap\n',
      1,
      '        -   do: let out\n            seam: wrist\n            by: 1/4\n            at: [ { line: cap line }, underarm ]\n',
    ],
    [
      'with its line ends',
      'fittings:\r\n- label: first\r\n  corrections:\r\n    - do: rematch cap\r\n\r\n# end\r\n',
      1,
      WHOLE.replaceAll('\n', '\r\n'),
    ],
    [
      'behind a text of several lines',
      'fittings:\n- label: first\n  corrections:\n    - do: rematch cap\n      seen: |\n        puckers\n        a lot\nmeasured: 2026-10-02\n',
      1,
      WHOLE,
    ],
    [
      'between brackets',
      'fittings:\n- { label: first, corrections: [ { do: rematch cap } ] } # one\n',
      1,
      ', { do: let out, seam: wrist, by: 1/4, at: [ { line: cap line }, underarm ] }',
    ],
    [
      'between brackets with nothing in them',
      'fittings: [ { label: first, corrections: [] } ]\n',
      0,
      ' { do: let out, seam: wrist, by: 1/4, at: [ { line: cap line }, underarm ] } ',
    ],
    [
      'between brackets over several lines, with a comma too many and a comment',
      'fittings:\n- label: first\n  corrections: [\n    { do: rematch cap }, # why\n  ]\n',
      1,
      '{ do: let out, seam: wrist, by: 1/4, at: [ { line: cap line }, underarm ] }, ',
    ],
  ])('%s', (_name, fittings, index, expected) => {
    expect(piece(file(fittings), ['fittings', 0, 'corrections', index], CORRECTION)).toBe(expected)
  })

  test.each([
    ['a list that is blank', 'fittings:\n  - label: first\n    corrections: # none yet\n    mock-up: 1\n'],
    ['no list', 'fittings:\n  - label: first # one\n    mock-up: 1\n\n# end\n'],
    ['no list between brackets', 'fittings: [ { label: first, mock-up: 1 } ]\n'],
    ['a blank one between brackets', 'fittings: [ { label: first, corrections: , mock-up: 1 } ]\n'],
  ])('that has %s', (_name, fittings) => {
    expect(piece(file(fittings), ['fittings', 0, 'corrections'], [CORRECTION])).toContain('do: let out')
  })
})

describe('a fitting put into a file', () => {
  test.each([
    ['without any', file('')],
    ['without any, nor a last line end', file('').trimEnd()],
    ['with a blank list and an example', file('fittings:  # none yet\n#   - label: first\n')],
    ['with an end mark', `---\n${file('')}...\n`],
    ['with a byte order mark', `\ufeff${file('')}`],
    ['between brackets', '{ performer: A, body: { bust girth: 37 } }\n'],
  ])('%s', (_name, text) => {
    expect(piece(text, ['fittings'], [FITTING])).toContain('label: second fitting')
  })

  test('with brackets that are empty', () => {
    expect(piece(file('fittings: []\n'), ['fittings', 0], FITTING)).toMatch(
      /^ \{ label: second fitting, mock-up: 2, corrections: /,
    )
  })

  test('behind the last one, lists indented as there', () => {
    const text = file('fittings:\n- label: first\n  corrections:\n  - do: rematch cap\n# end\n')
    expect(piece(text, ['fittings', 1], FITTING)).toBe(
      '- label: second fitting\n  mock-up: 2\n  corrections:\n  - do: let out\n    seam: wrist\n    by: 1/4\n' +
        '    at: [ { line: cap line }, underarm ]\n',
    )
  })
})

test('a reason is put behind the settings of its correction', () => {
  const text = file(
    'fittings:\n- label: first\n  corrections:\n    - do: rematch cap # a\n    - do: raise cap\n      by: 1/8\n',
  )
  expect(piece(text, ['fittings', 0, 'corrections', 0, 'voided'], 'wrong: pin')).toBe('      voided: "wrong: pin"\n')
  const flow = file('fittings:\n- label: first\n  corrections: [ { do: rematch cap } ]\n')
  expect(piece(flow, ['fittings', 0, 'corrections', 0, 'voided'], 'no')).toBe(', voided: no')
})

test.each([
  ['a list said to be nothing', file('fittings: ~\n'), ['fittings'], [FITTING]],
  ['a text in its place', file('fittings: none\n'), ['fittings', 0], FITTING],
  ['something there already', file('fittings:\n- label: first\n'), ['fittings', 0, 'label'], 'second'],
])('%s is refused', (_name, text, path, value) => {
  const result = insertYaml(text, 'a.yaml', path as TreePath, value as Tree, BLOCK)
  expect(result.ok ? 'put in' : result.problems.map(({ code }) => code)).toEqual(['cannot-insert'])
})

test('every text is read back as it was written', () => {
  const texts = [
    ...[
      '15 1/2',
      '15½″',
      '6 %',
      'cap line',
      'tight: here',
      'a #b',
      '#a',
      '- a',
      '-1/8',
      'null',
      '~',
      'no',
      '12:30',
      "'a'",
    ],
    ...[
      '"a"',
      '{ a }',
      '[a',
      'a, b',
      'a]',
      '*a',
      '&a',
      '!a',
      '%a',
      '@a',
      '`a',
      '---',
      '... a',
      'a\tb',
      'a:',
      ': a',
      '? a',
    ],
    ...['|', '>', 'Straße “x”', 'a\nb', ' a', 'a ', '\\', 'true'],
  ]
  for (const text of texts) {
    for (const written of [`x: ${scalarText(text)}\n`, `x: ${flowText([text, { y: text }])}\n`]) {
      const read = readYaml(written, 'a.yaml')
      const tree = read.ok ? (read.value.tree as { readonly x: Tree }).x : read.problems
      expect(tree, written).toEqual(written.includes('[ ') && Array.isArray(tree) ? [text, { y: text }] : text)
    }
  }
})
