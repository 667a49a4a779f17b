import { formatLength } from './base/format-length.ts'
import type { LengthUnit } from './base/units.ts'
import type { Tree } from './base/yaml-document.ts'
import { flowText, scalarText } from './base/yaml-text.ts'
import { bareLength, offeredChoices, standardAllowance } from './begin-choices.ts'
import { MEASURE_NAMES, MEASURES, type MeasureDefinition, type MeasureName } from './body/measure.ts'
import { ALLOWANCE_NAMES } from './performer-file.ts'
import type { TakenChoices } from './taken-choices.ts'

/** For whom a file is begun, and how its lengths are written. */
export interface BeginOptions {
  /** A role or a code. */
  readonly performer: string
  /** What plain numbers of the file mean. */
  readonly units: LengthUnit
  /** Where editors find the schema of performer files. */
  readonly schema?: string
  /** Choices of another performer's file, written for `units`. */
  readonly taken?: TakenChoices
}

/** Comments are broken before this column, so that they can be read in any window. */
const WIDTH = 80

/** Where the remark behind a value begins, where there is room. */
const REMARK = 34

/**
 * A performer file to be filled in: every measure there is with how to take it, draft choices and allowances with what
 * holds without them, and a fitting as an example. Once the required measures are written in it can be drafted; the
 * text ends with the blank list of fittings and an example of one, and with a line break.
 */
export function beginPerformer({ performer, units, schema, taken }: BeginOptions): string {
  const production = taken?.production
  const lines = [
    ...(schema === undefined ? [] : [`# yaml-language-server: $schema=${schema}`]),
    ...comment(
      'CONFIDENTIAL: the measurements of one person. Keep them where only those who cut for the performer can read ' +
        'them, and write a role or a code instead of a legal name. Local rules come first.',
    ),
    '#',
    ...comment(
      'One file for each performer and costume. What stands behind # is explanation, or an example to be taken out ' +
        'of its #. What is left blank was not taken: it is estimated where it can be, and every sheet says so.',
    ),
    ...comment(`Lengths as you would say them: ${spoken(units)}. A plain number takes the units below.`),
    '',
    field(`performer: ${scalarText(performer)}`, 'a role or a code, not a legal name'),
    production === undefined ? field('production:', 'the show') : `production: ${scalarText(production)}`,
    field(`units: ${units}`, 'in, cm or mm'),
    field('measured:', 'the date, such as 2026-10-02'),
    '',
    ...bodyLines(units),
    '',
    ...draftLines(units, taken?.draft ?? {}),
    '',
    ...allowanceLines(units, taken),
    '',
    ...fittingLines(units),
  ]
  return `${lines.join('\n')}\n`
}

function bodyLines(units: LengthUnit): string[] {
  return [
    ...comment(
      'How to take them: common practice. Over what is worn under the costume, tape level and close without pulling, ' +
        'breath and arms at rest. Ask before touching, and measure in private.',
    ),
    ...comment(`Where it says "left, right" the two may differ: { left: ${pair(units)} }.`),
    'body:',
    ...MEASURE_NAMES.flatMap((name) => measureLines(name, MEASURES[name])),
  ]
}

function measureLines(name: MeasureName, { how, required, sided, kind }: MeasureDefinition): string[] {
  const remarks = [
    required ? 'REQUIRED' : 'may be blank',
    ...(sided ? ['left, right'] : []),
    ...(kind === 'angle' ? ['such as 22 deg'] : []),
  ]
  return ['', ...comment(how, '  '), `  ${field(`${name}:`, remarks.join('; '), REMARK - 2)}`]
}

function draftLines(units: LengthUnit, taken: Readonly<Record<string, Tree>>): string[] {
  const lines = Object.entries(offeredChoices(units)).flatMap(([key, { value, active, remark }]) => {
    const own = taken[key]
    if (own !== undefined && !active) return [`  ${key}: ${flowText(own)}`]
    if (typeof value !== 'string')
      return [`  # ${field(`${key}:`, remark, REMARK - 4)}`, ...value.map((line) => `  #   ${line}`)]
    const text = `${key}: ${own === undefined ? value : flowText(own)}`
    return [active ? `  ${field(text, remark, REMARK - 2)}` : `  # ${field(text, remark, REMARK - 4)}`]
  })
  return [...comment('What is to be drafted. Without a line its default holds.'), 'draft:', ...lines]
}

function allowanceLines(units: LengthUnit, taken: TakenChoices | undefined): string[] {
  const allowance = taken?.allowance
  const numbered = Object.entries(taken?.mockUps ?? {})
  return [
    ...comment(
      `What is left beyond the stitching lines of a mock-up${allowance === undefined ? ': these are the built-in ones' : ''}. Seams by name: ${ALLOWANCE_NAMES.join(', ')}.`,
    ),
    'mock-up:',
    allowance === undefined ? `  allowance: ${standardAllowance(units)}` : `  allowance: ${flowText(allowance)}`,
    ...(numbered.length === 0
      ? [
          ...comment('Those of one mock-up alone, by its number:'),
          '# mock-ups:',
          `#   2: { allowance: { default: ${bareLength(19.05, units)} } }`,
        ]
      : ['mock-ups:', ...numbered.map(([number, value]) => `  ${number}: ${flowText(value)}`)]),
  ]
}

function fittingLines(units: LengthUnit): string[] {
  const length = (mm: number) => bareLength(mm, units)
  return [
    ...comment(
      'What was pinned, fitting by fitting: scye record adds it here, asking or told. By hand it is written as in the ' +
        'example, without the #.',
    ),
    'fittings:',
    '#   - label: first fitting',
    '#     date: 2026-10-09',
    '#     mock-up: 1',
    '#     corrections:',
    '#       - do: let out',
    '#         seam: cap',
    '#         at: { line: cap line, side of cap: front }',
    `#         by: ${length(9.525)}`,
    '#         taper to: [ shoulder notch, front notch ]',
    '#         side: both',
    '#         seen: tight over the front of the arm',
  ]
}

/** A key with its value and the remark behind it. */
function field(text: string, remark: string, column: number = REMARK): string {
  return `${text.padEnd(column - 1)} # ${remark}`
}

function spoken(units: LengthUnit): string {
  const first = units === 'in' ? '37 3/4, 37-3/4 in, 37¾″' : units === 'cm' ? '95.9, 95,9 cm' : '959, 959 mm'
  return `${first}, ${['in', 'cm', 'mm']
    .filter((unit) => unit !== units)
    .map((unit) => formatLength(958.85, unit as LengthUnit))
    .join(', ')}`
}

function pair(units: LengthUnit): string {
  return `${bareLength(298.45, units)}, right: ${bareLength(304.8, units)}`
}

/** Words behind `#`, broken into lines. */
function comment(text: string, indent = '', hanging = ''): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1]
    if (last !== undefined && last.length + 1 + word.length <= WIDTH) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(`${indent}# ${lines.length === 0 ? '' : hanging}${word}`)
  }
  return lines
}
