import type { Battery, Control, HouseSteps } from './battery.js'

/** What flows in each step, kWh, and what is stored at its end. */
export interface StorageFlows {
  readonly importKwh: Float64Array
  readonly exportKwh: Float64Array
  readonly curtailedKwh: Float64Array
  /** Into and out of the battery on the AC side; never both in one step. */
  readonly chargeKwh: Float64Array
  readonly dischargeKwh: Float64Array
  readonly storedKwh: Float64Array
  /** Before the first step, kWh. */
  readonly startKwh: number
}

/**
 * Follows a battery through the steps of a series.
 *
 * In each step the first rule that holds decides: reserve, event, limit of demand, window, own use. An outage is `outage.ts`.
 *
 * @param startKwh Stored before the first step, within the limits of the battery.
 * @limits Constant efficiencies and powers; nothing leaks out of the store; hourly steps overstate own use.
 */
export function dispatch(house: HouseSteps, battery: Battery, control: Control, startKwh: number): StorageFlows {
  const { loadKwh, pvKwh, stepH } = house
  const count = loadKwh.length
  const flows = {
    importKwh: new Float64Array(count),
    exportKwh: new Float64Array(count),
    curtailedKwh: new Float64Array(count),
    chargeKwh: new Float64Array(count),
    dischargeKwh: new Float64Array(count),
    storedKwh: new Float64Array(count),
    startKwh,
  }
  const { mostKwh, leastKwh, storedOfSun, storedOfGrid, givenOfStored } = battery
  const standby = battery.standbyKw * stepH
  const capKwh = (control.exportCapKw ?? Infinity) * stepH
  let stored = startKwh
  for (let i = 0; i < count; i++) {
    const pv = pvKwh[i]!
    const sun = pv > 0 ? pv : 0
    const net = loadKwh[i]! + standby - pv
    const most = Math.min(battery.dischargeKw * stepH, (stored - leastKwh) * givenOfStored)
    const shared = battery.sharedAcKw === undefined ? most : Math.min(most, battery.sharedAcKw * stepH - sun)
    const wish = wishOf(control, i, net, sun, stepH, capKwh)
    let out = 0
    let fromSun = 0
    let fromGrid = 0
    if (wish < 0) out = Math.max(0, Math.min(-wish, shared))
    else if (wish > 0) {
      const room = Math.max(0, mostKwh - stored)
      fromSun = Math.min(wish, sun, battery.chargeSunKw * stepH, room / storedOfSun)
      const left = Math.max(0, room - fromSun * storedOfSun)
      // One converter: what the sun takes of its power is not there for the grid.
      const used = fromSun === 0 ? 0 : fromSun / (battery.chargeSunKw * stepH)
      const free = Math.max(0, battery.chargeGridKw * stepH * (1 - used))
      if (control.chargeFrom === 'any') fromGrid = Math.min(wish - fromSun, free, left / storedOfGrid)
    }
    stored += fromSun * storedOfSun + fromGrid * storedOfGrid - out / givenOfStored
    if (stored > mostKwh) stored = mostKwh
    else if (stored < leastKwh) stored = leastKwh
    const grid = net + fromSun + fromGrid - out
    const sent = grid < 0 ? -grid : 0
    const curtailed = sent > capKwh ? sent - capKwh : 0
    flows.importKwh[i] = grid > 0 ? grid : 0
    flows.exportKwh[i] = sent - curtailed
    flows.curtailedKwh[i] = curtailed
    flows.chargeKwh[i] = fromSun + fromGrid
    flows.dischargeKwh[i] = out
    flows.storedKwh[i] = stored
  }
  return flows
}

/** What the rules ask for in a step, kWh on the AC side: above zero to charge, below to discharge. */
function wishOf(control: Control, i: number, net: number, sun: number, stepH: number, capKwh: number): number {
  const surplus = net < 0 ? -net : 0
  const fill = control.chargeFrom === 'any' ? Infinity : control.chargeFrom === 'pv' ? sun : surplus
  const limit = control.demandLimitKw === undefined ? Infinity : control.demandLimitKw * stepH
  // Nothing may push the draw of the house over its limit.
  const fillWithin = Math.max(surplus, Math.min(fill, limit - net))
  if (control.event?.[i] === 1) return net < 0 ? surplus : -net
  if (control.beforeEvent?.[i] === 1) return net > limit ? limit - net : fillWithin
  if (net > limit) {
    const inWindow = control.discharge?.[i] === 1 && control.charge?.[i] !== 1
    return inWindow ? -net : limit - net
  }
  if (control.charge?.[i] === 1) return fillWithin
  if (control.discharge === undefined ? control.demandLimitKw === undefined : control.discharge[i] === 1) {
    if (control.batteryExport && control.discharge !== undefined) return -Math.max(0, net + capKwh)
    return net < 0 ? surplus : -net
  }
  return control.demandLimitKw !== undefined && control.chargeFrom === 'any' ? Math.max(0, limit - net) : surplus
}
