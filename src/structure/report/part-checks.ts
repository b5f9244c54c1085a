import { NAIL_WITHDRAWAL, WOOD_SCREW_WITHDRAWAL } from '../../tables/nds/index.js'
import type { Source } from '../../worksheet/index.js'
import type { PartCheck } from '../model/index.js'
import type { LaidRail } from '../rails/index.js'
import type { ModuleCheck } from './module-checks.js'
import type { RailKit } from '../planes/index.js'

/** Where each check of mount and rail comes from and what to do when it fails. */
export function basisOf(name: string, kit: RailKit, wood: string): { source: Source; path: string; fix: string } {
  const mountSheet: Source = {
    document: kit.mount.product.sheet ?? `sheet of mount ${kit.mount.id}`,
    standing: 'project file',
  }
  const railSheet: Source = {
    document: kit.rail.product.sheet ?? `sheet of rail ${kit.rail.id}`,
    standing: 'project file',
  }
  const nds = (place: string): Source => ({ document: wood, place, standing: 'secondary' })
  const closer = 'Put the mounts closer together, or choose a stronger mount.'
  const longer = 'Put the mounts closer together, or use a longer or thicker screw.'
  const { at } = kit.mount
  switch (name) {
    case 'mount uplift':
      return { source: mountSheet, path: `${at}.capacity_uplift_lb`, fix: closer }
    case 'mount down':
      return { source: mountSheet, path: `${at}.capacity_down_lb`, fix: closer }
    case 'mount lateral':
      return { source: mountSheet, path: `${at}.capacity_lateral_lb`, fix: closer }
    case 'lag withdrawal':
      return { source: nds('eq. 12.2-1'), path: `${at}.lag`, fix: longer }
    case 'lag lateral':
      return { source: nds('tables 12.3.1A and 12K'), path: `${at}.lag`, fix: longer }
    case 'lag combined':
      return { source: nds('eq. 12.4-1'), path: `${at}.lag`, fix: longer }
    case 'lag root tension':
      return {
        source: { document: 'ASTM A307 grade A with the safety factor of AISC 360', standing: 'from memory' },
        path: `${at}.lag`,
        fix: longer,
      }
    case 'mount combined':
      return { source: mountSheet, path: at, fix: closer }
    case 'screw withdrawal':
    case 'screw tension':
    case 'screw combined':
    case 'screw lateral':
      return {
        source: {
          document: kit.mount.product.structural_screw?.sheet ?? `screw report of mount ${kit.mount.id}`,
          standing: 'project file',
        },
        path: `${at}.structural_screw`,
        fix: longer,
      }
    case 'seam clip':
    case 'seam bending':
    case 'panel fixed point':
      return seamBasis(name, kit)
    case 'hook neck':
    case 'hook on tile':
      return hookBasis(name, kit)
    case 'sheathing nails':
    case 'sheathing point load':
      return deckBasis(name, kit)
    case 'rail deflection':
      return {
        source: { document: 'Span over the deflection limit of the rail', standing: 'common practice, no source' },
        path: `${kit.rail.at}.deflection_limit`,
        fix: 'Put the mounts closer together, or choose a stiffer rail.',
      }
    default:
      return {
        source:
          kit.rail.product.allowable_moment_x_lb_in === undefined
            ? { document: 'Aluminum Design Manual', place: 'safety factors 1.65 and 1.95', standing: 'from memory' }
            : railSheet,
        path: kit.rail.at,
        fix: 'Put the mounts closer together, or choose a stronger rail.',
      }
  }
}

interface Basis {
  readonly source: Source
  readonly path: string
  readonly fix: string
}

function seamBasis(name: 'seam clip' | 'seam bending' | 'panel fixed point', kit: RailKit): Basis {
  const statics: Source = { document: 'Statics of a panel on its clips', standing: 'read' }
  const seams = 'structure.framing'
  if (name === 'seam clip') {
    return {
      source: WOOD_SCREW_WITHDRAWAL,
      path: seams,
      fix: 'Put the clamps closer together along the rail, or have the roofer show what clips and screws hold.',
    }
  }
  return name === 'seam bending'
    ? { source: statics, path: seams, fix: 'Put the clamps closer together along the rail, or beside the clips.' }
    : {
        source: statics,
        path: seams,
        fix: `Use clamps on more seams, or have the roofer strengthen the fixed points; mount ${kit.mount.id} brings all load along the slope into them.`,
      }
}

function hookBasis(name: 'hook neck' | 'hook on tile', kit: RailKit): Basis {
  const path = `${kit.mount.at}.hook`
  return name === 'hook neck'
    ? {
        source: { document: 'Statics, N e / Z; AISC 360 factor 1.67', standing: 'from memory' },
        path,
        fix: 'Put the hooks closer together, or use a stronger hook.',
      }
    : {
        source: { document: kit.mount.product.sheet ?? `sheet of mount ${kit.mount.id}`, standing: 'project file' },
        path,
        fix: 'Put the hooks closer together, grind the tile below for more gap, or use a stiffer hook.',
      }
}

function deckBasis(name: 'sheathing nails' | 'sheathing point load', kit: RailKit): Basis {
  return name === 'sheathing nails'
    ? {
        source: NAIL_WITHDRAWAL,
        path: 'structure.framing',
        fix: 'Put the mounts closer together along the rail, nail the sheathing to the rafters again from above, or use a mount that is screwed into the rafter.',
      }
    : {
        source: { document: 'Concentrated load of roof sheathing, 200 lb', standing: 'from memory' },
        path: kit.mount.at,
        fix: 'Put the mounts closer together, or use a mount that is screwed into the rafter.',
      }
}

/** Checks of one laid rail and its mounts. */
export function railPartChecks(rail: LaidRail, mountIds: readonly string[], kit: RailKit, wood: string): PartCheck[] {
  const mounts = rail.demand.mounts.flatMap((mount, index) =>
    mount.checks.map((check) => ({
      name: check.name,
      demand: check.demandLb,
      capacity: check.capacityLb,
      unit: 'lb',
      where: mountIds[index] ?? rail.loaded.line.id,
      ...basisOf(check.name, kit, wood),
    })),
  )
  const own = rail.demand.checks.map((check) => ({
    name: check.name,
    demand: check.demand,
    capacity: check.capacity,
    unit: check.unit,
    where: rail.loaded.line.id,
    ...basisOf(check.name, kit, wood),
  }))
  return [...mounts, ...own]
}

/** Checks of modules and clamps. */
export function modulePartChecks(checks: readonly ModuleCheck[], kit: RailKit): PartCheck[] {
  return checks.map((check) => {
    const clamp = check.name.includes('clamp')
    return {
      name: check.name,
      demand: check.demand,
      capacity: check.capacity,
      unit: check.unit,
      where: check.module,
      source: {
        document: clamp
          ? (kit.rail.product.clamp?.sheet ?? `clamp sheet of rail ${kit.rail.id}`)
          : 'Data sheet of the module',
        standing: 'project file' as const,
      },
      path: clamp ? `${kit.rail.at}.clamp` : 'equipment.modules',
      fix: clamp ? 'Choose a stronger clamp.' : 'Choose a stronger module, or move the array away from the roof edges.',
    }
  })
}
