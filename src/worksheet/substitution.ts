import { formatQuantity } from './printed.js'
import { readFormula, type Token } from './read-formula.js'
import type { Step } from './step.js'

type Written = Pick<Step, 'formula' | 'inputs' | 'result'>

/**
 * The right side of a formula with its numbers put in, `25 A x 0.96 x 0.8`, or both sides of a comparison,
 * `20 A >= 13.3875 A`. Per cent are hundredths and angles in deg are degrees.
 *
 * @returns undefined where the formula is words: its inputs stand beside it.
 */
export function substitution({ formula, inputs, result }: Written): string | undefined {
  const values = new Map(inputs.map((input) => [input.symbol, input]))
  const [relation, ...others] = formula.match(/<=|>=/gu) ?? []
  const equals = formula.split(/(?<![<>])=/u)
  if (relation === undefined && equals.length === 1) return sideWith(formula, values)
  if (relation === undefined && equals.length === 2) return sideWith(equals[1] ?? '', values)
  if (relation === undefined || others.length > 0 || equals.length > 1) return undefined
  values.set(result.symbol, { ...result, from: '' })
  const sides = formula.split(relation).map((side) => sideWith(side, values))
  return sides.includes(undefined) ? undefined : sides.join(` ${relation} `)
}

/**
 * A step as it is written by hand: formula, numbers put in, result in one line, `I_req = 1.25 x I_max = 1.25 x 8 A = 10 A`.
 * Where the formula is words, or works out something else than the result, the result has a line of its own.
 */
export function writtenStep(step: Written): string[] {
  const { symbol, value, unit } = step.result
  const quantity = formatQuantity(value, unit)
  const numbers = substitution(step)
  const alone = `${symbol} = ${quantity}`
  const [left = '', right] = step.formula.split(/(?<![<>])=/u)
  if (right === undefined) {
    if (numbers === undefined) return [step.formula, alone]
    return /[<>]=/u.test(numbers)
      ? [`${step.formula}: ${numbers}`, alone]
      : [`${symbol} = ${step.formula} = ${numbers} = ${quantity}`]
  }
  const put = numbers === undefined || numbers === right.trim() ? step.formula : `${step.formula} = ${numbers}`
  if (left.trim() !== symbol || numbers === undefined) return [put, alone]
  return [put.endsWith(`= ${quantity}`) ? put : `${put} = ${quantity}`]
}

type Values = ReadonlyMap<string, Step['inputs'][number]>

function sideWith(text: string, values: Values): string | undefined {
  const known = [...values].flatMap(([symbol, { value }]) => (typeof value === 'number' ? [symbol] : []))
  const tokens = readFormula(text, known)
  return tokens?.map((token, index) => pieceOf(token, tokens[index - 1], tokens[index + 1], values)).join('')
}

function pieceOf(token: Token, before: Token | undefined, after: Token | undefined, values: Values): string {
  const { kind, text } = token
  if (kind === 'comma') return ', '
  if (kind === 'close') return ')'
  if (kind === 'operator') {
    const sign = before === undefined || ['operator', 'open', 'comma'].includes(before.kind)
    return sign || text === '^' ? text : text === '*' ? ' x ' : ` ${text} `
  }
  const beside = before !== undefined && ['number', 'symbol', 'close'].includes(before.kind)
  return `${beside ? ' x ' : ''}${kind === 'symbol' ? valueOf(text, after, values) : text}`
}

/** Units that read well inside an expression; others are told beside the input. */
const UNIT = /^(?:deg [CF]|[\p{L}%][\p{L}\p{N}%/-]*)$/u

function valueOf(symbol: string, after: Token | undefined, values: Values): string {
  const { value = symbol, unit = '' } = values.get(symbol) ?? {}
  const text = formatQuantity(value, UNIT.test(unit) ? unit : '')
  const raised = after?.text === '^' && text.includes(' ')
  return raised || text.startsWith('-') ? `(${text})` : text
}
