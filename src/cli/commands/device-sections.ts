import type { WiringValues } from '../../electrical/index.js'
import type { Cell, Section } from '../../report/index.js'

/** Lines of a 208 V service, converters and DC combiners; nothing where a project has none of them. */
export function deviceSections(values: WiringValues): Section[] {
  return [...lines(values), ...converters(values), ...dcCombiners(values)]
}

function lines({ service, circuits }: WiringValues): Section[] {
  if (service === undefined) return []
  const row = (name: string, of: string, current: { a: number; b: number; c: number }): Cell[] => [
    name,
    of,
    current.a,
    current.b,
    current.c,
  ]
  return [
    {
      kind: 'table',
      heading: `Lines of the ${service.voltage_v} V service${service.unbalance_pct === null ? '' : `, ${service.unbalance_pct.toFixed(0)} % from even`}`,
      columns: [
        { heading: 'Circuit' },
        { heading: 'Lines' },
        { heading: 'A', unit: 'A', decimals: 2 },
        { heading: 'B', unit: 'A', decimals: 2 },
        { heading: 'C', unit: 'A', decimals: 2 },
      ],
      rows: [
        ...circuits.flatMap(({ id, lines: of, line_currents_a: current }) =>
          of === undefined || current === undefined ? [] : [row(id, of, current)],
        ),
        row('all inverters', service.phases === 3 ? 'ABC' : 'AB', service.line_currents_a),
      ],
    },
  ]
}

function converters({ strings }: WiringValues): Section[] {
  const rows = strings.flatMap(({ id, optimiser }): Cell[][] =>
    optimiser === undefined
      ? []
      : [
          [
            id,
            optimiser.id,
            optimiser.units,
            optimiser.input_cold_v,
            optimiser.input_isc_a,
            optimiser.string_power_w,
            optimiser.shutdown_v ?? 'not known',
          ],
        ],
  )
  if (rows.length === 0) return []
  return [
    {
      kind: 'table',
      heading: 'Converters of the strings',
      columns: [
        { heading: 'String' },
        { heading: 'Converter' },
        { heading: 'Units' },
        { heading: 'Coldest input', unit: 'V', decimals: 1 },
        { heading: 'Input Isc', unit: 'A', decimals: 2 },
        { heading: 'String', unit: 'W', decimals: 0 },
        { heading: 'After shutdown', unit: 'V', decimals: 1 },
      ],
      rows,
    },
  ]
}

function dcCombiners({ dc_combiners: boxes }: WiringValues): Section[] {
  if (boxes === undefined) return []
  return [
    {
      kind: 'table',
      heading: 'DC combiners',
      columns: [
        { heading: 'Box' },
        { heading: 'Strings' },
        { heading: 'Fuses' },
        { heading: 'Fed back', unit: 'A', decimals: 1 },
        { heading: 'Output', unit: 'A', decimals: 1 },
        { heading: 'Highest', unit: 'V', decimals: 1 },
        { heading: 'Verdict' },
      ],
      rows: boxes.map((box): Cell[] => [
        box.id,
        box.strings.join(', '),
        box.fuse_a === null
          ? `none${box.fuses_needed ? ', needed' : ''}`
          : `${box.fuse_a} A in ${box.poles_fused === 'both' ? 'both poles' : 'one pole'}`,
        box.backfeed_a,
        box.output_a,
        box.highest_voltage_v,
        box.complies ? { value: 'passes', tone: 'good' } : { value: 'FAILS', tone: 'bad' },
      ]),
    },
  ]
}
