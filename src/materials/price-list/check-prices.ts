import type { Complaint } from '../../project/index.js'
import type { PriceItem, PriceList, PricePack } from './price-list-types.generated.js'

/** Everything that is wrong with a price list whose parts are each valid by the schema. */
export function checkPrices(list: PriceList): Complaint[] {
  const complaints = [...dayProblem(list.valid_until, ['valid_until'])]
  if (list.freight_free_from_usd !== undefined && list.freight_usd === undefined)
    complaints.push(at(['freight_free_from_usd'], 'says when freight is free, but freight_usd is missing; state both'))
  for (const [id, item] of Object.entries(list.items)) {
    const segments = ['items', id]
    complaints.push(...packProblems(item, segments), ...includeProblems(id, item))
    for (const [i, pack] of (item.also_sold_as ?? []).entries())
      complaints.push(...packProblems(pack, [...segments, 'also_sold_as', i]))
  }
  return complaints
}

type Path = readonly (string | number)[]

const at = (segments: Path, message: string): Complaint => ({ segments, at: 'value', message })

function packProblems(pack: PricePack, segments: Path): Complaint[] {
  const { usd, usd_low: low, usd_high: high, holds } = pack
  const complaints = [...dayProblem(pack.valid_until, [...segments, 'valid_until'])]
  const range = low !== undefined || high !== undefined
  if (usd !== undefined && range)
    complaints.push(at([...segments, 'usd'], 'a price and a range of prices; state usd, or usd_low and usd_high'))
  if (usd === undefined && range && (low === undefined || high === undefined))
    complaints.push(at(segments, 'half a range of prices; state both usd_low and usd_high'))
  if (low !== undefined && high !== undefined && low > high)
    complaints.push(at([...segments, 'usd_low'], `usd_low ${low} is above usd_high ${high}; exchange them`))
  const several = pack.pack === 'box' || pack.pack === 'spool'
  if (several && holds === undefined)
    complaints.push(
      at(segments, `a ${pack.pack} without holds; state how many ${pack.pack === 'box' ? 'pieces' : 'feet'} it holds`),
    )
  if (!several && holds !== undefined && holds !== 1)
    complaints.push(
      at([...segments, 'holds'], `sold by '${pack.pack}', which holds 1; for several use box, or spool for feet`),
    )
  if (pack.pack === 'box' && holds !== undefined && !Number.isInteger(holds))
    complaints.push(at([...segments, 'holds'], `a box holds whole pieces; found ${holds}`))
  return complaints
}

function includeProblems(id: string, item: PriceItem): Complaint[] {
  return Object.hasOwn(item.includes ?? {}, id)
    ? [at(['items', id, 'includes', id], 'an item cannot come with itself')]
    : []
}

function dayProblem(day: string | undefined, segments: Path): Complaint[] {
  if (day === undefined) return []
  const parsed = new Date(`${day}T00:00:00Z`)
  const isDay = !Number.isNaN(parsed.getTime()) && parsed.toISOString().startsWith(day)
  return isDay ? [] : [at(segments, `'${day}' is no day of the calendar; write year-month-day`)]
}
