import type { Worksheet } from '../../worksheet/index.js'
import type { RailKit } from '../planes/index.js'

type Product = RailKit['mount']['product']
type Kind = NonNullable<Product['kind']>

/** Keys that only some kinds of mount use. */
const USED_BY: Readonly<Partial<Record<keyof Product, readonly Kind[]>>> = {
  lag: ['rafter_screw', 'tile_hook'],
  structural_screw: ['rafter_screw'],
  base_plate: ['rafter_screw', 'tile_hook'],
  stands_off: ['rafter_screw', 'tile_hook'],
  base_in: ['rafter_screw', 'tile_hook'],
  seam_clamp: ['standing_seam_clamp'],
  hook: ['tile_hook'],
  deck: ['deck'],
  interaction_exponent: ['standing_seam_clamp', 'deck'],
  capacity_uplift_lb: ['rafter_screw', 'standing_seam_clamp', 'tile_hook'],
  capacity_down_lb: ['rafter_screw', 'standing_seam_clamp', 'tile_hook'],
  capacity_lateral_lb: ['rafter_screw', 'standing_seam_clamp', 'tile_hook'],
}

/** Warns of values of the sheet that mounts of this kind do not use. */
export function reportUnusedKeys({ id, at, product }: RailKit['mount'], worksheet: Worksheet): void {
  const kind = product.kind ?? 'rafter_screw'
  const unused = Object.entries(USED_BY)
    .filter(([key, kinds]) => product[key as keyof Product] !== undefined && !kinds.includes(kind))
    .map(([key]) => key)
  const allowable = product.capacity_basis !== 'ultimate'
  for (const key of [...unused, ...(allowable && product.safety_factor !== undefined ? ['safety_factor'] : [])]) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.mount-key-unused',
      message: `mount '${id}' is a ${kind.replaceAll('_', ' ')}${key === 'safety_factor' ? ' with allowable capacities' : ''}: its ${key} is not used`,
      where: `${at}.${key}`,
      fix:
        key === 'safety_factor'
          ? 'Take it out, or state capacity_basis: ultimate.'
          : 'Take it out, or state the kind that the mount really is.',
    })
  }
}
