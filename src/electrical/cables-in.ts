import type { RacewayValues } from './system/index.js'

/** A cable as it is bought. */
export interface Cable {
  readonly circuit: string
  /** `NM-B 12/2 with ground`. */
  readonly name: string
  /** `12/2`. */
  readonly size: string
  readonly material: string
}

const TYPE_NAMES: Readonly<Record<string, string>> = { NM: 'NM-B', UF: 'UF-B', SE: 'SE-R' }

/** Cables of a segment, one for each circuit; none in a raceway. */
export function cablesIn({ form, type, conductors }: RacewayValues): Cable[] {
  if (form !== 'cable') return []
  const circuits = new Map<string, RacewayValues['conductors'][number][]>()
  for (const each of conductors) circuits.set(each.circuit, [...(circuits.get(each.circuit) ?? []), each])
  return [...circuits].flatMap(([circuit, own]): Cable[] => {
    const wires = own.filter(({ use }) => use !== 'grounding')
    const [first] = wires
    const earth = own.find(({ use }) => use === 'grounding')
    if (first === undefined) return []
    const size = `${first.size_awg}/${wires.reduce((sum, { count }) => sum + count, 0)}`
    const made = TYPE_NAMES[type] ?? type
    const what = [made, size, first.insulation === made ? '' : first.insulation].filter((part) => part !== '')
    const metal = first.material === 'copper' ? '' : ` ${first.material}`
    const grounded =
      earth === undefined
        ? ''
        : ` with ground${earth.size_awg === first.size_awg ? '' : ` of ${earth.size_awg} AWG or larger`}`
    return [{ circuit, name: `${what.join(' ')}${metal}${grounded}`, size, material: first.material }]
  })
}

/** Cables of one kind counted together: `2 x NM-B 12/2 with ground`. */
export function cableText(raceway: RacewayValues): string {
  const counts = new Map<string, number>()
  for (const { name } of cablesIn(raceway)) counts.set(name, (counts.get(name) ?? 0) + 1)
  return [...counts].map(([name, count]) => `${count} x ${name}`).join('; ')
}
