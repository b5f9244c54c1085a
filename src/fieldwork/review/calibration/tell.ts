import { BAYES_SOURCE } from '../../../tables/fieldwork/index.js'
import type { Worksheet } from '../../../worksheet/index.js'
import type { Calibration } from '../review-values.js'
import type { FoundSign } from '../signs/sign.js'
import { dateText } from '../../../values/index.js'

const NOT_USED = 'no key of the project takes it, and every stage keeps to the estimate as it is'

/** Says what was found, and what would make it wrong. @param doubt A sign of a fault that is not sure. */
export function tellCalibration(values: Calibration, doubt: FoundSign | undefined, worksheet: Worksheet): void {
  const fault =
    doubt === undefined
      ? 'a fault that the readings hide would make it wrong'
      : `these readings show a sign of a fault (${wordsOf(doubt)}): if it is one, this is wrong`
  worksheet.find({
    severity: doubt === undefined ? 'note' : 'warning',
    id: 'output.calibration',
    message: `by these days a mean year gives ${(100 * values.factor).toFixed(1)} % of the estimate, and nine years in ten more than ${values.p90_kwh.toFixed(0)} kWh (before: ${values.prior_p90_kwh.toFixed(0)} kWh); ${fault}`,
    where: '',
    source: BAYES_SOURCE,
    fix: `${doubt === undefined ? '' : 'look at the sign first; '}${NOT_USED}: compare again when more of the year is in`,
  })
}

/** Says why nothing is carried from these days into the estimate. */
export function tellRefused(
  sure: FoundSign | undefined,
  { deviation, percentile }: { readonly deviation: number; readonly percentile: number },
  worksheet: Worksheet,
): void {
  const why =
    sure === undefined
      ? `measured over expected is ${(100 * (1 + deviation)).toFixed(0)} %, percentile ${percentile.toFixed(1)} of what the doubt of the estimate, the weather and the meter explain`
      : `the readings hold a sure sign of a fault (${wordsOf(sure)})`
  worksheet.find({
    severity: 'warning',
    id: 'output.calibration-refused',
    message: `the estimate is not calibrated: ${why}; what is not the estimate's error must not become its correction`,
    where: '',
    source: BAYES_SOURCE,
    fix:
      sure === undefined
        ? 'check unit and meter of the table, the modules of the project file, and shade; then compare again'
        : 'mend the fault and calibrate with readings from after it',
  })
}

function wordsOf({ kind, fromDay, toDay }: FoundSign): string {
  return `${kind.replaceAll('_', ' ')}, ${dateText(fromDay)} to ${dateText(toDay)}`
}
