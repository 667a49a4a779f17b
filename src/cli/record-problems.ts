import type { Problem, RecordedText } from '../index.ts'

/**
 * Problems of the text with the correction in it, for somebody who has the text without: what is the matter with the
 * correction itself is laid to its option (`optionOf` a setting), or to the setting where it was asked; lines of the
 * rest are those of the file as it is.
 */
export function recordProblems(
  problems: readonly Problem[],
  recorded: RecordedText,
  text: string,
  optionOf: ((setting: string) => string) | undefined,
): Problem[] {
  const more = recorded.text.split('\n').length - text.split('\n').length
  const first = firstChange(recorded.text, text)
  return problems.map((problem) => {
    const { field, line, column, file, ...where } = problem.where
    const own = ownSetting(field, recorded)
    if (own !== undefined) {
      const { fitting: _, correction: __, ...on } = where
      return {
        ...problem,
        where: { ...on, field: own === '' ? 'the correction' : optionOf ? `--${optionOf(own)}` : own },
      }
    }
    if (line === undefined || line <= first + more) return problem
    return { ...problem, where: { ...problem.where, line: line - more } }
  })
}

/** The setting of the correction recorded that a field names, without the number in a list; '' for the whole of it. */
function ownSetting(field: string | undefined, { field: own, isNew }: RecordedText): string | undefined {
  if (field === own) return ''
  if (field?.startsWith(`${own}.`)) return (field.slice(own.length + 1).split('.')[0] as string).replace(/_/g, ' ')
  const fitting = own.replace(/\.corrections\..*$/, '.')
  return isNew && field?.startsWith(fitting) ? field.slice(fitting.length).split('.')[0] : undefined
}

/** Lines of both texts that are the same before the first that is not. */
function firstChange(one: string, other: string): number {
  const [a, b] = [one.split('\n'), other.split('\n')]
  const at = b.findIndex((line, i) => line !== a[i])
  return at < 0 ? b.length : at
}
