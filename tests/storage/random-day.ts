import type { Battery, Control, HouseSteps } from '../../src/storage/index.js'
import type { RandomSource } from '../../src/values/index.js'

export interface RandomDay {
  readonly house: HouseSteps
  readonly battery: Battery
  readonly control: Control
  readonly startKwh: number
}

/** A made-up day of `steps` steps with a made-up battery and control; the same for the same numbers. */
export function randomDay(random: RandomSource, steps = 24): RandomDay {
  const u = (low: number, high: number): number => low + (high - low) * random.uniform()
  const is = (share: number): boolean => random.uniform() < share
  const marks = (share: number): Uint8Array => Uint8Array.from({ length: steps }, () => (is(share) ? 1 : 0))
  const stepH = is(0.5) ? 1 : 0.25
  const loadKwh = Float64Array.from({ length: steps }, () => u(0, 4) * stepH)
  const pvKwh = Float64Array.from({ length: steps }, () => (is(0.4) ? -0.002 : u(0, 6) * stepH))
  const mostKwh = is(0.1) ? 0 : u(1, 15)
  const leastKwh = mostKwh * u(0, 0.5)
  const into = u(0.8, 1)
  const out = u(0.8, 1)
  const isDc = is(0.3)
  const inverter = isDc ? u(0.9, 1) : 1
  const power = u(0.5, 6)
  const battery: Battery = {
    mostKwh,
    leastKwh,
    chargeSunKw: power * inverter,
    chargeGridKw: power / inverter,
    dischargeKw: u(0.5, 6),
    storedOfSun: into / inverter,
    storedOfGrid: into * inverter,
    givenOfStored: out * inverter,
    standbyKw: is(0.5) ? 0 : u(0, 0.1),
    ...(isDc ? { sharedAcKw: u(3, 8) } : {}),
  }
  const charge = marks(0.3)
  const control: Control = {
    chargeFrom: (['surplus', 'pv', 'any'] as const)[Math.floor(u(0, 3))] ?? 'any',
    batteryExport: is(0.3),
    ...(is(0.5) ? { charge, discharge: charge.map((mark) => (mark === 1 || is(0.5) ? 0 : 1)) } : {}),
    ...(is(0.3) ? { demandLimitKw: u(0.5, 4) } : {}),
    ...(is(0.3) ? { exportCapKw: u(0, 3) } : {}),
    ...(is(0.2) ? { event: marks(0.2), beforeEvent: marks(0.3) } : {}),
  }
  return { house: { stepH, loadKwh, pvKwh }, battery, control, startKwh: u(leastKwh, mostKwh) }
}
