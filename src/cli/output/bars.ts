import { type Bar, cleanLine, formatNumber } from '../../report/index.js'
import type { Style } from './style.js'
import { displayWidth } from './wrap.js'

const LONGEST = 60

/** One line a bar: label, number, and a bar in proportion to the largest. */
export function renderBars(bars: readonly Bar[], unit: string, decimals: number | undefined, style: Style): string[] {
  const labels = bars.map((bar) => cleanLine(bar.label))
  const numbers = bars.map((bar) => `${formatNumber(bar.value, decimals)}${unit === '' ? '' : ` ${cleanLine(unit)}`}`)
  const labelWidth = Math.max(0, ...labels.map(displayWidth))
  const numberWidth = Math.max(0, ...numbers.map(displayWidth))
  const room = Math.max(5, Math.min(LONGEST, style.width - labelWidth - numberWidth - 4))
  const largest = Math.max(0, ...bars.map((bar) => bar.value))
  return bars.map((bar, index) => {
    if (bar.value < 0) throw new Error(`a bar for '${bar.label}' is negative`)
    const length = largest === 0 ? 0 : Math.round((bar.value / largest) * room)
    const label = (labels[index] ?? '') + ' '.repeat(labelWidth - displayWidth(labels[index] ?? ''))
    return `${label}  ${(numbers[index] ?? '').padStart(numberWidth)}  ${(style.lines ? '█' : '#').repeat(length)}`.trimEnd()
  })
}
