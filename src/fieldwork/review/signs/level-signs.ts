import { REVIEW_DESIGN } from '../../../tables/fieldwork/index.js'
import type { Drop } from '../level/find-drops.js'
import { chanceOfFault, falseDrops } from './chance.js'
import type { JudgedDay } from '../judged-day.js'
import type { FoundSign } from './sign.js'

/** Parts of the system whose loss would lower the output by a known share. */
export interface SystemParts {
  readonly modules: number
  /** Share of the rated power of each inverter unit, or of each string, with its name. */
  readonly parts: readonly { readonly name: string; readonly share: number }[]
}

/** How near a fall has to be to the share of a part to name it, as a share of the whole. */
const NEAR = 0.06
/** Output that is left under snow, as a share, and days for which it may lie on part of the modules. Our own judgement. */
const SNOWED_UNDER = 0.3
const SNOW_DAYS = 14

/** Stretches of lower output as signs; under snow they are no fault. */
export function dropSigns(
  drops: readonly Drop[],
  days: readonly JudgedDay[],
  parts: SystemParts,
  leastEvidence: number,
  isSnowy: (day: number) => boolean,
): FoundSign[] {
  return drops.map((drop): FoundSign => {
    const inside = days.slice(drop.from, drop.end)
    const [first, last] = [inside[0]!.day, inside.at(-1)!.day]
    const kept = drop.level / drop.usualLevel
    const lost = 1 - kept
    const measured = inside.reduce((sum, day) => sum + day.kwh, 0)
    const expected = drop.usualLevel * inside.reduce((sum, day) => sum + day.expectedKwh, 0)
    // What the level says, but no more than the days could have given.
    const lostKwh = Math.max(0, Math.min(measured * (1 / kept - 1), expected))
    const share = `${(100 * kept).toFixed(0)} % of its other days' level on ${inside.length} days`
    const base = { fromDay: first, toDay: last, lostKwh }
    // Snow that lies for a fortnight, or that leaves next to nothing for longer.
    const mayBeSnow = kept < SNOWED_UNDER || (kept < 0.6 && inside.length <= SNOW_DAYS)
    if (mayBeSnow && inside.every((day) => isSnowy(day.day) && day.modelled === undefined)) {
      return {
        ...base,
        kind: 'snow',
        probability: 0.7,
        where: 'the whole system',
        says: `the output is at ${share}, in a season of snow`,
        lookAt: 'see from the ground whether snow lies on the modules',
      }
    }
    const probability = chanceOfFault(falseDrops(drop.evidence, leastEvidence))
    const part = parts.parts.find(({ share: own }) => own < 0.99 && Math.abs(own - lost) < NEAR)
    const modules = Math.round(lost * parts.modules)
    if (part !== undefined) {
      return {
        ...base,
        kind: 'string_or_inverter',
        probability,
        where: part.name,
        says: `the output is at ${share}, as if ${part.name} gave nothing`,
        lookAt: `see whether ${part.name} is on and shows an error, and whether its disconnect is closed; leave connectors on the roof to an electrician`,
      }
    }
    return {
      ...base,
      kind: lost < 0.2 && modules >= 1 && modules <= 3 ? 'module' : 'level_drop',
      probability,
      where: modules >= 1 ? `about ${modules} of ${parts.modules} modules, or a part of the whole` : 'the whole system',
      says: `the output is at ${share}`,
      lookAt: 'compare inverters, strings and modules with each other; look for new shade and dirt from the ground',
    }
  })
}

/**
 * A system that was low from the first day on.
 *
 * @param percentile Healthy systems that would have given less, in per cent; weather, years and method are in it.
 */
export function lowLevel(
  days: readonly JudgedDay[],
  level: number,
  percentile: number,
  expectedKwh: number,
): FoundSign | undefined {
  const falseAlarms = percentile / 100
  if (days.length === 0 || level >= REVIEW_DESIGN.lowLevel || falseAlarms > REVIEW_DESIGN.lowLevelFalseAlarms)
    return undefined
  return {
    kind: 'low_level',
    fromDay: days[0]!.day,
    toDay: days.at(-1)!.day,
    probability: chanceOfFault(falseAlarms),
    lostKwh: (1 - level) * expectedKwh,
    where: 'the whole system, or the estimate of it',
    says: `all days together are at ${(100 * level).toFixed(0)} % of what is expected, and no stretch of them is better: so little is no luck of the weather`,
    lookAt:
      'compare the modules, their directions and the shade with the project file, then inverters and strings with each other',
  }
}

const SCALES: readonly { readonly factor: number; readonly says: string }[] = [
  { factor: 1 / 1000, says: 'a thousandth: kWh that were taken for Wh, or kW for W' },
  { factor: 1 / 3.6, says: 'one part in 3.6: MJ and kWh' },
  { factor: 3.6, says: '3.6 times: MJ that were taken for kWh' },
  { factor: 1000, says: 'a thousand times: Wh that were taken for kWh' },
]

/** A scale that only a slip of the unit makes. @param stepMin Length of a reading, min; undefined for days. */
export function wrongUnit(
  days: readonly JudgedDay[],
  level: number,
  stepMin: number | undefined,
): FoundSign | undefined {
  const ofStep = stepMin === undefined || stepMin >= 60 ? [] : [stepMin / 60, 60 / stepMin]
  const scales = [
    ...SCALES,
    ...ofStep.map((factor) => ({
      factor,
      says: `${factor < 1 ? 'a part' : 'a multiple'} that ${stepMin} minutes make of an hour: power and energy`,
    })),
  ]
  const found = scales.find(
    ({ factor }) => Math.abs(Math.log(level / factor)) < (factor > 0.05 && factor < 20 ? 0.08 : 0.4),
  )
  if (found === undefined || days.length < REVIEW_DESIGN.leastDropDays) return undefined
  return {
    kind: 'unit',
    fromDay: days[0]!.day,
    toDay: days.at(-1)!.day,
    probability: found.factor > 0.05 && found.factor < 20 ? 0.6 : 0.995,
    lostKwh: 0,
    where: 'production.unit',
    says: `all days together are ${level < 0.01 ? level.toExponential(1) : level.toFixed(2)} of what is expected, ${found.says}`,
    lookAt: 'compare one reading with the display of the meter or inverter, and state --unit',
  }
}
