/** One problem and the file or the arguments that make it. */
export interface ProblemCase {
  readonly code: string
  /** Measures in place of those of the body, as they are written; blank leaves one out. */
  readonly body?: Readonly<Record<string, string>>
  /** The `draft` section, between braces. */
  readonly draft?: string
  /** Corrections of the one fitting, each between braces. */
  readonly corrections?: readonly string[]
  /** The whole file, in place of all that. */
  readonly text?: string
  /** The text that stands over the mark. */
  readonly mark?: string
}

const BODY: Readonly<Record<string, string>> = {
  'neck base girth': '375',
  'shoulder length': '137',
  'shoulder slope': '22 deg',
  'bust girth': '959',
  'waist girth': '759',
  'back waist length': '416',
  'scye depth': '197',
  'back width': '371',
  'front width': '349',
  'front waist length': '454',
  'neck to bust point': '267',
  'bust point width': '197',
  'upper arm girth': '298',
  'elbow girth': '264',
  'wrist girth': '162',
  'hand girth': '210',
  'outer arm length': '578',
  'shoulder to elbow': '345',
}

/** The performer file of a case; lengths in mm. */
export function fileOf({ body = {}, draft = '{}', corrections = [], text }: ProblemCase): string {
  if (text !== undefined) return text
  const measures = Object.entries({ ...BODY, ...body }).map(([name, value]) => `  ${name}: ${value}`)
  const lines = ['performer: Lamplighter', 'units: mm', 'body:', ...measures, `draft: ${draft}`]
  if (corrections.length > 0) {
    lines.push('fittings:', '  - label: first fitting', '    corrections:', ...corrections.map((c) => `      - ${c}`))
  }
  return `${lines.join('\n')}\n`
}

/** Where the file does not show what is wrong, the arguments do. */
export const ARGUMENT_CASES: readonly (readonly [code: string, ...args: string[]])[] = [
  ['no-command'],
  ['unknown-command', 'dratf', 'FILE'],
  ['no-file', 'draft'],
  ['one-file', 'compare', 'FILE', 'OTHER'],
  ['file-twice', 'check', 'FILE', 'FILE'],
  ['same-folder', 'draft', 'FILE', 'SAME', '-o', 'out', '--as', 'json'],
  ['unknown-option', 'draft', 'FILE', '--papr', 'a4'],
  ['empty-option', 'draft', 'FILE', '--as', ','],
  ['option-twice', 'draft', 'FILE', '-o', 'a', '-o', 'b'],
  ['not-a-switch', 'check', '--quiet=no', 'FILE'],
  ['unknown-format', 'draft', 'FILE', '--as', 'png'],
  ['unknown-paper', 'draft', 'FILE', '--paper', 'constructor'],
  ['paper-without-unit', 'draft', 'FILE', '--paper', '610x914'],
  ['paper-too-small', 'draft', 'FILE', '--paper', '20x20mm'],
  ['overlap-out-of-range', 'draft', 'FILE', '--overlap', '0.5mm'],
  ['overlap-without-unit', 'draft', 'FILE', '--overlap', '1/2'],
  ['square-unreadable', 'draft', 'FILE', '--square-measured', '97.2'],
  ['square-absurd', 'draft', 'FILE', '--square-measured', '80x80'],
  ['square-uneven', 'draft', 'FILE', '--square-measured', '92x98'],
  ['unknown-piece', 'draft', 'FILE', '--pieces', 'sleve'],
  ['unknown-fitting', 'check', 'FILE', '--until', 'tenth \u001b[31m'],
  ['no-earlier-version', 'draft', 'FILE', '--under', 'tenth'],
  ['unknown-place', 'advise', 'tight', '--place', 'knee'],
  ['no-advice', 'advise', 'zzzz'],
  ['no-such-file', 'check', 'not-there.yaml'],
  ['not-a-file', 'check', '.'],
  ['file-exists', 'begin', 'FILE'],
  ['too-large', 'check', 'LARGE'],
  ['no-such-folder', 'cast', 'not-there'],
  ['not-a-folder', 'cast', 'FILE'],
  ['jobs-out-of-range', 'cast', '.', '--jobs', '0'],
  ['cannot-write', 'draft', 'FILE', '-o', 'FILE', '--as', 'json'],
]

