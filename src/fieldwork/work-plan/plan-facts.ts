import type { PlanQuantity, PlanState, PlanStep } from './plan-values.js'

const STATE_TEXTS: Readonly<Record<PlanState, string>> = {
  not_proved_dead: 'the house is live as ever; everything counts as live until the absence of voltage is proved',
  dead: 'dead: everything of the system off and locked out',
  open_strings_live: 'off and locked out; modules and open strings are live by light',
  closed_strings_off: 'off and locked out; the strings are closed and live up to the open DC switch',
  on_after_permission: 'on, only after the written permission of the utility',
}

export function stateText({ state }: PlanStep): string {
  return STATE_TEXTS[state]
}

export function quantity(what: string, count: number, unit = ''): PlanQuantity {
  return { what, count, unit }
}

/** A length as a tape shows it, to the nearest sixteenth: `5 ft 3-1/2 in`. */
export function tape(inches: number): string {
  return tapeText(Math.round(inches * 16))
}

/** A length that must not be exceeded, rounded down to the sixteenth. */
export function tapeAtMost(inches: number): string {
  return tapeText(Math.floor(inches * 16 + 1e-6))
}

function tapeText(sixteenths: number): string {
  const feet = Math.floor(sixteenths / 192)
  const whole = Math.floor((sixteenths - feet * 192) / 16)
  let [top, bottom] = [sixteenths % 16, 16]
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  const rest = top === 0 ? `${whole}` : whole === 0 ? `${top}/${bottom}` : `${whole}-${top}/${bottom}`
  return feet === 0 ? `${rest} in` : `${feet} ft ${rest} in`
}

/** `46 x mounts`, `18 ft of EMT` */
export function quantityText({ what, count, unit }: PlanQuantity): string {
  const number = Number.isInteger(count) ? `${count}` : count.toFixed(1)
  return unit === '' ? `${number} x ${what}` : `${number} ${unit} of ${what}`
}

/** `height, live conductors`: which of the plan's cautions this step is about. */
export function cautionWords({ cautions }: PlanStep): string {
  return cautions.map((each) => each.replaceAll('-', ' ')).join(', ')
}

export function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}
