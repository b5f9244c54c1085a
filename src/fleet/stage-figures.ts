import type { WiringValues } from '../electrical/index.js'
import type { BomValues } from '../materials/index.js'
import type { PaybackValues } from '../money/index.js'
import type { MountValues } from '../structure/index.js'
import type { YieldValues } from '../yield/index.js'
import { roundForMachines } from '../report/index.js'
import { figuresOf } from './figures.js'
import type { Figures } from './types.js'

/*
 * What is told of a house in a fleet, and compared with the saved run: the figures that a person decides by. The whole
 * results are for --out-dir.
 */

export function yieldFigures({ rated_kw, annual, monthly, arrays, climate, exceedance }: YieldValues): Figures {
  return figuresOf({
    rated_kw,
    // Not what the inverters clip: often a fraction of a kWh, of which any change is a large share.
    annual: { ...annual, clipped_kwh: undefined },
    ten_year_p90_kwh: exceedance.ten_year_mean.p90_kwh,
    monthly_ac_kwh: byKey(monthly, ({ month, ac_kwh }) => [String(month).padStart(2, '0'), ac_kwh]),
    arrays: byKey(Object.entries(arrays), ([id, { modules, tilt_deg, annual: year }]) => [
      id,
      {
        modules,
        tilt_deg,
        ac_kwh: year.ac_kwh,
        poa_kwh_m2: year.poa_kwh_m2,
        performance_ratio: year.performance_ratio,
      },
    ]),
    climate: { name: climate.name, elevation_m: climate.elevation_m },
  })
}

export function wireFigures({
  edition,
  circuits,
  raceways,
  boxes,
  strings,
  panel,
  combiner,
  grounding,
}: WiringValues): Figures {
  const panelFigures = (one: WiringValues['panel']): object => ({
    rule: one.rule,
    complies: one.complies,
    inverter_a: one.inverter_a,
    max_inverter_a: one.max_inverter_a,
  })
  return figuresOf({
    edition,
    circuits: byKey(circuits, (circuit) => [
      circuit.id,
      {
        required_a: circuit.required_a,
        breaker_a: circuit.breaker_a,
        total_voltage_rise_pct: circuit.total_voltage_rise_pct,
        conductors: byKey(circuit.segments, ({ id, size_awg, egc_awg, material, insulation, ampacity_a }) => [
          id,
          `${size_awg} ${material} ${insulation}, ground ${egc_awg ?? 'none'}, ${roundForMachines(ampacity_a)} A`,
        ]),
      },
    ]),
    raceways: byKey(raceways, ({ id, type, trade_size, straps }) => [
      id,
      `${type} ${trade_size ?? ''}, ${straps} straps`,
    ]),
    ...(boxes.length === 0
      ? {}
      : { boxes: byKey(boxes, ({ id, required_in3, complies }) => [id, { required_in3, complies }]) }),
    strings: byKey(strings, ({ id, voc_cold_v, vmp_hot_v, complies }) => [id, { voc_cold_v, vmp_hot_v, complies }]),
    panel: panelFigures(panel),
    ...(combiner === null ? {} : { combiner: panelFigures(combiner) }),
    grounding: { array_awg: grounding.array.size_awg, electrode_awg: grounding.electrode.size_awg },
  })
}

export function mountFigures(values: MountValues): Figures {
  return figuresOf({
    edition: values.edition,
    counts: values.counts,
    max_span_in: values.max_span_in,
    max_span_governs: values.max_span_governs,
    zones: values.loads.zones,
    weakest_link: { name: values.weakest_link.name, ratio: values.weakest_link.ratio },
    added_dead_load_psf: values.added_dead_load_psf,
    array_weight_lb: values.array_weight_lb,
  })
}

export function bomFigures({ complete, totals, lines }: BomValues): Figures {
  return figuresOf({ complete, totals, quantities: byKey(lines, ({ item, quantity }) => [item, quantity]) })
}

export function paybackFigures(values: PaybackValues): Figures {
  const { gross_cost_usd, incentives_usd, net_cost_usd, first_year_kwh, first_year_savings_usd, bills } = values
  return figuresOf({
    gross_cost_usd,
    incentives_usd,
    net_cost_usd,
    first_year_kwh,
    first_year_savings_usd,
    monthly_savings_usd: byKey([...bills.monthly_savings_usd.entries()], ([i, usd]) => [
      String(i + 1).padStart(2, '0'),
      usd,
    ]),
    simple_payback_years: values.simple_payback.lasting_years,
    discounted_payback_years: values.discounted_payback.lasting_years,
    npv_usd: values.npv_usd,
    irr: { kind: values.irr.kind, rates_pct: values.irr.rates_pct },
    sir: values.sir,
    lcoe_usd_per_kwh: values.lcoe_usd_per_kwh,
    npv_p90_usd: values.uncertainty.npv_usd.p90,
    payback_p90_years: values.uncertainty.payback_years.p90,
    ...(values.storage === undefined ? {} : { storage: storageFigures(values.storage) }),
  })
}

function storageFigures({ annual, first_year_savings_usd: savedUsd, outage }: NonNullable<PaybackValues['storage']>) {
  const { charged_kwh, discharged_kwh, losses_kwh, import_kwh, export_kwh, self_use_pct } = annual
  return {
    annual: { charged_kwh, discharged_kwh, losses_kwh, import_kwh, export_kwh, self_use_pct },
    first_year_savings_usd: savedUsd,
    outage_p90_h: byKey(outage ?? [], ({ month, p90_h: hours }) => [String(month).padStart(2, '0'), hours]),
  }
}

function byKey<Item>(items: Iterable<Item>, entry: (item: Item) => readonly [string, unknown]): object {
  return Object.fromEntries([...items].map(entry))
}

/** Figures of money bear the label of the project's currency, where it states one. */
export function figuresInCurrency(figures: Figures, currency: string | undefined): Figures {
  const hasMoney = Object.keys(figures).some((key) => /(?<![a-z])usd(?![a-z])/u.test(key))
  return currency === undefined || !hasMoney ? figures : { ...figures, currency }
}
