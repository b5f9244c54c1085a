/** Arguments and options of the program that name a file or folder to be read, as its own help tells them. */

/** What an option takes that is no file. */
const VALUES =
  /^(?:path=value|key=value|degrees|lat,lon|place|text|count|number|numbers|percent|usd|id|ids|list|inches|first|month|month\/bill|angle|depth|language|size|paper|what|which|when|rule|day|n|names|name|unit|kind|kinds|end|order|C|W\/m2|YYYY-MM-DD|part\/parts|mark|editions|units|shell|id or term)$/u
/** Options that name what is written. */
const WRITES =
  /^--(?:out|out-dir|hourly|shade-chart|by-module|svg|dxf|report|result|load-sheet|pdf|blank-list|html|junit)$/u
/** Words of the shell and of people. */
const WORDS = /^(?:text|words|shell|id or term)$/u

/**
 * @param {string} name Subcommand.
 * @param {string} help Its help.
 * @returns {string[]} `check-bill <bills.csv>`, `price-bom --compare`.
 */
export function doorsOf(name, help) {
  const usage = /^Usage: gablewatt \S+(.*(?:\n {2,}\S.*)*)/mu.exec(help)?.[1] ?? ''
  const positions = [...usage.matchAll(/[<[]([^>\]]+)[>\]]/gu)]
    .map(([, word]) => word.replace(/\.\.\.$/u, ''))
    .filter((word) => word !== 'options')
  const options = [...help.matchAll(/^ {2}(?:-\w, )?(--[a-z-]+) <([^>]+)>/gmu)]
    .filter(([, option, takes]) => !WRITES.test(option) && !VALUES.test(takes))
    .map(([, option]) => `${name} ${option}`)
  return [
    ...positions.flatMap((word, at) => (WORDS.test(word) ? [] : [`${name} argument ${at + 1}, ${word}`])),
    ...options,
  ]
}

/** Which of the doors a run goes through. */
export function openedBy([name, ...args], doors) {
  const first = args.findIndex((arg) => arg.startsWith('-'))
  const positions = first < 0 ? args.length : first
  return doors.filter((door) => {
    if (!door.startsWith(`${name} `)) return false
    const position = /argument (\d+)/u.exec(door)?.[1]
    return position === undefined ? args.includes(door.slice(name.length + 1)) : positions >= Number(position)
  })
}
