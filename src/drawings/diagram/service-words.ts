import type { ElectricalService } from '../../project/index.js'

/** Voltage and phases of the service, as they stand on the sheets. */
export function serviceWords({ voltage_v: voltage = 240, phases = 1 }: ElectricalService): string {
  if (voltage === 240) return '120/240 V, single phase'
  return phases === 3 ? '208Y/120 V, three phases, four wires' : '120/208 V, two lines and neutral of a wye'
}
