import type { CommandOption, CommandWord } from './command.ts'

export const FILES: Readonly<Record<string, CommandWord>> = {
  files: { type: 'string', describe: 'performer files; - is standard input', complete: 'file' },
}

export const JSON_OPTION: Readonly<Record<string, CommandOption>> = {
  json: { type: 'boolean', describe: 'print one JSON document on stdout, everything else on stderr' },
}

/** What every command that makes a pattern has. */
export const MAKING: Readonly<Record<string, CommandOption>> = {
  ...JSON_OPTION,
  quiet: { alias: 'q', type: 'boolean', describe: 'print problems and findings of severity error only' },
  'no-true': { type: 'boolean', describe: 'leave the seams as the corrections made them, small corners too' },
}

export const UNTIL: Readonly<Record<string, CommandOption>> = {
  until: {
    type: 'string',
    requiresArg: true,
    describe: 'stop after the fitting with this label; none or draft: before any',
  },
}

export const OUTPUT: Readonly<Record<string, CommandOption>> = {
  output: {
    alias: 'o',
    type: 'string',
    requiresArg: true,
    describe: 'folder to write to; by default NAME-pattern beside the file',
    complete: 'folder',
  },
}

/** The files wanted and the paper of the tiles. */
export const SHEETS: Readonly<Record<string, CommandOption>> = {
  as: {
    type: 'string',
    requiresArg: true,
    describe: 'svg, pdf, dxf, json or several, as svg,pdf; by default svg, pdf and json',
    complete: 'format',
  },
  paper: {
    type: 'string',
    requiresArg: true,
    describe: 'of the tiles: a4, letter, a0, roll-36in, 610x914mm or several; by default letter for inches, else a4',
    complete: 'paper',
  },
}

/** Options of a correction stand under this in the help of `scye record`. */
export const CORRECTION_GROUP = 'The correction (without --do it is asked, on a terminal):'
