import type { MountValues, RafterValue } from '../../structure/index.js'
import type { Section } from '../../report/index.js'

const CHECKS: readonly RafterValue['check'][] = ['bending', 'shear', 'bearing', 'deflection']

/** The rafters: the hardest of each check and plane, what the rule for existing buildings says, and ways out. */
export function rafterSections(values: MountValues): Section[] {
  return [
    ...(values.rafters.length === 0 ? [] : [hardest(values)]),
    ...verdict(values),
    ...(values.rafter_proposals.length === 0 ? [] : [proposals(values)]),
  ]
}

function hardest({ rafters }: MountValues): Section {
  const planes = [...new Set(rafters.map(({ plane }) => plane))]
  const worst = planes.flatMap((plane) =>
    CHECKS.flatMap((check) => {
      const rows = rafters.filter((row) => row.plane === plane && row.check === check)
      return rows.length === 0 ? [] : [rows.reduce((a, b) => (b.ratio > a.ratio ? b : a))]
    }),
  )
  return {
    kind: 'table',
    heading: 'Rafters by the wood standard, the hardest of each check',
    columns: [
      { heading: 'Plane' },
      { heading: 'Check' },
      { heading: 'Rafter' },
      { heading: 'At', unit: 'ft', decimals: 1 },
      { heading: 'Under' },
      { heading: 'Demand', align: 'right' },
      { heading: 'Limit', align: 'right' },
      { heading: 'Unit' },
      { heading: 'Ratio', decimals: 2 },
    ],
    rows: worst.map((row) => [
      row.plane,
      row.check,
      row.rafter,
      row.at_ft,
      row.load_combination,
      row.unit === 'psi' ? row.demand.toFixed(0) : row.demand.toFixed(3),
      row.unit === 'psi' ? row.capacity.toFixed(0) : row.capacity.toFixed(3),
      row.unit,
      { value: row.ratio, tone: row.ratio > 1 ? 'bad' : 'good' },
    ]),
  }
}

/** Strength, stiffness and the code path beside each other. */
function verdict({ rafters, rafters_code_path: path }: MountValues): Section[] {
  if (rafters.length === 0 && path === null) return []
  const most = (checks: readonly string[]): number =>
    Math.max(0, ...rafters.filter(({ check }) => checks.includes(check)).map(({ ratio }) => ratio))
  const used = (ratio: number) => ({
    value: `${(100 * ratio).toFixed(0)} % used${ratio > 1 ? ': fails' : ''}`,
    tone: ratio > 1 ? ('bad' as const) : ('good' as const),
  })
  return [
    {
      kind: 'facts',
      heading: 'Rafters, three answers',
      facts: [
        ...(rafters.length === 0
          ? [{ label: 'Strength', value: { value: 'not checked', tone: 'bad' as const } }]
          : [
              { label: 'Strength', value: used(most(['bending', 'shear', 'bearing'])) },
              { label: 'Stiffness', value: used(most(['deflection'])) },
            ]),
        ...(path === null
          ? []
          : [
              {
                label: 'Rule for existing buildings',
                value: `${path.passes ? 'lets it pass' : 'asks for a new look'}: bending of ${path.plane} rafter ${path.rafter} changes by ${path.change_pct.toFixed(1)} % (up to 5 % is allowed; dead load alone ${path.dead_change_pct.toFixed(1)} %); it says nothing about strength`,
              },
            ]),
      ],
    },
  ]
}

function proposals({ rafter_proposals: list }: MountValues): Section {
  return {
    kind: 'table',
    heading: "What would spare the rafters, each for an engineer's eye",
    columns: [{ heading: 'Plane' }, { heading: 'Rafter' }, { heading: 'Change' }, { heading: 'Ratio', decimals: 2 }],
    rows: list.map(({ plane, rafter, what, ratio }) => [
      plane,
      rafter,
      what,
      { value: ratio, tone: ratio > 1 ? 'bad' : 'good' },
    ]),
  }
}
