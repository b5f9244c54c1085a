import { allCircuits, cableText, type WiringValues } from '../../electrical/index.js'
import { boxSection } from './box-section.js'
import type { Cell, Section, TableData } from '../../report/index.js'
import { overheadSection } from './overhead-section.js'
import { storageWiringSections } from './storage-wiring-sections.js'
import { treeSections } from './tree-sections.js'
import { deviceSections } from './device-sections.js'

const KIND_WORDS: Readonly<Record<string, string>> = {
  ac_branch: 'AC branch',
  ac_inverter_output: 'inverter output',
  ac_combined_output: 'combined output',
  ac_supply_tap: 'supply tap',
  dc_string: 'DC string',
  dc_output: 'DC combiner output',
  ac_storage: 'storage',
  dc_storage: 'battery, DC',
}

/** One row for each segment of each circuit: what a script or a spreadsheet wants. */
export function circuitTable(values: WiringValues): TableData {
  return {
    columns: [
      { heading: 'Circuit', key: 'circuit' },
      { heading: 'Segment', key: 'segment' },
      { heading: 'Size', key: 'size_awg' },
      { heading: 'Material', key: 'material' },
      { heading: 'Insulation', key: 'insulation' },
      { heading: 'Length', unit: 'ft', decimals: 1, key: 'length_ft' },
      { heading: 'Breaker', unit: 'A', key: 'breaker_a' },
      { heading: 'Ground', key: 'egc_awg' },
      { heading: 'Raceway', key: 'raceway' },
      { heading: 'Trade size', key: 'trade_size' },
      { heading: 'Straps', key: 'straps' },
    ],
    rows: allCircuits(values).flatMap((circuit) =>
      circuit.segments.map((segment): Cell[] => [
        circuit.id,
        segment.id,
        segment.size_awg,
        segment.material,
        segment.insulation,
        segment.length_ft,
        circuit.breaker_a,
        segment.egc_awg,
        segment.raceway.type,
        segment.raceway.trade_size,
        segment.straps,
      ]),
    ),
  }
}

/** The report of the wiring stage, part by part. */
export function wiringSections(values: WiringValues): Section[] {
  return [
    panelVerdict(values),
    circuits(values),
    segments(values),
    ...(values.raceways.length === 0 ? [] : [raceways(values)]),
    ...(values.boxes.length === 0 ? [] : [boxSection(values)]),
    ...(values.strings.length === 0 ? [] : [strings(values)]),
    ...treeSections(values),
    ...deviceSections(values),
    ...(values.storage === undefined ? [] : storageWiringSections(values.storage)),
    ...(values.overhead === undefined ? [] : [overheadSection(values.overhead)]),
    panelRules(values),
    grounding(values),
  ]
}

function panelVerdict({ panel, edition, distribution }: WiringValues): Section {
  // What fails further towards the utility stops the connection as well.
  const stop = panel.complies ? distribution.find(({ complies }) => !complies) : undefined
  return {
    kind: 'facts',
    facts: [
      { label: 'Code', value: edition },
      { label: 'Inverter current', value: panel.inverter_a, unit: 'A', decimals: 2 },
      {
        label: 'Panel',
        value: {
          value:
            stop !== undefined
              ? `NOT allowed: ${stop.name}, ${stop.governs ?? ''} (${stop.section ?? ''})`
              : panel.complies
                ? `allowed: ${panel.rule} (${panel.section})`
                : `NOT allowed: ${panel.rule} (${panel.section})`,
          tone: panel.complies && stop === undefined ? 'good' : 'bad',
        },
      },
      { label: 'Panel takes up to', value: panel.max_inverter_a, unit: 'A', decimals: 1 },
      {
        label: 'Breaker spaces',
        value: `${panel.spaces_needed} needed, ${panel.spaces_free === null ? 'free ones not stated' : `${panel.spaces_free} free`}`,
      },
    ],
  }
}

function circuits(values: WiringValues): Section {
  return {
    kind: 'table',
    heading: 'Circuits',
    columns: [
      { heading: 'Circuit' },
      { heading: 'Kind' },
      { heading: 'Current', unit: 'A', decimals: 2 },
      { heading: 'Required', unit: 'A', decimals: 2 },
      { heading: 'Breaker', unit: 'A' },
      { heading: 'Largest', unit: 'A' },
      { heading: 'Rise', unit: '%', decimals: 2 },
      { heading: 'Total rise', unit: '%', decimals: 2 },
      { heading: 'Limit', unit: '%', decimals: 1 },
    ],
    rows: allCircuits(values).map((circuit) => [
      circuit.id,
      KIND_WORDS[circuit.kind] ?? circuit.kind,
      circuit.continuous_a,
      circuit.required_a,
      circuit.breaker_a ?? 'none',
      circuit.max_breaker_a,
      circuit.voltage_rise_pct,
      circuit.total_voltage_rise_pct,
      circuit.voltage_rise_limit_pct,
    ]),
  }
}

function segments(values: WiringValues): Section {
  return {
    kind: 'table',
    heading: 'Conductors, segment by segment',
    columns: [
      { heading: 'Segment' },
      { heading: 'Conductor' },
      { heading: 'Ground' },
      { heading: 'Length', unit: 'ft', decimals: 0 },
      { heading: 'Air', unit: 'C', decimals: 1 },
      { heading: 'Factors' },
      { heading: 'Ampacity', unit: 'A', decimals: 1 },
      { heading: 'Terminal', unit: 'A', decimals: 0 },
      { heading: 'Rise', unit: '%', decimals: 2 },
      { heading: 'Governs' },
    ],
    rows: allCircuits(values).flatMap((circuit) =>
      circuit.segments.map((segment): Cell[] => [
        segment.id.startsWith(`${circuit.id}.`) ? segment.id : `${circuit.id}: ${segment.id}`,
        conductorWords(segment),
        segment.egc_awg === null ? 'none' : segment.egc_awg,
        segment.length_ft,
        segment.ambient_c,
        `${segment.correction.toFixed(2)} x ${segment.adjustment.toFixed(2)}`,
        segment.ampacity_a,
        segment.terminal_limit_a,
        segment.voltage_rise_pct,
        segment.governs.replaceAll('_', ' '),
      ]),
    ),
  }
}

