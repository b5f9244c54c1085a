import { lists, type CompletedOption, type CompletedSubcommand } from './completed.js'

/** What only the program knows: keys, ids, editions, places. */
const ASK = '(gablewatt complete-shell fish -- (commandline -opc)[2..-1] (commandline -ct) 2>/dev/null)'

/** Completion for fish. */
export function fishScript(subcommands: readonly CompletedSubcommand[], common: readonly CompletedOption[]): string {
  const lines = [
    '# gablewatt completion for fish',
    'complete -c gablewatt -f',
    ...subcommands.map(
      ({ name, says }) => `complete -c gablewatt -n __fish_use_subcommand -a ${name} -d ${quotedForFish(says)}`,
    ),
    `complete -c gablewatt -n __fish_use_subcommand -a help -d 'show help'`,
    `complete -c gablewatt -n '__fish_seen_subcommand_from help' -a '${subcommands.map(({ name }) => name).join(' ')}'`,
    ...common.map((option) => optionLine('', option)),
    ...subcommands.flatMap(({ name, options, operands }) => {
      const condition = ` -n '__fish_seen_subcommand_from ${name}'`
      return [
        ...(operands === 'file' ? [`complete -c gablewatt${condition} -F`] : []),
        ...(operands === 'asked' ? [`complete -c gablewatt${condition} -a ${quotedForFish(ASK)}`] : []),
        ...(lists(operands) ? [`complete -c gablewatt${condition} -a ${quotedForFish(operands.join(' '))}`] : []),
        ...options.map((option) => optionLine(condition, option)),
      ]
    }),
  ]
  return `${lines.join('\n')}\n`
}

function optionLine(condition: string, { names, says, value }: CompletedOption): string {
  const flags = names.map((name) => (name.startsWith('--') ? ` -l ${name.slice(2)}` : ` -s ${name.slice(1)}`)).join('')
  const what = lists(value)
    ? ` -x -a ${quotedForFish(value.join(' '))}`
    : { none: '', file: ' -r -F', text: ' -x', asked: ` -x -a ${quotedForFish(ASK)}` }[value]
  return `complete -c gablewatt${condition}${flags}${what} -d ${quotedForFish(says)}`
}

function quotedForFish(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`
}
