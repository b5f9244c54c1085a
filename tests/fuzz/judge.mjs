import { XMLValidator } from 'fast-xml-parser'
import { misfits } from './schemas.mjs'
import { BESIDE, BILLS, EPW, PRODUCTION, PROJECTS, USE_CSV } from './seeds.mjs'

const WORDS = /\b(?:NaN|undefined|Infinity)\b|\[object \w+\]/u
const WORDS_IN_INPUT = /\bnan\b|\bundefined\b|\binf(?:inity)?\b|\[object/iu
const STACK = /^\s+at .+[(:]\d+:\d+\)?$|\b(?:TypeError|RangeError|ReferenceError|SyntaxError)\b/mu
const STACK_IN_INPUT = /Error/u
// oxlint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/u
const CODES = new Set([0, 1, 2, 3])
/** Files that are not damaged, which need not be looked through each time. */
const SOUND = new Set([...Object.values(BESIDE), BILLS, EPW, USE_CSV, ...PRODUCTION, ...PROJECTS])

/**
 * What is wrong with one run.
 *
 * @param {{ files: Record<string, string>, args: readonly string[] }} input
 * @param {{ exitCode: number, stdout: string, stderr: string, written: Record<string, Buffer> }} run
 * @param {ReadonlySet<string>} explained Ids that `explain` knows; empty when it is not asked.
 * @returns {string[]} One line a fault.
 */
export function judge(input, run, explained) {
  const faults = []
  // A fleet goes on after a row that cannot be read, and ends with that row's code.
  const isFleet = ['run-fleet', 'watch-fleet'].includes(input.args[0])
  // Put together and searched only where something was found that it may explain: it is megabytes.
  let joined
  const given = () =>
    (joined ??= [...Object.values(input.files), ...input.args].filter((one) => !SOUND.has(one)).join('\n'))
  // Lines that were read may tell of a defect of another run, whose code is then that of the whole.
  const joinsDefect = input.args.includes('--merge') && /"status":\s*"defect"/u.test(given())
  // A paper that goes into a pipe is no text.
  const isPaper = run.stdout.startsWith('%PDF')
  if (isPaper && !run.stdout.trimEnd().endsWith('%%EOF')) faults.push('half a PDF on stdout')
  const said = isPaper ? run.stderr : `${run.stdout}\n${run.stderr}`
  if (!CODES.has(run.exitCode) && !(joinsDefect && run.exitCode === 70))
    faults.push(`exit code ${run.exitCode}: ${run.stderr.trim().split('\n').at(-1)}`)
  if (run.exitCode !== 0 && run.stdout + run.stderr === '') faults.push(`exit code ${run.exitCode} without a word`)
  if (run.exitCode === 2 && run.stdout !== '' && !isFleet) faults.push('refused, but something stands on stdout')
  if (STACK.test(said) && !STACK_IN_INPUT.test(given()))
    faults.push(`a stack or the name of an error: ${STACK.exec(said)?.[0].trim()}`)
  const files = Object.values(run.written).filter(isText).map(String)
  const texts = [said, ...files]
  for (const text of texts) {
    const found = WORDS.exec(text)
    if (found !== null && !WORDS_IN_INPUT.test(given()))
      faults.push(
        `'${found[0]}' in the output: ${text.slice(Math.max(0, found.index - 60), found.index + 40).replaceAll('\n', ' ')}`,
      )
  }
  for (const text of texts) {
    const found = CONTROL.exec(text)
    if (found !== null) faults.push(`control character U+${found[0].charCodeAt(0).toString(16)} in the output`)
  }
  for (const text of [run.stdout, ...files])
    faults.push(...judgeJson(text, isFleet ? undefined : run.exitCode, explained))
  faults.push(...judgeFiles(run, isFleet))
  return faults
}

/** A document, or lines of them. */
function judgeJson(text, exitCode, explained) {
  const start = text.slice(0, 200).trimStart()
  if (!start.startsWith('{') || !/^\{\s*"format"/u.test(start)) return []
  const isOne = start.startsWith('{\n')
  return (isOne ? [text] : text.trimEnd().split('\n')).flatMap((one) => {
    let data
    try {
      data = JSON.parse(one)
    } catch (error) {
      return [`broken JSON: ${error.message}`]
    }
    return [...misfits(data), ...negativeZeros(one), ...(isOne ? judgeFindings(data, exitCode, explained) : [])]
  })
}

function judgeFindings({ findings }, exitCode, explained) {
  if (!Array.isArray(findings)) return []
  const errors = findings.some((finding) => finding.severity === 'error')
  const unknown =
    explained.size === 0
      ? []
      : findings.map(({ id }) => id).filter((id) => !explained.has(id) && !explained.has(`*.${id.split('.')[1]}`))
  return [
    ...(exitCode === undefined || errors === (exitCode === 1)
      ? []
      : [`exit code ${exitCode} beside ${errors ? 'an' : 'no'} error finding`]),
    ...[...new Set(unknown)].map((id) => `finding '${id}' has no explanation`),
  ]
}

function negativeZeros(text) {
  return /": ?-0[,}\n]|^\s*-0,?$/mu.test(text) ? ['-0 in JSON'] : []
}

function judgeFiles({ exitCode, written }, isFleet) {
  return Object.entries(written).flatMap(([name, bytes]) => [
    ...(name.endsWith('.tmp') ? [`temporary file left: ${name}`] : []),
    ...((exitCode === 2 || exitCode === 3 || exitCode === 70) && !isFleet
      ? [`exit code ${exitCode}, and yet ${name} was written`]
      : []),
    ...(bytes.length === 0 && !name.endsWith('.jsonl') ? [`${name} is empty`] : []),
    ...(name.endsWith('.xml') && XMLValidator.validate(String(bytes)) !== true ? [`${name} is no XML`] : []),
    ...(bytes.subarray(0, 4).toString() === '%PDF' && !bytes.subarray(-8).toString().includes('%%EOF')
      ? [`${name} is half a PDF`]
      : []),
  ])
}

function isText(bytes) {
  return bytes.subarray(0, 4).toString() !== '%PDF'
}

/** Places where a value of the library is no finite number, or is missing. */
export function holes(value, place = '') {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${place} is ${value}`]
  if (ArrayBuffer.isView(value) || Array.isArray(value))
    return Array.from(value)
      .flatMap((item, index) => holes(item, `${place}/${index}`))
      .slice(0, 3)
  if (typeof value === 'object' && value !== null)
    return Object.entries(value)
      .flatMap(([key, item]) => holes(item, `${place}/${key}`))
      .slice(0, 3)
  return []
}