/** Codes that other tests make: from hand-made patterns, or with a table of their own for the printed words. */
export const MADE_ELSEWHERE: Readonly<Record<string, string>> = {
  'already-voided': 'cli/record.test.ts',
  'cannot-insert': 'base/yaml-insert.test.ts',
  'either-or': 'cli/record.test.ts',
  'fitting-says-otherwise': 'cli/record.test.ts',
  'fitting-unsure': 'cli/record.test.ts',
  'not-a-place': 'cli/record.test.ts',
  'not-a-sheet': 'cli/explain.test.ts',
  'no-performer-files': 'cli/cast.test.ts',
  'nothing-to-record': 'cli/record.test.ts',
  'one-paper': 'cli/explain.test.ts',
  unexpected: 'cli/robust.test.ts',
  'unknown-correction': 'cli/record.test.ts',
  'unknown-shell': 'cli/completion.test.ts',
  'cap-cannot-match': 'fitting/rematch-cap.test.ts',
  'cap-without-armscye': 'fitting/rematch-cap.test.ts',
  'dart-already-there': 'fitting/spread-hinge.test.ts',
  'dart-leaves-piece': 'fitting/spread-hinge.test.ts',
  'dart-length-out-of-range': 'fitting/elbow-darts.test.ts',
  'dart-off-seam': 'fitting/set-dart.test.ts',
  'darts-do-not-share-a-point': 'fitting/spread-hinge.test.ts',
  'mark-off-seam': 'fitting/set-dart.test.ts',
  'no-elbow-notch': 'fitting/sleeve-width.test.ts',
  'no-room-for-dart': 'fitting/set-dart.test.ts',
  'no-room-for-darts': 'fitting/elbow-darts.test.ts',
  'no-room-on-side-seam': 'repeated-fittings.test.ts',
  'no-such-piece': 'fitting/join-sides.test.ts',
  'no-such-seam': 'fitting/corrections.test.ts',
  'not-yes-or-no': 'base/readers.test.ts',
  'place-gone': 'fitting/inner-place.test.ts',
  'seam-too-short': 'fitting/spread-hinge.test.ts',
  'shift-folds-over': 'fitting/shift-seam.test.ts',
}

const BEYOND = 'a limit of a seam or a dart that the files of these cases keep clear of; spoilt files reach some'

/** Codes without a typical file: why there is none. */
export const NO_CASE: Readonly<Record<string, string>> = {
  custom: 'the kind of an issue inside the reader, never a problem of its own',
  'file-changed': 'a file that another program changes between two moments of one command',
  usage: 'for whatever the option parser may say in a later version',
  'not-readable': 'a file that its owner may not read; tests may run as root, who may read all',
  'upper-chest-and-bust': 'a warning only: the relation has no impossible values',
  'waist-and-bust': 'a warning only: the relation has no impossible values',
  'front-and-back-width': 'a warning only: the relation has no impossible values',
  'front-and-back-length': 'a warning only: the relation has no impossible values',
  'center-front-and-front': 'a warning only: the relation has no impossible values',
  'center-front-and-back': 'a warning only: the relation has no impossible values',
  'wrist-and-hand': 'a warning only: the relation has no impossible values',
  'wrist-and-elbow': 'a warning only: the relation has no impossible values',
  'elbow-and-upper-arm': 'a warning only: the relation has no impossible values',
  'flexed-and-relaxed': 'a warning only: the relation has no impossible values',
  'armscye-and-upper-arm': 'a warning only: the relation has no impossible values',
  'armscye-and-scye': 'a warning only: the relation has no impossible values',
  'shoulder-and-back-width': 'a warning only: the relation has no impossible values',
  'draft-does-not-settle': BEYOND,
  'wrist-out-of-reach': BEYOND,
  'bust-point-out-of-reach': BEYOND,
  'bust-point-beyond-side': BEYOND,
  'no-room-for-waist-darts': BEYOND,
  'no-room-for-elbow-darts': BEYOND,
  'no-room-on-shoulder': BEYOND,
  'no-room-on-armscye': BEYOND,
  'no-room-for-wedge': BEYOND,
  'cap-bends-back': BEYOND,
  'corner-inside-line': BEYOND,
  'cut-in-corner': BEYOND,
  'cut-needs-two-ends': BEYOND,
  'dart-cannot-follow': BEYOND,
  'dart-in-the-way': BEYOND,
  'dart-too-near': BEYOND,
  'gap-without-dart': 'a pattern of another program, whose seams do not touch',
  'mark-cut-off': BEYOND,
  'neighbour-cannot-follow': BEYOND,
  'neighbour-too-short': BEYOND,
  'no-bust-point': 'a pattern of another program, without the mark',
  'notch-off-its-half': BEYOND,
  'two-darts-on-shoulder': BEYOND,
}

const HEAD = 'performer: Lamplighter\nunits: mm\n'

