import { lists, quoted, type CompletedOption, type CompletedSubcommand } from './completed.js'

/** Completion for zsh, as a file of fpath. */
export function zshScript(subcommands: readonly CompletedSubcommand[], common: readonly CompletedOption[]): string {
  const described = subcommands.map(({ name, says }) => `    ${quoted(`${name}:${escapeColons(says)}`)}`)
  const cases = subcommands.flatMap(({ name, options, operands }) => [
    `    ${name})`,
    '      _arguments -s \\',
    ...[...options, ...common].flatMap(specs).map((spec) => `        ${quoted(spec)} \\`),
    `        ${quoted(`*: :${operandAction(operands)}`)} ;;`,
  ])
  return `${[
    '#compdef gablewatt',
    // What only the program knows: keys, ids, editions, places. A step that goes on gets no blank.
    '_gablewatt_ask() {',
    '  local -a found',
    '  found=("${(@f)$(gablewatt complete-shell zsh -- "${(@Q)words[1,CURRENT]}" 2>/dev/null)}")',
    "  compadd -S '' -- ${(M)found:#*[.=]}",
    '  compadd -- ${found:#*[.=]}',
    '}',
    '_gablewatt() {',
    '  local -a subcommands',
    '  subcommands=(',
    ...described,
    `    'help:show help'`,
    '  )',
    '  if (( CURRENT == 2 )); then',
    `    _describe 'subcommand' subcommands`,
    '    return',
    '  fi',
    '  local subcommand=$words[2]',
    '  shift words; (( CURRENT-- ))',
    '  case $subcommand in',
    `    help) _describe 'subcommand' subcommands ;;`,
    ...cases,
    '  esac',
    '}',
    'if [ "$funcstack[1]" = _gablewatt ]; then _gablewatt "$@"; else compdef _gablewatt gablewatt; fi',
  ].join('\n')}\n`
}

function specs({ names, says, value }: CompletedOption): string[] {
  const text = `[${says.replace(/[[\]:]/gu, (character) => `\\${character}`)}]`
  const tail = value === 'none' ? '' : `: :${operandAction(value)}`
  return names.map((name) => `*${name}${text}${tail}`)
}

function operandAction(operands: CompletedSubcommand['operands'] | CompletedOption['value']): string {
  if (lists(operands)) return `(${operands.join(' ')})`
  if (operands === 'asked') return '_gablewatt_ask'
  return operands === 'file' ? '_files' : ' '
}

function escapeColons(text: string): string {
  return text.replaceAll(':', '\\:')
}
