import { AC_VOLTAGES_V, CURRENT_PRODUCT, INVERTER_RANGES } from '../../../tables/equipment/index.js'
import { CONTINUOUS_FACTOR, sectionOf } from '../../../tables/nec/index.js'
import type { Source } from '../../../worksheet/index.js'
import type { Inverter } from '../../project-types.generated.js'
import { rounded, type Doubts } from './doubts.js'

/** What follows from the words of the sheet themselves. */
const BY_MEANING: Source = { document: 'meaning of the values of the sheet', standing: 'common practice, no source' }

/** What does not fit together on the sheet of an inverter. mppt_min_v below mppt_max_v is a rule of the file. */
export function doubtInverter(inverter: Inverter, doubts: Doubts): void {
  doubtCurrent(inverter, doubts)
  doubtWindow(inverter, doubts)
  doubtOutput(inverter, doubts)
  const { weighted_efficiency_pct: weighted, efficiency_curve: curve = [], weight_lb: weight } = inverter
  const { ac_power_w: power, max_dc_power_w: dc, kind } = inverter
  const efficiency = weighted ?? Math.max(...curve.map((point) => point.efficiency_pct))
  const key = weighted === undefined ? 'efficiency_curve' : 'weighted_efficiency_pct'
  if (Number.isFinite(efficiency))
    doubts.outside('equipment.efficiency', key, 'the efficiency', efficiency, INVERTER_RANGES.efficiencyPct)
  const ratio = dc === undefined ? undefined : dc / power
  doubts.outside(
    'equipment.inverter-size',
    'max_dc_power_w',
    'max_dc_power_w over ac_power_w',
    ratio,
    INVERTER_RANGES.dcOverAc,
  )
  const perPound = weight === undefined ? undefined : power / weight
  doubts.outside(
    'equipment.inverter-size',
    'weight_lb',
    'the power on its weight',
    perPound,
    INVERTER_RANGES.powerPerPound,
  )
  const usual = kind === 'module_level' ? INVERTER_RANGES.moduleLevelW : INVERTER_RANGES.stringW
  doubts.outside(
    'equipment.inverter-size',
    'ac_power_w',
    `the power of a ${kind.replace('_', '-')} inverter`,
    power,
    usual,
  )
}

function doubtCurrent(inverter: Inverter, doubts: Doubts): void {
  const { ac_current_a: amps, ac_voltage_v: volts, ac_power_w: power, phases = 1 } = inverter
  if (volts !== undefined && !AC_VOLTAGES_V.values.some((each) => each === volts))
    doubts.add('warning', 'equipment.ac-current', 'ac_voltage_v', {
      message: `${volts} V is none of the usual AC voltages, ${AC_VOLTAGES_V.values.join(', ')} V`,
      source: AC_VOLTAGES_V.source,
    })
  if (amps === undefined || volts === undefined) return
  const expected = power / (volts * (phases === 3 ? Math.sqrt(3) : 1))
  const offPct = (amps / expected - 1) * 100
  const says = `ac_current_a is ${amps} A; ${power} W at ${volts} V${phases === 3 ? ' on three phases' : ''} is ${rounded(expected)} A`
  if (offPct < -CURRENT_PRODUCT.belowPct)
    doubts.add('error', 'equipment.ac-current', 'ac_current_a', {
      message: `${says}: conductors and breaker would be sized for too little`,
      source: CURRENT_PRODUCT.source,
      fix: 'state the rated continuous output current of the sheet, and the phases',
    })
  else if (offPct > CURRENT_PRODUCT.abovePct)
    doubts.add('warning', 'equipment.ac-current', 'ac_current_a', { message: says, source: CURRENT_PRODUCT.source })
}

function doubtWindow(inverter: Inverter, doubts: Doubts): void {
  const limits = [
    ['start_v', 'max_dc_voltage_v'],
    ['start_v', 'mppt_max_v'],
    ['mppt_max_v', 'max_dc_voltage_v'],
    ['mppt_min_v', 'max_dc_voltage_v'],
  ] as const
  for (const [low, high] of limits) {
    const [below, above] = [inverter[low], inverter[high]]
    if (below === undefined || above === undefined || below <= above) continue
    doubts.add('error', 'equipment.voltage-window', low, {
      message: `${low} ${below} V is above ${high} ${above} V; are the two swapped?`,
      source: BY_MEANING,
    })
  }
  const { max_input_current_a: operating, max_input_isc_a: short } = inverter
  if (operating === undefined || short === undefined || operating <= short) return
  doubts.add('error', 'equipment.input-current', 'max_input_isc_a', {
    message: `the largest short-circuit current of an input, ${short} A, is below its largest operating current, ${operating} A; are the two swapped?`,
    source: BY_MEANING,
  })
}

function doubtOutput(inverter: Inverter, doubts: Doubts): void {
  const { ac_current_a: amps, max_branch_ocpd_a: device, max_per_branch: most } = inverter
  if (amps === undefined || device === undefined) return
  const source = sectionOf('NEC 2020', 'dcOcpdRating')
  const least = CONTINUOUS_FACTOR * amps
  if (device < least)
    doubts.add('error', 'equipment.output-device', 'max_branch_ocpd_a', {
      message: `the largest overcurrent device, ${device} A, is below ${CONTINUOUS_FACTOR} x ac_current_a = ${rounded(least)} A, so that none is allowed`,
      source,
    })
  else if (most !== undefined && most * least > device)
    doubts.add('warning', 'equipment.output-device', 'max_per_branch', {
      message: `${most} on a branch need ${CONTINUOUS_FACTOR} x ${most} x ${amps} A = ${rounded(most * least)} A, more than max_branch_ocpd_a ${device} A`,
      source,
    })
}
