/** Energy of one season within one bill, in whole millionths of a kWh by period. */
export interface BillSegment {
  readonly season: number
  readonly days: number
  /** Use of the house. */
  readonly load: Float64Array
  /** Taken from the grid and given to it, netted within each hour or quarter of one (within the bill when only totals are known). */
  readonly imported: Float64Array
  readonly exported: Float64Array
  /** Highest mean power of the house and from the grid over the time of `demandMin`, millionths of a kW. */
  readonly peakLoad: Float64Array
  readonly peakImport: Float64Array
}

/** Everything about energy that one bill needs. */
export interface BillLedger {
  /** Month of the bill, 1 to 12; the month in which a bill with a reading day ends. */
  readonly month: number
  readonly days: number
  readonly segments: readonly BillSegment[]
  readonly generation: number
  /** Exports by month x (weekday, other) x clock hour, when export prices need them. */
  readonly exportedByHour: Float64Array | undefined
  /** Demand of charges that a printed bill states, by their ids, millionths of a kW; worked out from hours otherwise. */
  readonly demandOf?: ReadonlyMap<string, number>
  /** Whether the energy is known hour by hour. */
  readonly hourly: boolean
  /** Whether use is known by quarters of an hour. */
  readonly quarters?: boolean
  /** Time over which demand is averaged, minutes; an hour when missing. */
  readonly demandMin?: number
}

export function emptySegment(season: number, days: number, periods: number): BillSegment {
  const zeros = (): Float64Array => new Float64Array(periods)
  return {
    season,
    days,
    load: zeros(),
    imported: zeros(),
    exported: zeros(),
    peakLoad: zeros(),
    peakImport: zeros(),
  }
}
