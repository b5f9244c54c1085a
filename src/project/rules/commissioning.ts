import { isDay } from '../../values/index.js'
import { listWords, showValue } from '../words.js'
import { didYouMean } from '../did-you-mean.js'
import type { Rule } from './rule.js'

/** Readings are those of strings that there are, each serial number stands once, and days are days of the calendar. */
export const checkCommissioning: Rule = ({ commissioning, arrays }, report) => {
  if (commissioning === undefined) return
  const strings = Object.entries(arrays).flatMap(([id, array]) =>
    (array.strings ?? []).map((_, index) => `${id}_s${index + 1}`),
  )
  for (const id of Object.keys(commissioning.strings ?? {}))
    if (!strings.includes(id))
      report(
        ['commissioning', 'strings', id],
        `there is no string ${showValue(id)}; ${strings.length === 0 ? 'this project has no strings' : `strings of this project: ${listWords(strings)}${didYouMean(id, strings)}`}`,
        'key',
      )
  for (const kind of ['modules', 'inverters', 'other'] as const) {
    const seen = new Map<string, string>()
    for (const [unit, serial] of Object.entries(commissioning.serials?.[kind] ?? {})) {
      const before = seen.get(serial)
      if (before !== undefined)
        report(
          ['commissioning', 'serials', kind, unit],
          `${showValue(serial)} is the serial number of ${showValue(before)} too; one of them was read wrong`,
        )
      seen.set(serial, unit)
    }
  }
  for (const key of ['date'] as const) checkDay(commissioning[key], ['commissioning', key], report)
  for (const [id, instrument] of Object.entries(commissioning.instruments ?? {}))
    for (const key of ['calibrated', 'due'] as const)
      checkDay(instrument[key], ['commissioning', 'instruments', id, key], report)
}

/** Answers of the application that other parts of the file decide. */
export const checkUtilityApplication: Rule = ({ utility_application: application, materials }, report) => {
  if (application === undefined) return
  const { fee } = application
  const fees = Object.keys(materials?.fees ?? {})
  if (fee !== undefined && !fees.includes(fee))
    report(
      ['utility_application', 'fee'],
      `${showValue(fee)} is no id under materials.fees${fees.length === 0 ? '; there are none' : `; ids there: ${listWords(fees)}${didYouMean(fee, fees)}`}`,
    )
  for (const key of ['installation_date', 'in_service_date'] as const)
    checkDay(application[key], ['utility_application', key], report)
}

function checkDay(date: string | undefined, segments: readonly string[], report: Parameters<Rule>[1]): void {
  if (date === undefined || isDay(date)) return
  report([...segments], `${date} is no day of the calendar; write year-month-day`)
}
