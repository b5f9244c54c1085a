import { radiansOf } from '../../values/index.js'

/** x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

/**
 * What moves a shape, outermost first; undefined when it cannot be read.
 *
 * @source SVG 1.1, transform attribute (from memory)
 */
export function readMatrices(text: string | undefined): Matrix[] | undefined {
  if (text === undefined || text.trim() === '') return []
  const found: Matrix[] = []
  const rest = text.replaceAll(
    /(?<name>[a-zA-Z]+)\s*\((?<args>[^()]*)\)\s*,?/gu,
    (whole, name: string, args: string) => {
      const numbers = args
        .trim()
        .split(/[\s,]+/u)
        .map(Number)
      const matrix = matrixOf(name, numbers)
      if (matrix === undefined || !matrix.every((each) => Math.abs(each) < 1e6)) return whole
      found.push(matrix)
      return ''
    },
  )
  return rest.trim() === '' ? found : undefined
}

function matrixOf(name: string, numbers: readonly number[]): Matrix | undefined {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers
  const { length } = numbers
  if (name === 'matrix' && length === 6) return [a, b, c, d, e, f]
  if (name === 'translate' && length <= 2) return [1, 0, 0, 1, a, b]
  if (name === 'scale' && length === 1) return [a, 0, 0, a, 0, 0]
  if (name === 'scale' && length === 2) return [a, 0, 0, b, 0, 0]
  if (name === 'rotate' && (length === 1 || length === 3)) {
    const [cos, sin] = [Math.cos(radiansOf(a)), Math.sin(radiansOf(a))]
    return [cos, sin, -sin, cos, b - b * cos + c * sin, c - b * sin - c * cos]
  }
  return undefined
}
