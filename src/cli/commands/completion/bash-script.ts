import { lists, quoted, type CompletedOption, type CompletedSubcommand } from './completed.js'

/** Completion for bash 3.2 and newer; needs no helper package. */
export function bashScript(subcommands: readonly CompletedSubcommand[], common: readonly CompletedOption[]): string {
  const names = subcommands.map(({ name }) => name)
  const commonNames = common.flatMap((option) => option.names)
  const cases = subcommands.flatMap(({ name, options, operands }) => [
    `    ${name})`,
    `      options=${quoted([...options.flatMap((option) => option.names), ...commonNames].join(' '))}`,
    ...(lists(operands) ? [`      words=${quoted(operands.join(' '))}`] : []),
    ...(operands === 'file' ? ['      files=1'] : []),
    ...(operands === 'asked' ? ['      asked=1'] : []),
    '      case "$previous" in',
    ...options.flatMap(valueCase),
    '      esac ;;',
  ])
  return `${[
    '# gablewatt completion for bash',
    // Names of files may hold spaces: only a line break parts two of them.
    '_gablewatt_files() {',
    `  local IFS=$'\\n'`,
    '  COMPREPLY=($(compgen -f -- "$current"))',
    '}',
    // What only the program knows: keys, ids, editions, places. A step that goes on gets no blank.
    '_gablewatt_ask() {',
    '  local line',
    '  while IFS= read -r line; do COMPREPLY+=("$line"); done \\',
    '    < <("${COMP_WORDS[0]}" complete-shell bash -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)',
    '  case "${COMPREPLY[0]}" in *.|*=) compopt -o nospace 2>/dev/null ;; esac',
    '}',
    '_gablewatt() {',
    '  local current="${COMP_WORDS[COMP_CWORD]}" previous="${COMP_WORDS[COMP_CWORD-1]}"',
    '  local subcommand= word options= words= files= asked= at=$COMP_CWORD',
    '  COMPREPLY=()',
    // bash parts words at an equals sign.
    '  [ "${COMP_WORDS[at]}" = = ] || { [ "${COMP_WORDS[at-1]}" = = ] && at=$((at-1)); }',
    '  if [ "${COMP_WORDS[at]}" = = ]; then',
    '    case "${COMP_WORDS[at-1]}" in --*) previous="${COMP_WORDS[at-1]}" ;; *) previous="${COMP_WORDS[at-2]}" ;; esac',
    '    case "$previous" in =) previous="${COMP_WORDS[at-3]}" ;; esac',
    '  fi',
    '  for word in "${COMP_WORDS[@]:1:COMP_CWORD-1}"; do',
    '    case "$word" in -*) ;; *) subcommand="$word"; break ;; esac',
    '  done',
    '  case "$subcommand" in',
    `    '') words=${quoted([...names, 'help'].join(' '))}; options=${quoted([...commonNames, '--version'].join(' '))} ;;`,
    `    help) words=${quoted(names.join(' '))} ;;`,
    ...cases,
    '  esac',
    '  case "$current" in',
    '    -*) COMPREPLY=($(compgen -W "$options" -- "$current")) ;;',
    '    *) if [ -n "$files" ]; then _gablewatt_files; elif [ -n "$asked" ]; then _gablewatt_ask; else COMPREPLY=($(compgen -W "$words" -- "$current")); fi ;;',
    '  esac',
    '}',
    'complete -o filenames -o bashdefault -F _gablewatt gablewatt',
  ].join('\n')}\n`
}

/** What may follow an option that takes a value. */
function valueCase({ names, value }: CompletedOption): string[] {
  if (value === 'none') return []
  const reply = lists(value)
    ? `COMPREPLY=($(compgen -W ${quoted(value.join(' '))} -- "$current"))`
    : value === 'file'
      ? '_gablewatt_files'
      : value === 'asked'
        ? '_gablewatt_ask'
        : ':'
  return [`        ${names.join('|')}) ${reply}; return ;;`]
}
