import type { Command } from './command.ts'
import { CORRECTION_GROUP, JSON_OPTION, OUTPUT } from './shared-options.ts'

const FITTING = 'The fitting:'

export const record: Command = {
  name: 'record',
  takes: '<files..>',
  about: 'add a correction to a performer file, with options or by questions; or void one',
  words: { files: { type: 'string', describe: 'the performer file to write into', complete: 'file' } },
  moreOptions: async () => (await import('../record-options.ts')).SETTING_OPTIONS,
  options: {
    side: {
      type: 'string',
      requiresArg: true,
      group: CORRECTION_GROUP,
      describe: 'left, right or both: the wearer’s; by default both',
      complete: ['left', 'right', 'both'],
    },
    seen: { type: 'string', requiresArg: true, group: CORRECTION_GROUP, describe: 'what was seen on the body' },
    fitting: {
      type: 'string',
      requiresArg: true,
      group: FITTING,
      describe: 'its label; by default the last one in the file. Another label begins a new one',
    },
    date: { type: 'string', requiresArg: true, group: FITTING, describe: 'of a new fitting, such as 2026-10-09' },
    'mock-up': {
      type: 'string',
      requiresArg: true,
      group: FITTING,
      describe: 'number of the mock-up on the body, of a new fitting',
    },
    provisional: {
      type: 'string',
      requiresArg: true,
      group: FITTING,
      describe: 'fitted on this, such as stand-in, of a new fitting',
    },
    void: {
      type: 'string',
      requiresArg: true,
      describe: 'number of a correction of that fitting, as on the slip, that no longer counts',
    },
    why: { type: 'string', requiresArg: true, describe: 'the reason, with --void' },
    'dry-run': { type: 'boolean', describe: 'say what would be recorded, and write nothing' },
    ...OUTPUT,
    ...JSON_OPTION,
    quiet: { alias: 'q', type: 'boolean', describe: 'print problems only' },
  },
  load: async () => (await import('../record-command.ts')).recordCommand,
}
