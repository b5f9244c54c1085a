import { finite } from '../worksheet/index.js'

export { formatSignificant } from '../worksheet/index.js'

/**
 * A number for people, with thousands separators and a fixed count of decimals: `12,345.60`. Never `-0`.
 *
 * @param decimals Digits after the point, 0 to 20.
 * @throws Error when the value is not finite.
 */
export function formatNumber(value: number, decimals = 0): string {
  const [whole = '', fraction] = Math.abs(finite(value)).toFixed(decimals).split('.')
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(?:\d{3})+$)/gu, ',') : whole
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`
  return value < 0 && /[1-9]/u.test(digits) ? `-${digits}` : digits
}

/**
 * The value that machine formats carry: 10 significant digits, which is far below any input's accuracy and above the
 * noise of the last bits that differs between platforms. `-0` becomes `0`.
 *
 * @throws Error when the value is not finite.
 */
export function roundForMachines(value: number): number {
  const rounded = Number(finite(value).toPrecision(10))
  // The very largest numbers would be rounded up to none.
  return (Number.isFinite(rounded) ? rounded : value) + 0
}
