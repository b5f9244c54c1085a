import type { Attributes } from './svg-attributes.js'

/** Numbers that each command takes. @source SVG 1.1, path data (from memory) */
const NUMBERS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 }
const WORD = /[A-Za-z]|[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/gu

/** A shape as the text of a path; '' when there is nothing to draw, undefined when it cannot be read. */
export function pathOf(name: string, attributes: Attributes): string | undefined {
  const at = (key: string): number => Number(attributes[key] ?? 0)
  switch (name) {
    case 'path':
      return readPath(attributes['d'] ?? '')
    case 'rect': {
      const [x, y, w, h] = [at('x'), at('y'), at('width'), at('height')]
      return numbers(x, y, w, h) && `M${x} ${y}H${x + w}V${y + h}H${x}Z`
    }
    case 'circle':
      return oval(at('cx'), at('cy'), at('r'), at('r'))
    case 'ellipse':
      return oval(at('cx'), at('cy'), at('rx'), at('ry'))
    case 'line': {
      const [x, y, u, v] = [at('x1'), at('y1'), at('x2'), at('y2')]
      return numbers(x, y, u, v) && `M${x} ${y}L${u} ${v}`
    }
    default: {
      const points = (attributes['points'] ?? '').trim()
      if (points === '') return ''
      const places = points.split(/[\s,]+/u).map(Number)
      if (places.length < 4 || places.length % 2 === 1 || !places.every(Number.isFinite)) return undefined
      return `M${places.join(' ')}${name === 'polygon' ? 'Z' : ''}`
    }
  }
}

function oval(x: number, y: number, rx: number, ry: number): string | undefined {
  if (numbers(x, y, rx, ry) === undefined) return undefined
  if (rx <= 0 || ry <= 0) return ''
  return `M${x - rx} ${y}A${rx} ${ry} 0 1 0 ${x + rx} ${y}A${rx} ${ry} 0 1 0 ${x - rx} ${y}Z`
}

const numbers = (...all: readonly number[]): 'good' | undefined =>
  all.every((each) => Math.abs(each) < 1e6) ? 'good' : undefined

/** The path written again with a space between all its words; undefined when a command lacks numbers. */
function readPath(d: string): string | undefined {
  if (d.replaceAll(WORD, '').replaceAll(/[\s,]/gu, '') !== '') return undefined
  const words = d.match(WORD) ?? []
  if (words.length > 0 && !/^m$/iu.test(words[0] ?? '')) return undefined
  for (let at = 0; at < words.length;) {
    const needed = NUMBERS[(words[at] ?? '').toUpperCase()]
    if (needed === undefined) return undefined
    let next = at + 1
    while (next < words.length && !/^[A-Za-z]$/u.test(words[next] ?? '')) next++
    const count = next - at - 1
    if (needed === 0 ? count > 0 : count === 0 || count % needed !== 0) return undefined
    at = next
  }
  return words.join(' ')
}
