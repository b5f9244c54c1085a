import type { Period } from '../count-days.js'
import type { FoundSign } from './sign.js'
import { median } from './soiling.js'

/** A meter below this share of what the others let expect has stopped. Our own judgement. */
const STOPPED_SHARE = 0.05
/** The others must give this share of their best day, so that the day is one on which a meter would count. */
const BRIGHT_SHARE = 0.1
/** Days with all meters that are needed to know how they compare. */
const LEAST_DAYS = 10
/** Days from which a stop is sure; one day may be a reading that failed. */
const SURE_DAYS = 3

/**
 * Meters that give nothing while the others work, named as the person calls them.
 *
 * @param names Of the meters, in the order of `moduleKwh`.
 * @param isSnowy Whether snow may lie on one roof and not on another.
 */
export function stoppedMeters(
  names: readonly string[],
  periods: readonly Period[],
  isSnowy: (day: number) => boolean,
): FoundSign[] {
  return names.flatMap((name, at) => {
    const days = periods.flatMap(({ firstDay, days: count, moduleKwh }) => {
      const own = moduleKwh[at]
      const others = moduleKwh.reduce((sum: number | undefined, kwh, index) => {
        if (index === at) return sum
        return sum === undefined || kwh === undefined ? undefined : sum + kwh
      }, 0)
      return own === undefined || others === undefined ? [] : [{ day: firstDay, days: count, own, others }]
    })
    const bright = BRIGHT_SHARE * Math.max(0, ...days.map(({ own, others, days: count }) => (own + others) / count))
    const lit = days.filter(({ others, days: count }) => others / count > bright)
    const usual = median(
      lit.filter(({ own, others }) => own > STOPPED_SHARE * others).map(({ own, others }) => own / others),
    )
    if (lit.length < LEAST_DAYS || !(usual > 0)) return []
    const isStopped = ({ own, others }: (typeof lit)[number]): boolean => own < STOPPED_SHARE * usual * others
    return runsOf(lit, isStopped).map((run): FoundSign => {
      const [first, last] = [run[0]!, run.at(-1)!]
      const count = run.reduce((sum, { days: own }) => sum + own, 0)
      const mayBeSnow = run.every(({ day }) => isSnowy(day))
      return {
        kind: 'string_or_inverter',
        fromDay: first.day,
        toDay: last.day + last.days - 1,
        probability: mayBeSnow ? 0.7 : count >= SURE_DAYS ? 0.995 : 0.95,
        // Dull days between the others count for the loss, though not as proof.
        lostKwh: days.reduce(
          (sum, { day, own, others }) => (day >= first.day && day <= last.day ? sum + usual * others - own : sum),
          0,
        ),
        where: `meter ${name}`,
        says: `${name} gives nothing on ${count} day${count === 1 ? '' : 's'} on which the other meters work${mayBeSnow ? ', in a season of snow' : ''}`,
        lookAt: `see whether the inverter behind ${name} is on and shows an error, and whether its breaker and disconnect are closed; leave connectors on the roof to an electrician`,
      }
    })
  })
}

/** Stretches of days that follow each other in the list. */
function runsOf<Day>(days: readonly Day[], is: (day: Day) => boolean): Day[][] {
  const runs: Day[][] = []
  let open: Day[] | undefined
  for (const day of days) {
    if (!is(day)) open = undefined
    else if (open === undefined) runs.push((open = [day]))
    else open.push(day)
  }
  return runs
}

/** Without lower stretches of the whole that a stopped meter explains. */
export function withoutExplained(signs: readonly FoundSign[], stops: readonly FoundSign[]): FoundSign[] {
  const overlap = (sign: FoundSign): number =>
    stops.reduce(
      (sum, { fromDay, toDay }) => sum + Math.max(0, Math.min(toDay, sign.toDay) - Math.max(fromDay, sign.fromDay) + 1),
      0,
    )
  const isLower = ({ kind }: FoundSign): boolean =>
    ['level_drop', 'module', 'string_or_inverter', 'snow'].includes(kind)
  return signs.filter((sign) => !isLower(sign) || overlap(sign) < 0.6 * (sign.toDay - sign.fromDay + 1))
}
