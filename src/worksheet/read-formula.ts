/** A piece of a formula that is mathematics. */
export interface Token {
  readonly kind: 'number' | 'symbol' | 'function' | 'operator' | 'open' | 'close' | 'comma'
  readonly text: string
}

const FUNCTIONS: ReadonlySet<string> = new Set([
  'abs',
  'ceil',
  'cos',
  'exp',
  'floor',
  'ln',
  'max',
  'min',
  'sin',
  'sqrt',
  'tan',
])
const NUMBER = /^\d+(?:\.\d+)?(?:e[+-]?\d+)?(?![\p{L}\p{N}_.])/u
const WORD = /^[\p{L}_]+/u
const LETTER = /[\p{L}\p{N}_']/u

/**
 * Reads one side of a formula.
 *
 * @param symbols Symbols whose value is known; they may hold spaces.
 * @returns undefined when it is not mathematics in these symbols but holds words, or does not fit together.
 */
export function readFormula(text: string, symbols: readonly string[]): Token[] | undefined {
  const longestFirst = symbols.filter((symbol) => symbol !== '').toSorted((a, b) => b.length - a.length)
  const tokens: Token[] = []
  let rest = text.trimStart()
  while (rest !== '') {
    const token = nextToken(rest, longestFirst)
    if (token === undefined) return undefined
    tokens.push(token)
    rest = rest.slice(token.text.length).trimStart()
  }
  return fits(tokens) ? tokens : undefined
}

function nextToken(rest: string, symbols: readonly string[]): Token | undefined {
  const symbol = symbols.find((each) => rest.startsWith(each) && !LETTER.test(rest.charAt(each.length)))
  if (symbol !== undefined) return { kind: 'symbol', text: symbol }
  const number = NUMBER.exec(rest)?.[0]
  if (number !== undefined) return { kind: 'number', text: number }
  const first = rest.charAt(0)
  if ('+-*/^'.includes(first)) return { kind: 'operator', text: first }
  if (first === '(') return { kind: 'open', text: first }
  if (first === ')') return { kind: 'close', text: first }
  if (first === ',') return { kind: 'comma', text: first }
  const word = WORD.exec(rest)?.[0] ?? ''
  if (word === 'x') return { kind: 'operator', text: word }
  if (word === 'pi') return { kind: 'number', text: word }
  return FUNCTIONS.has(word) && rest.charAt(word.length) === '(' ? { kind: 'function', text: word } : undefined
}

/** Whether the pieces are an expression: brackets in pairs, operators between operands, commas in functions only. */
function fits(tokens: readonly Token[]): boolean {
  const brackets: boolean[] = []
  let wantsOperand = true
  for (const [index, { kind, text }] of tokens.entries()) {
    if (kind === 'operator') {
      if (wantsOperand && text !== '-') return false
      wantsOperand = true
    } else if (kind === 'comma') {
      if (wantsOperand || brackets.at(-1) !== true) return false
      wantsOperand = true
    } else if (kind === 'close') {
      if (wantsOperand || brackets.pop() === undefined) return false
    } else if (kind === 'open') {
      brackets.push(tokens[index - 1]?.kind === 'function')
      wantsOperand = true
    } else wantsOperand = kind === 'function'
  }
  return !wantsOperand && brackets.length === 0
}