/** Problems of reading: syntax, names, shapes and values. */
const READING: readonly ProblemCase[] = [
  { code: 'empty-file', text: '# nothing yet\n' },
  { code: 'not-text', text: `${HEAD}body:\n  bust girth: \u00019\n`, mark: ' 9' },
  { code: 'file-too-long', text: `${HEAD}# ${'note '.repeat(60_000)}\n`, mark: 'performer' },
  { code: 'nested-too-deep', text: `${HEAD}body: ${'['.repeat(40)}\n`, mark: 'body' },
  { code: 'not-yaml', text: `${HEAD}body: { bust girth: 959\n` },
  { code: 'duplicate-key', text: fileOf({ code: '' }).replace('waist girth', 'Bust-Girth'), mark: 'Bust-Girth' },
  { code: 'not-a-section', text: `${HEAD}? [a]\n: 1\n`, mark: '[a]' },
  { code: 'not-a-performer', text: '- a list\n', mark: '- a' },
  { code: 'missing', body: { 'waist girth': '' }, mark: 'waist girth' },
  { code: 'unknown-key', draft: '{ fitt: close }', mark: 'fitt' },
  { code: 'wrong-shape', body: { 'bust girth': '[ 959 ]' }, mark: '[ 959' },
  { code: 'measure-without-sides', body: { 'bust girth': '{ left: 480, right: 479 }' }, mark: '{ left' },
  { code: 'across-back', body: { 'across back': '371' }, mark: 'across back' },
  { code: 'not-a-length', body: { 'bust girth': 'large' }, mark: 'large' },
  { code: 'unknown-unit', body: { 'bust girth': '3 ft' }, mark: '3 ft' },
  { code: 'units-disagree', body: { 'bust girth': '38 in (99 cm)' }, mark: '38 in' },
  { code: 'length-out-of-range', body: { 'bust girth': '-959' }, mark: '-959' },
  { code: 'not-an-angle', body: { 'shoulder slope': '22' }, mark: '22' },
  { code: 'not-a-share', draft: '{ ease: { cap: six % } }', mark: 'six' },
  { code: 'not-a-date', text: `measured: 2026-02-30\n${fileOf({ code: '' })}`, mark: '2026-02-30' },
  { code: 'empty-text', text: fileOf({ code: '' }).replace('Lamplighter', '" "'), mark: '" "' },
  { code: 'not-printable', text: fileOf({ code: '' }).replace('Lamplighter', '"Lamp\\u202elighter"'), mark: '"Lamp' },
  { code: 'text-too-long', text: fileOf({ code: '' }).replace('Lamplighter', 'x'.repeat(600)), mark: 'xxx' },
  { code: 'not-a-count', text: `${fileOf({ code: '' })}fittings: [ { label: a, mock-up: first } ]\n`, mark: 'first' },
  { code: 'unknown-name', draft: '{ fit: snug }', mark: 'snug' },
  {
    code: 'duplicate-label',
    text: `${fileOf({ code: '' })}fittings: [ { label: a }, { label:  a } ]\n`,
    mark: 'a } ]',
  },
  { code: 'reason-missing', corrections: ['{ do: lengthen, at: elbow line, by: 5, voided: yes }'], mark: 'yes' },
  {
    code: 'place-incomplete',
    corrections: ['{ do: let out, seam: cap, by: 3, at: { from: underarm } }'],
    mark: '{ from',
  },
]

/** Measures that no one body has. */
const BODIES: readonly ProblemCase[] = [
  { code: 'measure-out-of-range', body: { 'bust girth': '95.9 cm', 'waist girth': '75' }, mark: '75' },
  { code: 'widths-and-bust', body: { 'back width': '500', 'front width': '480' }, mark: '500' },
  { code: 'back-width-and-bust', body: { 'back width': '540' }, mark: '540' },
  { code: 'front-width-and-bust', body: { 'front width': '540' }, mark: '540' },
  { code: 'scye-and-waist', body: { 'scye depth': '420' }, mark: '420' },
  { code: 'bust-point-and-waist', body: { 'neck to bust point': '456' }, mark: '456' },
  { code: 'bust-point-and-back', body: { 'neck to bust point': '465' }, mark: '465' },
  { code: 'bust-points-and-bust', body: { 'bust point width': '481' }, mark: '481' },
  { code: 'elbow-and-arm', body: { 'shoulder to elbow': '580' }, mark: '580' },
]

