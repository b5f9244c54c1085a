/*
 * Rounding of what a customer reads: never to the seller's favour. Energy, savings and money in hand go down, costs and
 * times go up, whatever the figure is near.
 */

/** A part of a step that is the noise of arithmetic. */
const NOISE = 1e-9

/** Largest multiple of a step that is not above a value. */
export function downTo(step: number, value: number): number {
  return tidy(Math.floor(value / step + NOISE) * step)
}

/** Least multiple of a step that is not below a value. */
export function upTo(step: number, value: number): number {
  return tidy(Math.ceil(value / step - NOISE) * step)
}

const tidy = (value: number): number => Number(value.toPrecision(12)) + 0

/** Energy of a year and longer is told in tens of kWh, of a month in kWh, money in dollars, times in tenths of a year. */
export const CAUTIOUS = {
  yearKwh: (kwh: number): number => downTo(10, kwh),
  monthKwh: (kwh: number): number => downTo(1, kwh),
  gainUsd: (usd: number): number => downTo(1, usd),
  costUsd: (usd: number): number => upTo(1, usd),
  costKwh: (kwh: number): number => upTo(10, kwh),
  years: (years: number): number => upTo(0.1, years),
  sharePct: (percent: number): number => downTo(1, percent),
} as const
