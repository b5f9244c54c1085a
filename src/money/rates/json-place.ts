import { lineAt } from '../../values/index.js'

/** A stretch of JSON cannot be read at this offset. */
class Bad extends Error {
  readonly offset: number

  constructor(offset: number) {
    super()
    this.offset = offset
  }
}

/** Keys and indices that lead to a value. */
export type JsonPath = readonly (string | number)[]

/** Line and column of a place in a text, counted from 1. */
export interface TextPlace {
  readonly line: number
  readonly column: number
}

export function placeAt(text: string, offset: number): TextPlace {
  const before = text.slice(0, offset)
  return { line: lineAt(text, offset), column: offset - before.lastIndexOf('\n') }
}

/** Where the value at a path begins in well-formed JSON; of the innermost value around it that there is. */
export function findJson(text: string, path: JsonPath): TextPlace {
  const scan = new Scan(text)
  return placeAt(text, scan.find(scan.blank(0), path))
}

/** Where JSON that cannot be read goes wrong. */
export function badJson(text: string): TextPlace {
  const scan = new Scan(text)
  try {
    const end = scan.blank(scan.skip(scan.blank(0), 0))
    return placeAt(text, end)
  } catch (error) {
    if (error instanceof Bad) return placeAt(text, Math.min(error.offset, text.length))
    throw error
  }
}

const DEEPEST = 500
const LITERAL = /(?:true|false|null|-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)/uy
const STRING = /"(?:[^"\\\n]|\\.)*"/uy

class Scan {
  private readonly text: string

  constructor(text: string) {
    this.text = text
  }

  blank(from: number): number {
    let i = from
    while (i < this.text.length && ' \t\r\n\uFEFF'.includes(this.text.charAt(i))) i += 1
    return i
  }

  find(at: number, path: JsonPath): number {
    const [wanted, ...rest] = path
    if (wanted === undefined) return at
    let found: number | undefined
    const isMap = typeof wanted === 'string'
    if (this.text.charAt(at) !== (isMap ? '{' : '[')) return at
    this.items(at, 0, (name, value) => {
      if (name === wanted) found = value
    })
    return found === undefined ? at : this.find(found, rest)
  }

  /** End of the value that begins at a place. */
  skip(at: number, depth: number): number {
    const first = this.text.charAt(at)
    if (first === '{' || first === '[') return this.items(at, depth)
    return this.match(first === '"' ? STRING : LITERAL, at)
  }

  private items(at: number, depth: number, visit?: (name: string | number, value: number) => void): number {
    if (depth > DEEPEST) throw new Bad(at)
    const isMap = this.text.charAt(at) === '{'
    const close = isMap ? '}' : ']'
    let i = this.blank(at + 1)
    if (this.text.charAt(i) === close) return i + 1
    for (let index = 0; ; index += 1) {
      let name: string | number = index
      if (isMap) {
        const end = this.match(STRING, i)
        name = JSON.parse(this.text.slice(i, end)) as string
        i = this.blank(end)
        if (this.text.charAt(i) !== ':') throw new Bad(i)
        i = this.blank(i + 1)
      }
      visit?.(name, i)
      i = this.blank(this.skip(i, depth + 1))
      if (this.text.charAt(i) === close) return i + 1
      if (this.text.charAt(i) !== ',') throw new Bad(i)
      i = this.blank(i + 1)
    }
  }

  private match(pattern: RegExp, at: number): number {
    pattern.lastIndex = at
    if (!pattern.test(this.text)) throw new Bad(at)
    return pattern.lastIndex
  }
}
