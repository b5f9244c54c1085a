import type { DemandCharge } from '../../project/index.js'
import type { Carried } from './carried.js'
import type { RateHours } from './map-hours.js'
import { hasPrice, readTiers } from './map-tiers.js'
import type { RateRecord } from './rate-record.js'

const BY_HAND = 'Take this charge from the rate sheet, and add it by hand if you can.'

/** Demand charges: by period, and on the highest demand of the month. */
export function mapDemand(record: RateRecord, hours: RateHours, carried: Carried): Record<string, DemandCharge> {
  refuseOthers(record, carried)
  return { ...byPeriod(record, hours, carried), ...flat(record, carried) }
}

function byPeriod(record: RateRecord, hours: RateHours, carried: Carried): Record<string, DemandCharge> {
  const structure = record.demandratestructure
  if (structure === undefined || !hasPrice(structure)) return {}
  if (!isKilowatts('demandrateunit', record.demandrateunit, carried)) return {}
  const charges: Record<string, DemandCharge> = {}
  for (const [d, tiers] of structure.entries()) {
    const own = hours.periods.filter(({ demand }) => demand === d)
    if (own.length === 0 || !hasPrice([tiers])) continue
    charges[`demand_${d}`] = {
      ...priceOf(`demandratestructure[${d}]`, tiers, carried),
      ...(own.length === hours.periods.length ? {} : { periods: own.map(({ id }) => id) }),
    }
  }
  return charges
}

function flat(record: RateRecord, carried: Carried): Record<string, DemandCharge> {
  const structure = record.flatdemandstructure
  if (structure === undefined || !hasPrice(structure)) return {}
  if (!isKilowatts('flatdemandunit', record.flatdemandunit, carried)) return {}
  const months = record.flatdemandmonths
  if (months === undefined && structure.length > 1) {
    carried.refuse('flatdemandmonths', `${structure.length} prices, and no months say when they hold`, BY_HAND)
    return {}
  }
  const stray = months?.findIndex((period) => structure[period] === undefined) ?? -1
  if (stray >= 0) {
    const message = `month ${stray + 1} names period ${String(months?.[stray])}, and flatdemandstructure has ${structure.length}`
    carried.refuse(`flatdemandmonths[${stray}]`, message, BY_HAND)
    return {}
  }
  const charges: Record<string, DemandCharge> = {}
  for (const [p, tiers] of structure.entries()) {
    const own = Array.from({ length: 12 }, (_, m) => m + 1).filter((month) => (months?.[month - 1] ?? 0) === p)
    if (own.length === 0 || !hasPrice([tiers])) continue
    charges[structure.length === 1 ? 'highest_demand' : `highest_demand_${p}`] = {
      ...priceOf(`flatdemandstructure[${p}]`, tiers, carried),
      ...(own.length === 12 ? {} : { months: own }),
    }
  }
  return charges
}

function priceOf(
  field: string,
  tiers: NonNullable<RateRecord['demandratestructure']>[number],
  carried: Carried,
): Pick<DemandCharge, 'usd_per_kw' | 'tiers'> {
  const read = readTiers(field, tiers, 'kW', carried)
  const [first] = read
  if (read.length === 1) return { usd_per_kw: first?.usd ?? 0 }
  return {
    tiers: read.map(({ upTo, usd }) => ({
      ...(upTo === undefined ? {} : { up_to_kw: upTo }),
      usd_per_kw: usd,
    })) as NonNullable<DemandCharge['tiers']>,
  }
}

function isKilowatts(field: string, unit: string | undefined, carried: Carried): boolean {
  if (unit === undefined || unit === '') {
    carried.warn('rates.check', field, 'is missing; the charge is taken per kW', 'Compare with the rate sheet.')
    return true
  }
  if (unit === 'kW') return true
  carried.refuse(field, `a demand charge per ${unit}; only kW can be billed here`, BY_HAND)
  return false
}

/** Charges on demand that no key can say. */
function refuseOthers(record: RateRecord, carried: Carried): void {
  const ratchet = (record.demandratchetpercentage ?? []).flatMap((share, m) => (share > 0 ? [`${m + 1}`] : []))
  if (ratchet.length > 0)
    carried.refuse(
      'demandratchetpercentage',
      `a ratchet in months ${ratchet.join(', ')}: the billed demand is not below a share of an earlier peak`,
      BY_HAND,
    )
  if (hasPrice(record.coincidentratestructure)) {
    const usd = Math.max(...(record.coincidentratestructure ?? []).flat().map(({ rate = 0, adj = 0 }) => rate + adj))
    carried.refuse(
      'coincidentratestructure',
      `up to ${usd} USD/kW on the demand at the peak of the whole system, whose hour nobody knows before`,
      BY_HAND,
    )
  }
  for (const [field, value] of Object.entries(record)) {
    if (!field.startsWith('lookback') || !saysSomething(value)) continue
    carried.refuse(field, 'a ratchet by a range of months: the billed demand depends on earlier bills', BY_HAND)
  }
  const reactive = record.demandreactivepowercharge ?? 0
  if (reactive !== 0)
    carried.warn(
      'rates.ignored',
      'demandreactivepowercharge',
      `${reactive} USD/kVAR is left out: reactive power of a house is not known here`,
      'Compare with a bill.',
    )
}

/** Whether a field holds anything but zeros and blanks. */
export function saysSomething(value: unknown): boolean {
  if (Array.isArray(value)) return value.some(saysSomething)
  if (typeof value === 'object' && value !== null) return Object.values(value).some(saysSomething)
  return value !== undefined && value !== null && value !== '' && value !== 0 && value !== false
}
