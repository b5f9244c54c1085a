import type { MountValues } from '../../structure/index.js'
import type { Section } from '../../report/index.js'

/** How snow may lie on each plane; none where there is no ground snow. */
export function snowSections({ snow }: MountValues): Section[] {
  if (snow.ground_psf <= 0) return []
  const level =
    snow.level === 'strength' ? 'at strength level, of which the combinations take 0.7' : 'at allowable stress level'
  return [
    {
      kind: 'table',
      heading: `Snow cases, on the horizontal, ${level}; ground snow ${snow.ground_psf} psf`,
      columns: [
        { heading: 'Plane' },
        { heading: 'Case' },
        { heading: 'At the eave', unit: 'psf', decimals: 1 },
        { heading: 'At the top', unit: 'psf', decimals: 1 },
        { heading: 'Most', unit: 'psf', decimals: 1 },
        { heading: 'On the modules', unit: 'psf', decimals: 1 },
        { heading: 'Changes at', unit: 'ft from the eave' },
      ],
      rows: Object.entries(snow.planes).flatMap(([plane, { cases, modules_case: governs }]) =>
        cases.map((one) => [
          plane,
          one.name,
          one.pieces[0]?.from_psf ?? 0,
          one.pieces.at(-1)?.to_psf ?? 0,
          one.most_psf,
          one.name === governs ? { value: one.on_modules_psf, tone: 'strong' as const } : one.on_modules_psf,
          one.pieces
            .slice(1)
            .map((piece) => piece.from_ft.toFixed(1))
            .join(', '),
        ]),
      ),
    },
  ]
}
