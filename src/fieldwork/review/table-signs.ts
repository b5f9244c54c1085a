import { REVIEW_THRESHOLDS } from '../../tables/fieldwork/index.js'
import type { ProductionSeries } from '../production/index.js'
import type { DayModel } from './day-model.js'
import type { Place } from './daylight.js'
import type { ModuleReview } from './review-values.js'
import { flatTop } from './signs/clipping.js'
import { measuredClockShift } from './signs/clock-shift.js'
import type { ObservedDay } from './signs/observed-day.js'
import type { FoundSign } from './signs/sign.js'
import { calendarDay, dayNumber, isDaylightSaving, MS_PER_DAY, type Kilowatts } from '../../values/index.js'

/** What the signs of the table itself are looked for in. */
export interface TableSignBasis {
  readonly series: ProductionSeries
  readonly observed: readonly ObservedDay[]
  readonly model: DayModel
  readonly place: Place
  readonly modules: readonly ModuleReview[]
  readonly ratedAcKw: Kilowatts
  /** First and last day that was counted. */
  readonly firstDay: number
  readonly lastDay: number
}

/** Signs that are told as findings by themselves already: single modules, a flat top, the clock, an exchanged meter. */
export function tableSigns(basis: TableSignBasis): FoundSign[] {
  const { series, firstDay, lastDay } = basis
  const whole = { fromDay: firstDay, toDay: lastDay, lostKwh: 0 }
  const top = flatTop(series)
  const clipped: FoundSign[] =
    top === undefined || top.levelKw >= 0.9 * basis.ratedAcKw
      ? []
      : [
          {
            ...whole,
            kind: 'clipping',
            probability: 0.95,
            where: 'an export or power limit',
            says: `the power stays at ${top.levelKw.toFixed(2)} kW`,
            lookAt: 'ask the installer or utility for an export or power limit that is set below the rating',
          },
        ]
  const resets = (series.resets ?? []).map((ms): FoundSign => ({
    kind: 'meter_reset',
    fromDay: dayNumber(ms),
    toDay: dayNumber(ms),
    probability: 0.99,
    lostKwh: 0,
    where: 'the meter',
    says: 'the counter went back',
    lookAt: 'ask whether the meter or inverter was exchanged on this day; what it counted before is left out',
  }))
  return [...moduleSigns(basis), ...clipped, ...clockSigns(basis), ...resets]
}

function moduleSigns({ modules, lastDay, firstDay }: TableSignBasis): FoundSign[] {
  const typical =
    modules.map((module) => module.measured_kwh).toSorted((a, b) => a - b)[Math.floor(modules.length / 2)] ?? 0
  return modules.flatMap((module): FoundSign[] => {
    const isDead = module.dead_since !== null
    if (!isDead && module.relative_pct >= 100 * REVIEW_THRESHOLDS.weakModuleShare) return []
    return [
      {
        kind: 'module',
        fromDay: isDead ? Date.parse(`${module.dead_since}T00:00:00Z`) / MS_PER_DAY : firstDay,
        toDay: lastDay,
        probability: isDead ? 0.97 : 0.9,
        lostKwh: Math.max(0, typical * (1 - module.relative_pct / 100)),
        where: `module ${module.id}`,
        says: `module ${module.id} gives ${module.relative_pct.toFixed(0)} % of its neighbours`,
        lookAt:
          'have its inverter, connectors and communication checked by an electrician; look for shade from the ground',
      },
    ]
  })
}

/** A clock that is off all the year, or only while daylight saving lasts. */
function clockSigns({ series, observed, model, place, firstDay, lastDay }: TableSignBasis): FoundSign[] {
  const isSummer = ({ day }: ObservedDay): boolean => {
    const { year, month, dayOfMonth } = calendarDay(day)
    return isDaylightSaving(year, month + 1, dayOfMonth, 12)
  }
  const shiftOf = (days: readonly ObservedDay[]): number | undefined =>
    measuredClockShift(series, days, model, place)?.shiftH
  const [summer, winter] = [shiftOf(observed.filter(isSummer)), shiftOf(observed.filter((day) => !isSummer(day)))]
  const whole = { fromDay: firstDay, toDay: lastDay, lostKwh: 0, where: 'production.clock' }
  if (summer !== undefined && winter !== undefined && Math.abs(summer - winter - 1) < 0.35) {
    return [
      {
        ...whole,
        kind: 'daylight_saving',
        probability: 0.97,
        says: `the middle of clear days comes ${(summer - winter).toFixed(1)} h later in summer than in winter`,
        lookAt: 'state clock: local, as the logger follows daylight saving time',
      },
    ]
  }
  const all = shiftOf(observed)
  if (all === undefined || Math.abs(all) < REVIEW_THRESHOLDS.clockShiftH) return []
  return [
    {
      ...whole,
      kind: 'clock',
      probability: 0.95,
      says: `the middle of clear days comes ${Math.abs(all).toFixed(1)} h ${all > 0 ? 'later' : 'earlier'} than the sun allows`,
      lookAt: 'check clock and stamps_mark, and the direction of the arrays in the project file',
    },
  ]
}
