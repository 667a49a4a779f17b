type Values = 'file' | 'folder' | readonly string[]

interface CompletedOption {
  readonly name: string
  readonly short?: string
  readonly about: string
  /** What may follow it; absent for a switch. */
  readonly value?: Values
}

/** Every command with what may stand after it. */
export type CompletionTable = readonly {
  readonly name: string
  readonly about: string
  readonly word: Values
  readonly options: readonly CompletedOption[]
}[]

/** For bash 4 or newer: `source <(scye completion bash)`. */
export function bashCompletion(table: CompletionTable): string {
  const fill = (values: Values) =>
    values === 'file'
      ? 'COMPREPLY=($(compgen -f -- "$word")); compopt -o filenames'
      : values === 'folder'
        ? 'COMPREPLY=($(compgen -d -- "$word")); compopt -o filenames'
        : `COMPREPLY=($(compgen -W ${quoted(values.join('\n'))} -- "$word"))`
  const ofCommand = table.map(({ name, word, options }) => {
    const takes = options.flatMap(({ name: long, short, value }) =>
      value === undefined ? [] : [`      ${short ? `-${short}|` : ''}--${long}) ${fill(value)}; return ;;`],
    )
    return `    ${name})
      case $before in
${[...takes, '      *) ;;'].join('\n')}
      esac
      if [[ $word == -* ]]; then ${fill(options.map((option) => `--${option.name}`))}; return; fi
      ${fill(word)} ;;`
  })
  return `# Completion of scye for bash.
_scye() {
  local IFS=$'\\n' word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]}
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then ${fill([...table.map(({ name }) => name), '--help', '--version'])}; return; fi
  case \${COMP_WORDS[1]} in
${ofCommand.join('\n')}
  esac
}
complete -F _scye scye
`
}

/** For zsh: `source <(scye completion zsh)`, after compinit. */
export function zshCompletion(table: CompletionTable): string {
  const action = (values: Values) =>
    values === 'file' ? '_files' : values === 'folder' ? '_files -/' : `(${values.join(' ')})`
  const safe = (text: string) =>
    text
      .replace(/[[\]:]/g, ' ')
      .replace(/\s+/g, ' ')
      .trim()
  const specs = (options: readonly CompletedOption[]) =>
    options.flatMap(({ name, short, about, value }) =>
      [`--${name}`, ...(short ? [`-${short}`] : [])].map((flag) =>
        quoted(`${flag}[${safe(about)}]${value === undefined ? '' : `:${name}:${action(value)}`}`),
      ),
    )
  const ofCommand = table.map(
    ({ name, word, options }) =>
      `    ${name}) _arguments ${[...specs(options), quoted(`*:word:${action(word)}`)].join(' ')} ;;`,
  )
  return `#compdef scye
# Completion of scye for zsh.
_scye() {
  local -a commands
  commands=(${table.map(({ name, about }) => quoted(`${name}:${safe(about)}`)).join(' ')})
  if ((CURRENT == 2)); then _describe command commands; return; fi
  local command=\${words[2]}
  shift words
  ((CURRENT--))
  case $command in
${ofCommand.join('\n')}
  esac
}
compdef _scye scye
`
}

/** For fish: `scye completion fish | source`. */
export function fishCompletion(table: CompletionTable): string {
  const after = (values: Values) =>
    values === 'file'
      ? '-F'
      : values === 'folder'
        ? "-f -a '(__fish_complete_directories)'"
        : `-f -a ${quoted(values.join(' '))}`
  const lines = table.flatMap(({ name, about, word, options }) => {
    const seen = `-n ${quoted(`__fish_seen_subcommand_from ${name}`)}`
    return [
      `complete -c scye -f -n __fish_use_subcommand -a ${name} -d ${quoted(about)}`,
      `complete -c scye ${seen} ${after(word)}`,
      ...options.map(
        (option) =>
          `complete -c scye ${seen} -l ${option.name}${option.short ? ` -s ${option.short}` : ''}${option.value === undefined ? '' : ` -r ${after(option.value)}`} -d ${quoted(option.about)}`,
      ),
    ]
  })
  return `# Completion of scye for fish.\n${lines.join('\n')}\n`
}

/** One word of a shell, whatever is in it. */
function quoted(text: string): string {
  return `'${text.replace(/'/g, "'\\\\''")}'`
}