/** Measures and choices that contradict each other in the draft. */
const DRAFTS: readonly ProblemCase[] = [
  { code: 'choices-disagree', draft: '{ bust: flat, bust dart: 20 }' },
  { code: 'ease-out-of-range', draft: '{ ease: { bust: -900 } }', mark: '-900' },
  { code: 'intake-out-of-range', draft: '{ elbow intake: 400 }', mark: '400' },
  { code: 'cap-contradicts-itself', draft: '{ cap height: 120, biceps width: 340, ease: { cap: 30, upper arm: 40 } }' },
  { code: 'cap-too-low', draft: '{ biceps width: 480 }' },
  { code: 'cap-too-short', draft: '{ cap height: 96, biceps width: 340 }' },
  { code: 'no-such-cap', draft: '{ cap height: 900 }', mark: '900' },
  { code: 'sleeve-narrower-than-arm', draft: '{ biceps width: 280 }', mark: '280' },
  { code: 'elbow-out-of-place', body: { 'shoulder to elbow': '150' }, mark: '150' },
  { code: 'no-room-for-armscye', body: { 'back width': '470', 'front width': '480' } },
  { code: 'bust-point-too-low', body: { 'neck to bust point': '440' } },
  { code: 'back-too-short', body: { 'scye depth': '400' } },
  { code: 'too-much-to-ease', body: { 'front waist length': '530' }, draft: '{ bust dart: eased }' },
  { code: 'no-room-for-bust-dart', body: { 'front waist length': '600' } },
  { code: 'armscye-too-low', body: { 'shoulder length': '364' } },
]

/** Corrections that cannot be made. */
const FITTINGS: readonly ProblemCase[] = [
  { code: 'amount-too-large', corrections: ['{ do: sway back, by: 486 }'] },
  { code: 'both-sides-only', corrections: ['{ do: sway back, by: 10, side: left }'], mark: 'left' },
  { code: 'needs-both-sides', corrections: ['{ do: join sides, piece: sleeve, side: left }'], mark: 'left' },
  {
    code: 'sides-differ',
    corrections: ['{ do: widen, at: upper arm, by: 10, side: left }', '{ do: join sides, piece: sleeve }'],
  },
  { code: 'unknown-place', corrections: ['{ do: let out, seam: side seam, by: 3, at: nape }'], mark: 'nape' },
  {
    code: 'place-off-seam',
    corrections: ['{ do: let out, seam: side seam, by: 3, at: { from: underarm, toward: waist, distance: 900 } }'],
  },
  {
    code: 'places-contradict',
    corrections: ['{ do: let out, seam: cap, by: 3, at: { line: cap line }, from: front notch }'],
  },
  {
    code: 'tapers-at-both-ends',
    corrections: ['{ do: let out, seam: side seam, by: 3, taper to: [ underarm, waist ] }'],
  },
  {
    code: 'taper-too-short',
    corrections: [
      '{ do: let out, seam: front cap, at: { line: cap line }, by: 500, taper to: [ front notch, shoulder notch ] }',
    ],
  },
  {
    code: 'two-amounts-at-one-place',
    corrections: [
      '{ do: let out, seam: front cap, at: { line: cap line }, by: 3, taper to: [ { line: cap line }, front notch ] }',
    ],
  },
  { code: 'taper-off-seam', corrections: ['{ do: underarm reach, by: 12, along cap: 400 }'], mark: '400' },
  { code: 'place-too-far', corrections: ['{ do: underarm reach, by: 12, at: front notch }'], mark: 'front notch' },
  { code: 'turned-too-far', corrections: ['{ do: turn sleeve, direction: forward, by: 200 }'], mark: '200' },
  { code: 'too-much-at-once', corrections: ['{ do: widen, at: upper arm, by: 900, keep: cap height }'] },
  { code: 'nothing-to-keep', corrections: ['{ do: widen, at: wrist, by: 10, keep: cap height }'], mark: 'cap height' },
  { code: 'no-elbow-darts', draft: '{ elbow darts: none }', corrections: ['{ do: elbow dart intake, intake: 25 }'] },
  { code: 'elbow-intake-out-of-range', corrections: ['{ do: elbow dart intake, intake: 300 }'], mark: '300' },
  { code: 'dart-too-large', corrections: ['{ do: dart intake, dart: waist dart, by: 540, direction: more }'] },
  { code: 'dart-too-small', corrections: ['{ do: dart intake, dart: waist dart, by: 540, direction: less }'] },
  { code: 'no-such-dart', corrections: ['{ do: dart intake, dart: shoulder dart, by: 5, direction: more }'] },
  {
    code: 'share-out-of-range',
    corrections: ['{ do: move dart, dart: waist dart, of: front, to seam: side seam, share: 140 % }'],
  },
  { code: 'wedge-below-waist', corrections: ['{ do: sway back, by: 12, above waist: 6 }'] },
]

export const PROBLEM_CASES: readonly ProblemCase[] = [...READING, ...BODIES, ...DRAFTS, ...FITTINGS]
