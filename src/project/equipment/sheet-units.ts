import {
  FAHRENHEIT_PER_KELVIN,
  INCHES_PER_FOOT,
  KG_PER_POUND,
  MM_PER_INCH,
  NEWTONS_PER_POUND,
} from '../../values/index.js'

/** A unit of a data sheet in the unit of a key: `value * factor + offset`. */
interface Conversion {
  readonly factor: number
  readonly offset?: number
}

const times = (factor: number): Conversion => ({ factor })
const SAME = times(1)
const FAHRENHEIT: Conversion = { factor: 1 / FAHRENHEIT_PER_KELVIN, offset: -32 / FAHRENHEIT_PER_KELVIN }
const PSF_PER_PASCAL = (MM_PER_INCH * INCHES_PER_FOOT) ** 2 / 1e6 / NEWTONS_PER_POUND
const KSI_PER_MEGAPASCAL = MM_PER_INCH ** 2 / NEWTONS_PER_POUND / 1000
const LB_IN_PER_NEWTON_METRE = 1000 / MM_PER_INCH / NEWTONS_PER_POUND

/** Units that data sheets use, by the unit of the key that takes them. Lengths and masses are exact by definition. */
const SHEET_UNITS: Readonly<Record<string, Readonly<Record<string, Conversion>>>> = {
  in: {
    in: SAME,
    mm: times(1 / MM_PER_INCH),
    cm: times(10 / MM_PER_INCH),
    m: times(1000 / MM_PER_INCH),
    ft: times(12),
  },
  ft: { ft: SAME, in: times(1 / 12), mm: times(1 / MM_PER_INCH / 12), m: times(1000 / MM_PER_INCH / 12) },
  in2: { in2: SAME, mm2: times(MM_PER_INCH ** -2), cm2: times(100 * MM_PER_INCH ** -2) },
  in3: { in3: SAME, mm3: times(MM_PER_INCH ** -3), cm3: times(1e3 * MM_PER_INCH ** -3) },
  in4: { in4: SAME, mm4: times(MM_PER_INCH ** -4), cm4: times(1e4 * MM_PER_INCH ** -4) },
  lb: {
    lb: SAME,
    lbf: SAME,
    kg: times(1 / KG_PER_POUND),
    N: times(1 / NEWTONS_PER_POUND),
    kN: times(1000 / NEWTONS_PER_POUND),
  },
  'lb per ft': { 'lb/ft': SAME, 'kg/m': times((MM_PER_INCH * INCHES_PER_FOOT) / 1000 / KG_PER_POUND) },
  'lb per in': { 'lb/in': SAME, 'N/mm': times(MM_PER_INCH / NEWTONS_PER_POUND) },
  'lb-in': {
    'lb-in': SAME,
    'in-lb': SAME,
    'lb-ft': times(12),
    'ft-lb': times(12),
    Nm: times(LB_IN_PER_NEWTON_METRE),
    'N-m': times(LB_IN_PER_NEWTON_METRE),
  },
  psf: { psf: SAME, Pa: times(PSF_PER_PASCAL), kPa: times(1000 * PSF_PER_PASCAL) },
  ksi: { ksi: SAME, psi: times(0.001), MPa: times(KSI_PER_MEGAPASCAL) },
  W: { W: SAME, Wp: SAME, kW: times(1000), kWp: times(1000) },
  V: { V: SAME, kV: times(1000) },
  A: { A: SAME, mA: times(0.001) },
  '%': { '%': SAME },
  '% per deg C': { '%/C': SAME, '%/degC': SAME, '%/K': SAME },
  'V per deg C': { 'V/C': SAME, 'V/K': SAME, 'mV/C': times(0.001), 'mV/K': times(0.001) },
  'deg C': { C: SAME, degC: SAME, F: FAHRENHEIT, degF: FAHRENHEIT },
  Hz: { Hz: SAME },
  deg: { deg: SAME },
  'ohm per 1000 ft': { 'ohm/kft': SAME, 'ohm/km': times((MM_PER_INCH * INCHES_PER_FOOT) / 1000) },
}

/** Signs that sheets use for what is written plainly here. */
function plainUnit(word: string): string {
  return word
    .trim()
    .replaceAll(/[\u00B0\u00BA]\s?/gu, '')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll('⁴', '4')
    .replaceAll('·', '-')
    .replaceAll('Ω', 'ohm')
    .replace(/^N m$/u, 'Nm')
}

/** Units that a key of this unit takes, `in` first; none when the key has no unit. */
export function sheetUnitsOf(unit: string): string[] {
  return Object.keys(Object.hasOwn(SHEET_UNITS, unit) ? (SHEET_UNITS[unit] ?? {}) : {})
}

/**
 * A number of a data sheet in the unit of a key.
 *
 * @param from Unit of the sheet: `mm`, `kg`, `Pa`, `%/K`.
 * @param unit Unit of the key, as `unitOfPath` gives it.
 * @returns undefined when the one cannot be turned into the other. Turned numbers have five digits, as no sheet states more.
 */
export function fromSheetUnit(value: number, from: string, unit: string): number | undefined {
  const known = Object.hasOwn(SHEET_UNITS, unit) ? (SHEET_UNITS[unit] ?? {}) : {}
  const word = plainUnit(from)
  const conversion = Object.hasOwn(known, word) ? known[word] : undefined
  if (conversion === undefined) return undefined
  const { factor, offset = 0 } = conversion
  return factor === 1 && offset === 0 ? value : Number((value * factor + offset).toPrecision(5))
}

/** A number with a unit after it, as a person types it: `1722 mm`, `-0.27%/K`. */
const WITH_UNIT = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*((?:[A-Za-z%]|[^\p{ASCII}]).*?)\s*$/u

/** The parts of such a text, undefined when it is something else. */
export function splitQuantity(text: string): { readonly value: number; readonly unit: string } | undefined {
  const [, number, unit] = WITH_UNIT.exec(text) ?? []
  return number === undefined || unit === undefined ? undefined : { value: Number(number), unit }
}
