import type { Attributes } from './svg-attributes.js'

/** How a shape is drawn; undefined: not filled, no outline. */
export interface SvgLook {
  readonly fill: string | undefined
  readonly stroke: string | undefined
  readonly strokeWidth: number
  readonly evenOdd: boolean
}

/** @source SVG 1.1, initial values of fill, stroke and stroke-width (from memory) */
export const START_LOOK: SvgLook = { fill: '#000000', stroke: undefined, strokeWidth: 1, evenOdd: false }

/** The colours by name that exporters write; others are to be written as numbers. */
const NAMES: Readonly<Record<string, string>> = {
  black: '#000000',
  white: '#ffffff',
  red: '#ff0000',
  green: '#008000',
  blue: '#0000ff',
  gray: '#808080',
  grey: '#808080',
  orange: '#ffa500',
  yellow: '#ffff00',
}

/** The look of a shape from its attributes and its style, over that of what it lies in; words when it cannot be read. */
export function lookOf(attributes: Attributes, before: SvgLook): SvgLook | string {
  const styled = Object.fromEntries(
    (attributes['style'] ?? '').split(';').flatMap((each) => {
      const [name = '', value = ''] = each.split(':')
      return name.trim() === '' ? [] : [[name.trim(), value.trim()]]
    }),
  )
  const read = (name: string): string | undefined => {
    const value: unknown = Object.hasOwn(styled, name)
      ? styled[name]
      : Object.hasOwn(attributes, name)
        ? attributes[name]
        : undefined
    return typeof value === 'string' ? value.trim() : undefined
  }
  const fill = colourOf(read('fill'), before.fill)
  const stroke = colourOf(read('stroke'), before.stroke)
  if (fill === 'unknown' || stroke === 'unknown') return 'a colour cannot be read; write colours as #rrggbb'
  const width = Number((read('stroke-width') ?? String(before.strokeWidth)).replace(/px$/u, ''))
  if (!(width >= 0 && width < 1e5)) return 'a stroke-width cannot be read'
  const rule = read('fill-rule')
  return { fill, stroke, strokeWidth: width, evenOdd: rule === undefined ? before.evenOdd : rule === 'evenodd' }
}

function colourOf(text: string | undefined, before: string | undefined): string | undefined {
  if (text === undefined || text === 'inherit' || text === '') return before
  if (text === 'none' || text === 'transparent') return undefined
  if (text === 'currentColor') return '#000000'
  const low = text.toLowerCase()
  if (/^#[\da-f]{6}$/u.test(low)) return low
  if (/^#[\da-f]{3}$/u.test(low)) return low.replaceAll(/[\da-f]/gu, '$&$&')
  const parts = /^rgb\(\s*(?<r>\d{1,3})\s*,\s*(?<g>\d{1,3})\s*,\s*(?<b>\d{1,3})\s*\)$/u.exec(low)?.groups
  if (parts !== undefined) {
    const hex = [parts['r'], parts['g'], parts['b']].map((each) =>
      Math.min(255, Number(each)).toString(16).padStart(2, '0'),
    )
    return `#${hex.join('')}`
  }
  return Object.hasOwn(NAMES, low) ? NAMES[low] : 'unknown'
}
