/** What a default appearance asks for. */
export interface DefaultLook {
  /** Name of the font among the resources of the form, '' when it names none. */
  readonly fontName: string
  /** Points; 0 when the size follows the box. */
  readonly sizePt: number
  /** The operator that sets the colour, `0 g`. */
  readonly colour: string
}

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)$/u
/** Operators of colour, and how many numbers each takes. */
const COLOURS: Readonly<Record<string, number>> = { g: 1, rg: 3, k: 4 }

/**
 * Reads a default appearance, `/Helv 10 Tf 0 g`. What it asks for beyond font, size and colour is not followed.
 *
 * @source ISO 32000-1:2008, 12.7.3.3; from memory.
 */
export function readDefaultLook(text: string): DefaultLook {
  let [fontName, sizePt, colour] = ['', 0, '0 g']
  let operands: string[] = []
  for (const token of text.split(/\s+/u)) {
    if (NUMBER.test(token) || token.startsWith('/')) {
      operands.push(token)
      continue
    }
    const numbers = operands.filter((one) => NUMBER.test(one)).map(Number)
    const name = operands.find((one) => one.startsWith('/'))
    if (token === 'Tf' && name !== undefined) {
      fontName = name.slice(1)
      sizePt = Math.min(300, Math.abs(numbers.at(-1) ?? 0))
    } else if (Object.hasOwn(COLOURS, token) && numbers.length === COLOURS[token]) {
      colour = [...numbers.map((one) => String(Math.max(0, Math.min(1, one)))), token].join(' ')
    }
    operands = []
  }
  return { fontName, sizePt, colour }
}
