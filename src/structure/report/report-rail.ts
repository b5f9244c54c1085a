import { ALLOYS } from '../../tables/aluminium/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import type { MountValue } from '../model/index.js'
import type { RailKit } from '../planes/index.js'
import { allowableBendingKsi } from '../rails/index.js'
import type { SquareFeet } from '../../values/index.js'

/** Writes the bending strength of the rail on the worksheet. */
export function reportRail(kit: RailKit, worksheet: Worksheet): void {
  const { rail, railStrength } = kit
  const { allowable_moment_x_lb_in: stated, alloy, section_modulus_x_in3: section } = rail.product
  const sheet: Source = { document: rail.product.sheet ?? `sheet of rail ${rail.id}`, standing: 'project file' }
  const bySection = stated === undefined && alloy !== undefined && section !== undefined
  worksheet.step({
    id: 'structure.rail-moment',
    says: 'Allowable moment of the rail at right angles to the roof',
    formula: bySection ? 'M = Sx (smaller of Fty / 1.65 and Ftu / 1.95)' : 'M = value of the rail sheet',
    inputs: bySection
      ? [
          { symbol: 'Sx', value: section, unit: 'in3', from: `${rail.at}.section_modulus_x_in3` },
          { symbol: 'Fty', value: ALLOYS[alloy].yieldKsi, unit: 'ksi', from: `alloy ${alloy}` },
          { symbol: 'Ftu', value: ALLOYS[alloy].ultimateKsi, unit: 'ksi', from: `alloy ${alloy}` },
          { symbol: 'F', value: allowableBendingKsi(alloy), unit: 'ksi', from: 'Aluminum Design Manual B.3' },
        ]
      : [
          {
            symbol: 'sheet',
            value: railStrength.momentXLbIn,
            unit: 'lb-in',
            from: `${rail.at}.allowable_moment_x_lb_in`,
          },
        ],
    result: { symbol: 'M', value: railStrength.momentXLbIn, unit: 'lb-in' },
    source: bySection
      ? { document: 'Aluminum Design Manual', place: 'safety factors 1.65 and 1.95', standing: 'from memory' }
      : sheet,
    limits: bySection
      ? 'local and lateral buckling of thin lips is not covered; the allowable moment of the sheet is better'
      : 'as the sheet says',
  })
}

/** Writes how the continuous rail loads the mount with the highest ratio. */
export function reportHardestMount(
  mounts: readonly (MountValue & { readonly reactionAreaFt2: SquareFeet })[],
  worksheet: Worksheet,
): void {
  const [first, ...others] = mounts
  if (first === undefined) return
  const mount = others.reduce((a, b) => (b.ratio > a.ratio ? b : a), first)
  worksheet.step({
    id: 'structure.hardest-mount',
    says: `Uplift on the mount with the highest ratio, ${mount.id} in zone ${mount.zone}, from the continuous rail over its mounts`,
    formula:
      'T = sum over zones of r (0.6 p) - 0.6 D cos(slope) sum of r, with r the area that the rail gives to the mount',
    inputs: [
      { symbol: 'A', value: mount.area_ft2, unit: 'ft2', from: 'plain tributary area, at which p is read' },
      { symbol: 'sum of r', value: mount.reactionAreaFt2, unit: 'ft2', from: 'three-moment equation' },
      {
        symbol: 'gammaE',
        value: mount.edge_factor,
        unit: '',
        from: `structure.${mount.plane}.zone-${mount.zone}.uplift`,
      },
    ],
    result: { symbol: 'T', value: mount.uplift_lb, unit: 'lb' },
    check: { relation: '<=', limit: mount.capacity_lb, pass: mount.ratio <= 1 },
    source: { document: "Clapeyron's theorem of three moments", standing: 'read' },
    limits: 'zones whose load would relieve the mount are left out',
  })
}
