import { REVIEW_DESIGN, REVIEW_DESIGN_SOURCE } from '../../tables/fieldwork/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { ProductionSeries } from '../production/index.js'
import type { CollectedSigns } from './collect-signs.js'
import type { FoundSign, Sign, SignKind } from './signs/sign.js'
import { dateText } from '../../values/index.js'

/** Kinds that `findSigns` and the reader of the table tell as findings of their own. */
const TOLD_BY_THEMSELVES: ReadonlySet<SignKind> = new Set(['module', 'clipping', 'clock', 'meter_reset'])
/** Kinds that say something of the table, or of the weather, and not of the plant. */
const NO_FAULT: ReadonlySet<SignKind> = new Set(['snow', 'clock', 'daylight_saving', 'meter_reset', 'clipping'])

/** Findings of the signs. */
export const SIGN_IDS: Readonly<Record<SignKind, string>> = {
  outage: 'output.sign-outage',
  snow: 'output.sign-snow',
  string_or_inverter: 'output.sign-string-or-inverter',
  module: 'output.sign-module',
  level_drop: 'output.sign-level-drop',
  low_level: 'output.sign-low-level',
  shade: 'output.sign-shade',
  soiling: 'output.dirt',
  degradation: 'output.sign-degradation',
  clipping: 'output.clipping',
  trips: 'output.sign-trips',
  clock: 'output.clock-shift',
  daylight_saving: 'output.sign-daylight-saving',
  unit: 'output.sign-unit',
  meter_reset: 'output.meter-reset',
}

/** Signs as values. @param usdPerKwh What a kWh more is worth by the tariff; undefined where it is not known. */
export function signValues(found: readonly FoundSign[], lastDay: number, usdPerKwh: number | undefined): Sign[] {
  return found.map(({ kind, fromDay, toDay, probability, lostKwh, where, lookAt }) => ({
    kind,
    from: dateText(fromDay),
    to: dateText(toDay),
    lasts: toDay >= lastDay,
    probability,
    lost_kwh: lostKwh,
    lost_usd: usdPerKwh === undefined ? null : lostKwh * usdPerKwh,
    where,
    look_at: lookAt,
  }))
}

/** Whether a kind of sign speaks of the plant, and not of the table or the weather. */
export function isFault(kind: SignKind): boolean {
  return !NO_FAULT.has(kind)
}

/** Whether a sign is sure to be a fault, so that the exit code is 1. */
export function isSure({ kind, probability }: Pick<FoundSign, 'kind' | 'probability'>): boolean {
  return probability >= REVIEW_DESIGN.sure && isFault(kind)
}

/** Tells each sign as a finding: an error where it is sure. */
export function tellSigns(found: readonly FoundSign[], worksheet: Worksheet): void {
  for (const sign of found) {
    // A module of a table of modules is told by itself; one that the level of the system shows is not.
    if (TOLD_BY_THEMSELVES.has(sign.kind) && !(sign.kind === 'module' && !sign.where.startsWith('module '))) continue
    const days =
      sign.fromDay === sign.toDay ? dateText(sign.fromDay) : `${dateText(sign.fromDay)} to ${dateText(sign.toDay)}`
    worksheet.find({
      severity: isSure(sign) ? 'error' : sign.kind === 'snow' ? 'note' : 'warning',
      id: SIGN_IDS[sign.kind],
      message: `${days}: ${sign.says} (about ${sign.lostKwh.toFixed(0)} kWh lost; chance of a fault ${chanceText(sign)})`,
      where: sign.where.startsWith('production.') || sign.where === 'losses' ? sign.where : '',
      source: REVIEW_DESIGN_SOURCE,
      fix: sign.lookAt,
    })
  }
}

function chanceText({ kind, probability }: FoundSign): string {
  const percent = 100 * (kind === 'snow' ? 1 - probability : probability)
  return `${percent > 99 ? 'above 99' : percent.toFixed(0)} %`
}

/** A fall of clear days that seasons might explain. */
export function tellHints({ hints }: Pick<CollectedSigns, 'hints'>, worksheet: Worksheet): void {
  const [hint] = hints
  if (hint === undefined) return
  worksheet.find({
    severity: 'note',
    id: 'output.dirt',
    message: `what the clearest day of each week gives falls by ${(100 * hint.lossPerWeek).toFixed(1)} % a week, ${(100 * hint.lossOverall).toFixed(0)} % over ${hint.weeks} weeks (chance without a trend: ${(100 * hint.chance).toFixed(2)} %); the season may make it too`,
    where: 'losses',
    source: REVIEW_DESIGN_SOURCE,
    fix: 'look for dirt, leaves and growing plants from the ground; the weather of these days (--weather) would tell dirt from season',
  })
}

/** Least days for signs that need some. */
const TWO_MONTHS = 60
const TWO_YEARS = 730

/** Kinds of sign that this table cannot show, with what they would want. */
export function notLookedFor(series: ProductionSeries, days: number): string[] {
  return [
    ...(series.resolution === 'interval'
      ? []
      : ['stops of hours, trips, shade by the hour, clipping, the clock (want intervals of an hour or less)']),
    ...(series.resolution === 'month' ? ['days without output, dirt, stretches of lower output (want days)'] : []),
    ...(series.moduleIds.length > 0 && series.partsAre !== 'meters' ? [] : ['single modules (want a column for each)']),
    ...(days < TWO_MONTHS ? [`shade and dirt (want two months, have ${days} days)`] : []),
    ...(days < TWO_YEARS ? ['ageing (wants two years)'] : []),
  ]
}
