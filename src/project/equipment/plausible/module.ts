import {
  MODULE_RANGES,
  MOST_EFFICIENCY_PCT,
  POWER_PRODUCT,
  SYSTEM_VOLTAGES_V,
} from '../../../tables/equipment/index.js'
import { CONTINUOUS_FACTOR, sectionOf, SHORT_CIRCUIT_FACTOR } from '../../../tables/nec/index.js'
import { INCHES_PER_FOOT, MM_PER_INCH } from '../../../values/index.js'
import type { PvModule } from '../../project-types.generated.js'
import { rounded, type Doubts } from './doubts.js'

/** Irradiance of the rating, W/m2. */
const RATED_W_M2 = 1000
const SQUARE_METRES_PER_SQUARE_INCH = (MM_PER_INCH / 1000) ** 2

/** What does not fit together on the sheet of a module. Voc over Vmp and Isc over Imp are rules of the file. */
export function doubtModule(module: PvModule, doubts: Doubts): void {
  doubtPower(module, doubts)
  doubtCurve(module, doubts)
  doubtCoefficients(module, doubts)
  doubts.outside(
    'equipment.noct',
    'noct_c',
    'the nominal operating cell temperature',
    module.noct_c,
    MODULE_RANGES.noct,
  )
  doubtSize(module, doubts)
  doubtFuse(module, doubts)
}

function doubtPower({ pmax_w: power, vmp_v: volts, imp_a: amps }: PvModule, doubts: Doubts): void {
  if (volts === undefined || amps === undefined) return
  const product = volts * amps
  const offPct = (Math.abs(product - power) / power) * 100
  if (offPct <= POWER_PRODUCT.doubtPct) return
  const severity = offPct > POWER_PRODUCT.errorPct ? 'error' : 'warning'
  const most = severity === 'error' ? POWER_PRODUCT.errorPct : POWER_PRODUCT.doubtPct
  doubts.add(severity, 'equipment.power-product', 'pmax_w', {
    message: `${power} W differs from vmp_v x imp_a = ${volts} V x ${amps} A = ${rounded(product)} W by ${rounded(offPct)} %, more than ${most} %`,
    source: POWER_PRODUCT.source,
  })
}

function doubtCurve({ voc_v: voc, vmp_v: vmp, isc_a: isc, imp_a: imp }: PvModule, doubts: Doubts): void {
  const voltage = voc === undefined || vmp === undefined ? undefined : vmp / voc
  const current = isc === undefined || imp === undefined ? undefined : imp / isc
  doubts.outside('equipment.curve-shape', 'vmp_v', 'vmp_v over voc_v', voltage, MODULE_RANGES.voltageShare)
  doubts.outside('equipment.curve-shape', 'imp_a', 'imp_a over isc_a', current, MODULE_RANGES.currentShare)
}

function doubtCoefficients(module: PvModule, doubts: Doubts): void {
  const id = 'equipment.temperature-coefficient'
  const { pmax_temp_coeff_pct_per_c: power, voc_temp_coeff_v_per_c: volts, voc_v: voc } = module
  const stated = module.voc_temp_coeff_pct_per_c
  const byVolts = volts === undefined || voc === undefined ? undefined : (volts / voc) * 100
  const inPct = stated ?? byVolts
  const key = stated === undefined ? 'voc_temp_coeff_v_per_c' : 'voc_temp_coeff_pct_per_c'
  doubts.outside(id, 'pmax_temp_coeff_pct_per_c', 'the coefficient of power', power, MODULE_RANGES.powerCoefficient)
  doubts.outside(id, key, 'the coefficient of Voc', inPct, MODULE_RANGES.vocCoefficient)
  const current = module.isc_temp_coeff_pct_per_c
  doubts.outside(id, 'isc_temp_coeff_pct_per_c', 'the coefficient of Isc', current, MODULE_RANGES.iscCoefficient)
  const { source } = MODULE_RANGES.vocCoefficient
  if (inPct !== undefined && inPct < power) {
    const message = `the coefficient of Voc, ${rounded(inPct)} % per deg C, is steeper than that of power, ${power} % per deg C; are the two swapped?`
    doubts.add('warning', id, key, { message, source })
  }
  if (stated !== undefined && byVolts !== undefined && Math.abs(stated - byVolts) > 0.02) {
    const message = `voc_temp_coeff_v_per_c is ${rounded(byVolts)} % per deg C of voc_v, and voc_temp_coeff_pct_per_c says ${stated}`
    doubts.add('error', id, 'voc_temp_coeff_v_per_c', { message, source, fix: 'keep the one that the sheet states' })
  }
}

function doubtSize(module: PvModule, doubts: Doubts): void {
  const { length_in: length, width_in: width, weight_lb: weight, pmax_w: power } = module
  doubts.outside('equipment.module-size', 'length_in', 'the long side', length, MODULE_RANGES.longSideIn)
  doubts.outside('equipment.module-size', 'thickness_in', 'the frame', module.thickness_in, MODULE_RANGES.frameIn)
  if (length === undefined || width === undefined) return
  const efficiencyPct = (power / (length * width * SQUARE_METRES_PER_SQUARE_INCH) / RATED_W_M2) * 100
  if (efficiencyPct > MOST_EFFICIENCY_PCT.value)
    doubts.add('error', 'equipment.power-per-area', 'pmax_w', {
      message: `${power} W on ${length} x ${width} in is an efficiency of ${rounded(efficiencyPct)} %, above the limit of silicon, ${MOST_EFFICIENCY_PCT.value} %`,
      source: MOST_EFFICIENCY_PCT.source,
      fix: 'read power and size again; lengths of metric sheets take their unit: --set length_in="1722 mm"',
    })
  else
    doubts.outside('equipment.power-per-area', 'pmax_w', 'the efficiency', efficiencyPct, MODULE_RANGES.efficiencyPct)
  const psf = weight === undefined ? undefined : weight / ((length * width) / INCHES_PER_FOOT ** 2)
  doubts.outside('equipment.weight-per-area', 'weight_lb', 'the weight on its area', psf, MODULE_RANGES.weightPsf)
}

function doubtFuse(module: PvModule, doubts: Doubts): void {
  const { max_series_fuse_a: fuse, isc_a: isc, max_system_voltage_v: system } = module
  if (fuse !== undefined && isc !== undefined) {
    const least = SHORT_CIRCUIT_FACTOR * CONTINUOUS_FACTOR * isc
    const source = sectionOf('NEC 2020', 'dcOcpdRating')
    const sum = `${SHORT_CIRCUIT_FACTOR} x ${CONTINUOUS_FACTOR} x isc_a = ${rounded(least)} A`
    if (fuse <= isc)
      doubts.add('error', 'equipment.series-fuse', 'max_series_fuse_a', {
        message: `the largest series fuse, ${fuse} A, is not above the module's own short-circuit current, ${isc} A`,
        source,
      })
    else if (fuse < least)
      doubts.add('warning', 'equipment.series-fuse', 'max_series_fuse_a', {
        message: `the largest series fuse, ${fuse} A, is below ${sum}: no fuse that the code allows fits three strings in parallel`,
        source,
      })
  }
  if (system === undefined || SYSTEM_VOLTAGES_V.values.some((each) => each === system)) return
  doubts.add('warning', 'equipment.system-voltage', 'max_system_voltage_v', {
    message: `${system} V is none of the usual system voltages, ${SYSTEM_VOLTAGES_V.values.join(', ')} V`,
    source: SYSTEM_VOLTAGES_V.source,
  })
}
