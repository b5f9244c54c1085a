import { own } from '../../values/index.js'
import type { Project } from '../../project/index.js'
import { inches } from '../layout/index.js'

type Row = [string, string]
type ArrayOfModules = Project['arrays'][string]

/**
 * Sizes of the drawn section that are not the same under all arrays, with the arrays that have each. A detail drawn once must not
 * pass for what is built elsewhere.
 */
export function attachmentDifferences(project: Project): Row[] {
  const framingOf = ({ roof_plane: plane }: ArrayOfModules) => own(project.structure?.framing, plane)
  const sizes: [string, (array: ArrayOfModules) => string][] = [
    ['Module frame above the roof', ({ standoff_in: height }) => inches(height)],
    ['Height of module frames', ({ module }) => stated(own(project.equipment.modules, module)?.thickness_in)],
    ['Sheathing', (array) => stated(framingOf(array)?.sheathing_in)],
    ['Thickness of the covering', (array) => stated(framingOf(array)?.covering_in)],
  ]
  return sizes.flatMap(([what, sizeOf]): Row[] => {
    const bySize = new Map<string, string[]>()
    for (const [id, array] of Object.entries(project.arrays)) {
      const size = sizeOf(array)
      bySize.set(size, [...(bySize.get(size) ?? []), id])
    }
    return bySize.size < 2 ? [] : [[what, [...bySize].map(([size, ids]) => `${ids.join(', ')}: ${size}`).join('; ')]]
  })
}

const stated = (size: number | undefined): string => (size === undefined ? 'not stated' : inches(size))
