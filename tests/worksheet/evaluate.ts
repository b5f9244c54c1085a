/** Works out a printed expression such as `25 A x 0.96 x sqrt(1 - 0.9^2)`, without the program's own reader. */
export interface Printed {
  /** Value from the numbers as they stand. */
  readonly value: number
  /** Least and most that the numbers behind the printed digits can give. */
  readonly least: number
  readonly most: number
}

/** Half a unit in the last of six significant digits, relative; a number with fewer digits ends in zeros. */
const HALF_DIGIT = 5e-6

const NUMBER = /^(\d+(?:\.\d+)?(?:e[+-]?\d+)?)\s*(deg [CF]|%[^\s)]*|(?!(?:x|and)\b)[A-Za-z][\w/%-]*)?/u

type Numbers = (index: number, value: number) => number

/** @throws Error when the text is no expression. */
export function evaluate(text: string): Printed {
  let count = 0
  const value = parse(text, (index, number) => {
    count = Math.max(count, index + 1)
    return number
  })
  let spread = 0
  const ends = [value]
  for (let moved = 0; moved < count; moved++)
    for (const sign of [-1, 1]) {
      const other = parse(text, (index, number) => (index === moved ? number * (1 + sign * HALF_DIGIT) : number))
      // A step beyond what the function takes, such as the root of less than nothing, tells nothing.
      if (!Number.isFinite(other)) continue
      ends.push(other)
      if (sign === 1) spread += Math.abs(other - value)
    }
  return { value, least: Math.min(...ends, value - spread), most: Math.max(...ends, value + spread) }
}

/** A printed result with its unit, as the digits behind it can be; money is to the cent. */
export function quantity(text: string): Printed {
  const [number = '', ...unit] = text.split(' ')
  const value = Number(number) / (unit[0]?.startsWith('%') === true ? 100 : 1)
  const half = Math.abs(value) * HALF_DIGIT + (unit.join(' ') === 'USD' ? 0.005 + 1e-9 : 0)
  return { value, least: value - half, most: value + half }
}

function parse(text: string, numbers: Numbers): number {
  let rest = text.trim()
  let index = 0
  const take = (token: string): boolean => {
    if (!rest.startsWith(token)) return false
    rest = rest.slice(token.length).trimStart()
    return true
  }
  const need = (token: string): void => {
    if (!take(token)) throw new Error(`'${token}' is wanted at '${rest}' of '${text}'`)
  }
  const sum = (): number => {
    let total = product()
    for (;;)
      if (take('+')) total += product()
      else if (take('-')) total -= product()
      else return total
  }
  const product = (): number => {
    let total = power()
    for (;;)
      if (/^x[ (]/u.test(rest) && take('x')) total *= power()
      else if (take('/')) total /= power()
      else return total
  }
  const power = (): number => {
    if (take('-')) return -power()
    const base = operand()
    return take('^') ? base ** power() : base
  }
  const inBrackets = (): number[] => {
    need('(')
    const values = [sum()]
    while (take(',')) values.push(sum())
    need(')')
    return values
  }
  const operand = (): number => {
    if (rest.startsWith('(')) return inBrackets()[0] ?? Number.NaN
    if (/^pi\b/u.test(rest) && take('pi')) return Math.PI
    const called = /^(min|max|sqrt|exp|cos|sin|tan|floor|ceil|abs|ln)\(/u.exec(rest)?.[1]
    if (called !== undefined) {
      need(called)
      return call(called, inBrackets())
    }
    const [all, digits, unit = ''] = NUMBER.exec(rest) ?? []
    if (all === undefined) throw new Error(`no number at '${rest}' of '${text}'`)
    rest = rest.slice(all.length).trimStart()
    const value = numbers(index++, Number(digits))
    if (unit.startsWith('%')) return value / 100
    return unit === 'deg' ? (value * Math.PI) / 180 : value
  }
  const result = sum()
  if (rest !== '') throw new Error(`'${rest}' is left of '${text}'`)
  return result
}

/** Rounding up and down forgives the last binary digit. */
const SLACK = 1e-9

function call(name: string, values: readonly number[]): number {
  const [first = Number.NaN] = values
  switch (name) {
    case 'min':
      return Math.min(...values)
    case 'max':
      return Math.max(...values)
    case 'sqrt':
      return Math.sqrt(first)
    case 'exp':
      return Math.exp(first)
    case 'cos':
      return Math.cos(first)
    case 'sin':
      return Math.sin(first)
    case 'tan':
      return Math.tan(first)
    case 'floor':
      return Math.floor(first + SLACK)
    case 'ceil':
      return Math.ceil(first - SLACK)
    case 'abs':
      return Math.abs(first)
    case 'ln':
      return Math.log(first)
    default:
      throw new Error(name)
  }
}
