import { NUMBERS, SCALARS } from './values.mjs'

const NUMBER = /-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/gu

/** Each takes a text and gives a damaged one. */
const DAMAGES = [
  (chance, text) => {
    const found = [...text.matchAll(NUMBER)]
    if (found.length === 0) return text
    const { 0: old, index } = chance.of(found)
    const value = chance.chance(0.5)
      ? chance.of(NUMBERS)
      : String(Number(old) * chance.of([-1, 0, 0.001, 0.5, 0.9, 1.1, 2, 10, 1000, 1e9]))
    return text.slice(0, index) + value + text.slice(index + old.length)
  },
  (chance, text) => onLine(chance, text, () => []),
  (chance, text) => onLine(chance, text, (line) => [line, line]),
  (chance, text) => onLine(chance, text, (line) => [line.replace(/:.*$/u, `: ${chance.of(SCALARS)}`)]),
  (chance, text) => onLine(chance, text, (line) => [line.replace(/[^:,;]*$/u, chance.of(SCALARS))]),
  (chance, text) => onLine(chance, text, (line) => [chance.of(['', ' ', '  ', '\t', '- ', '# ', '! ']) + line]),
  (chance, text) => onLine(chance, text, (line) => [line.trimStart()]),
  (chance, text) => {
    const lines = text.split('\n')
    const [a, b] = [chance.below(lines.length), chance.below(lines.length)]
    ;[lines[a], lines[b]] = [lines[b], lines[a]]
    return lines.join('\n')
  },
  (chance, text) => {
    const lines = text.split('\n')
    const from = chance.below(lines.length)
    lines.splice(from, chance.few(12))
    return lines.join('\n')
  },
  (chance, text) => {
    const lines = text.split('\n')
    const piece = lines.slice(chance.below(lines.length)).slice(0, chance.few(8))
    lines.splice(chance.below(lines.length), 0, ...piece)
    return lines.join('\n')
  },
  (chance, text) => text.slice(0, chance.below(text.length + 1)),
  (chance, text) => {
    const at = chance.below(text.length + 1)
    return text.slice(0, at) + chance.of(SCALARS) + text.slice(at)
  },
  (chance, text) => {
    const at = chance.below(text.length + 1)
    return text.slice(0, at) + text.slice(at + chance.few(6))
  },
  (chance, text) => {
    const at = chance.below(text.length + 1)
    return text.slice(0, at) + String.fromCharCode(chance.below(chance.chance(0.8) ? 128 : 65_536)) + text.slice(at + 1)
  },
  (_chance, text) => text.replaceAll('\n', '\r\n'),
  (_chance, text) => text.replaceAll('\n', '\r'),
  (_chance, text) => `\ufeff${text}`,
  (chance, text) => {
    const words = text.match(/[\p{L}_][\p{L}\p{N}_]*/gu) ?? ['']
    return text.replaceAll(chance.of(words), chance.of(words))
  },
]

function onLine(chance, text, change) {
  const lines = text.split('\n')
  const at = chance.below(lines.length)
  lines.splice(at, 1, ...change(lines[at]))
  return lines.join('\n')
}

/** A valid text with one to eight random damages. */
export function mutateText(chance, text) {
  let result = text
  for (let left = chance.few(8); left > 0; left--) result = chance.of(DAMAGES)(chance, result)
  return result
}
