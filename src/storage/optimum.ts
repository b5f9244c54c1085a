import type { Battery, ChargeFrom, HouseSteps } from './battery.js'

/** Prices of each step, USD per kWh; what is paid for exports is at least 0 and at most what imports cost. */
export interface StepPrices {
  readonly buyUsd: Float64Array
  readonly sellUsd: Float64Array
}

/** What a plan may do besides the limits of the battery. */
export interface PlanLimits {
  readonly chargeFrom: ChargeFrom
  readonly batteryExport: boolean
  /** Most that may leave the house, kW; undefined = no limit. */
  readonly exportCapKw?: number
}

/** Cost to go as a function of what is stored: convex, straight between its corners. */
interface CostToGo {
  /** At the least that may be stored, USD. */
  first: number
  /** Widths (kWh) and slopes (USD per kWh), slopes rising. */
  width: number[]
  slope: number[]
}

/**
 * Least cost of energy that any control could reach that knows use, output and prices of all steps beforehand.
 *
 * The cost of a step is convex in what it adds to the store, so the cost to go stays convex, and going back by a step sorts the
 * straight pieces of the step in among those that are there (infimal convolution). No grid: exact but for rounding.
 *
 * @returns USD of all steps; what is left in the store at the end counts for nothing. undefined where exports are paid more
 * than imports cost or less than nothing, as the cost is not convex there.
 */
export function leastCost(
  house: HouseSteps,
  battery: Battery,
  prices: StepPrices,
  limits: PlanLimits,
  startKwh: number,
): number | undefined {
  const { mostKwh, leastKwh } = battery
  const span = mostKwh - leastKwh
  let go: CostToGo = { first: 0, width: [span], slope: [0] }
  for (let i = house.loadKwh.length - 1; i >= 0; i--) {
    const buy = prices.buyUsd[i]!
    const sell = prices.sellUsd[i]!
    if (!(sell >= 0 && sell <= buy)) return undefined
    const step = stepCost(house, i, battery, buy, sell, limits)
    go = back(go, step, span)
  }
  return valueAt(go, startKwh - leastKwh)
}

function valueAt(go: CostToGo, above: number): number {
  let value = go.first
  let left = above
  for (let k = 0; k < go.width.length && left > 0; k++) {
    const part = Math.min(left, go.width[k]!)
    value += part * go.slope[k]!
    left -= part
  }
  return value
}

/** Cost of a step by what it adds to the store, from its most discharge to its most charge. */
interface StepCost {
  /** Without charge or discharge, USD. */
  readonly idle: number
  /** Pieces below and above zero, the one nearest to zero first: kWh of the store, and USD per such kWh. */
  readonly down: readonly (readonly [width: number, slope: number])[]
  readonly up: readonly (readonly [width: number, slope: number])[]
}

function stepCost(
  house: HouseSteps,
  i: number,
  battery: Battery,
  buy: number,
  sell: number,
  limits: PlanLimits,
): StepCost {
  const { stepH } = house
  const pv = house.pvKwh[i]!
  const sun = Math.max(0, pv)
  const net = house.loadKwh[i]! + battery.standbyKw * stepH - pv
  const cap = (limits.exportCapKw ?? Infinity) * stepH
  const surplus = Math.max(0, -net)
  const sold = Math.min(surplus, cap)
  const need = Math.max(0, net)
  const idle = need * buy - sold * sell
  const { givenOfStored: given, storedOfSun, storedOfGrid } = battery
  const shared = battery.sharedAcKw === undefined ? Infinity : Math.max(0, battery.sharedAcKw * stepH - sun)
  const most = Math.min(battery.dischargeKw * stepH, shared)
  const toHouse = Math.min(need, most)
  const toGrid = limits.batteryExport ? Math.max(0, Math.min(most - toHouse, cap - sold)) : 0
  const down = [
    [toHouse / given, buy * given],
    [toGrid / given, sell * given],
  ] as const
  // Charged first: what would be thrown away, then what would be sold, then the sun that the house uses, then the grid.
  const power = battery.chargeSunKw * stepH
  let free = power
  const up: [number, number][] = []
  const take = (kwh: number, price: number): void => {
    const taken = Math.max(0, Math.min(kwh, free))
    free -= taken
    up.push([taken * storedOfSun, price / storedOfSun])
  }
  take(surplus - sold, 0)
  take(sold, sell)
  if (limits.chargeFrom !== 'surplus') take(sun - surplus, buy)
  if (limits.chargeFrom === 'any')
    up.push([battery.chargeGridKw * stepH * (power === 0 ? 0 : free / power) * storedOfGrid, buy / storedOfGrid])
  return { idle, down, up }
}

/** Cost to go one step earlier. */
function back(go: CostToGo, step: StepCost, span: number): CostToGo {
  // From e the store goes to e + x: pieces of the step, mirrored, are sorted in among those of the cost to go.
  const charge = step.up.reduce((sum, [width]) => sum + width, 0)
  let first = go.first + step.idle
  for (const [width, slope] of step.up) first += width * slope
  const pieces: [number, number][] = []
  for (const [width, slope] of step.up) if (width > 0) pieces.push([width, -slope])
  for (const [width, slope] of step.down) if (width > 0) pieces.push([width, -slope])
  pieces.sort((a, b) => a[1] - b[1])
  const width: number[] = []
  const slope: number[] = []
  const add = (w: number, s: number): void => {
    const last = slope.length - 1
    if (last >= 0 && slope[last] === s) width[last] = width[last]! + w
    else {
      width.push(w)
      slope.push(s)
    }
  }
  let p = 0
  for (let k = 0; k < go.width.length; k++) {
    while (p < pieces.length && pieces[p]![1] <= go.slope[k]!) {
      add(pieces[p]![0], pieces[p]![1])
      p += 1
    }
    add(go.width[k]!, go.slope[k]!)
  }
  for (; p < pieces.length; p++) add(pieces[p]![0], pieces[p]![1])
  return cutTo(first, width, slope, charge, span)
}

/** The part of a cost to go that lies within the store: `before` kWh are cut off in front, and all beyond `span`. */
function cutTo(first: number, width: number[], slope: number[], before: number, span: number): CostToGo {
  const cut: CostToGo = { first, width: [], slope: [] }
  let ahead = before
  let room = span
  for (let k = 0; k < width.length; k++) {
    let w = width[k]!
    const gone = Math.min(ahead, w)
    cut.first += gone * slope[k]!
    ahead -= gone
    w = Math.min(w - gone, room)
    if (w <= 0) continue
    cut.width.push(w)
    cut.slope.push(slope[k]!)
    room -= w
  }
  return cut
}