function conductorWords(segment: WiringValues['circuits'][number]['segments'][number]): string {
  const metal = segment.material === 'copper' ? 'Cu' : 'Al'
  const size = segment.size_awg.includes('kcmil') ? segment.size_awg : `${segment.size_awg} AWG`
  const named = segment.named === null ? '' : segment.named.complies ? ' (yours)' : ' (yours FAILS)'
  return `${size} ${metal} ${segment.insulation}${named}`
}

function raceways(values: WiringValues): Section {
  return {
    kind: 'table',
    heading: values.raceways.some(({ form }) => form === 'cable') ? 'Raceways and cables' : 'Raceways',
    columns: [
      { heading: 'Raceway' },
      { heading: 'Type' },
      { heading: 'Trade size' },
      { heading: 'Fill', unit: '%', decimals: 1 },
      { heading: 'Limit', unit: '%', decimals: 0 },
      { heading: 'Length', unit: 'ft', decimals: 0 },
      { heading: 'Straps' },
      { heading: 'Moves', unit: 'in', decimals: 2 },
      { heading: 'Holds' },
    ],
    rows: values.raceways.map((raceway) => [
      raceway.id,
      raceway.form === 'cable' ? `${raceway.type} cable` : raceway.type,
      raceway.trade_size,
      raceway.form === 'raceway' && raceway.fill_pct === null
        ? { value: 'not judged', tone: 'warn' }
        : raceway.fill_pct,
      raceway.fill_limit_pct,
      raceway.length_ft,
      raceway.straps,
      raceway.expansion_fitting ? { value: raceway.length_change_in ?? 0, tone: 'warn' } : raceway.length_change_in,
      raceway.form === 'cable' ? cableText(raceway) : heldWords(raceway.conductors),
    ]),
  }
}

/** `6 x 12 AWG, 1 x 12 AWG ground`: conductors of one size and use counted together. */
function heldWords(conductors: WiringValues['raceways'][number]['conductors']): string {
  const counts = new Map<string, number>()
  for (const { count, size_awg: size, use } of conductors) {
    const name = `${size}${use === 'grounding' ? ' ground' : use === 'neutral' ? ' neutral' : ''}`
    counts.set(name, (counts.get(name) ?? 0) + count)
  }
  return [...counts].map(([name, count]) => `${count} x ${name}`).join(', ')
}

function strings(values: WiringValues): Section {
  return {
    kind: 'table',
    heading: 'Strings',
    columns: [
      { heading: 'String' },
      { heading: 'Modules' },
      { heading: 'Coldest Voc', unit: 'V', decimals: 1 },
      { heading: 'Limit', unit: 'V', decimals: 0 },
      { heading: 'Hottest Vmp', unit: 'V', decimals: 1 },
      { heading: 'Modules allowed' },
      { heading: 'Verdict' },
    ],
    rows: values.strings.map((string) => [
      string.id,
      string.modules,
      string.voc_cold_v,
      string.limit_v,
      string.vmp_hot_v,
      `${string.min_modules} to ${string.max_modules}`,
      string.complies ? { value: 'passes', tone: 'good' } : { value: 'FAILS', tone: 'bad' },
    ]),
  }
}

function panelRules({ panel, combiner }: WiringValues): Section {
  const rows = [
    ...panel.rules.map((rule) => ['panel', rule] as const),
    ...(combiner?.rules ?? []).map((rule) => ['combiner', rule] as const),
  ]
  return {
    kind: 'table',
    heading: 'Connection rules of this edition',
    columns: [
      { heading: 'At' },
      { heading: 'Rule' },
      { heading: 'Section' },
      { heading: 'Verdict' },
      { heading: 'Sum', unit: 'A', decimals: 2 },
      { heading: 'Limit', unit: 'A', decimals: 0 },
      { heading: 'Inverters up to', unit: 'A', decimals: 1 },
      { heading: 'Why' },
    ],
    rows: rows.map(([at, rule]) => [
      at,
      rule.rule,
      rule.section,
      rule.holds ? { value: 'holds', tone: 'good' } : { value: 'no', tone: 'dim' },
      rule.sum_a,
      rule.limit_a,
      rule.max_inverter_a,
      rule.why,
    ]),
  }
}

function grounding({ grounding: list }: WiringValues): Section {
  return {
    kind: 'list',
    heading: 'Grounding and bonding',
    items: [
      ...list.equipment.map(
        (one) =>
          `equipment grounding conductor in ${one.raceway}: ${one.size_awg} ${one.material} (device ${one.device_a} A)${one.unspliced ? ', unspliced' : ''}`,
      ),
      `array: ${list.array.size_awg} ${list.array.material}${list.array.unspliced ? ', unspliced' : ''}; ${list.array.note}`,
      `electrode conductor: ${list.electrode.required ? `${list.electrode.size_awg ?? 'size open'}${list.electrode.unspliced ? ', unspliced' : ''}` : 'not asked for'}; ${list.electrode.note}`,
      ...(list.supply_side_bonding_awg === null ? [] : [`supply-side bonding jumper: ${list.supply_side_bonding_awg}`]),
      ...list.raceway_bonding.map((one) => `bond at ${one.at} between ${one.between}: ${one.note}`),
    ],
  }
}
