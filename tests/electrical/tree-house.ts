import type { Electrical, Project } from '../../src/project/index.js'
import { microProject } from './demo.js'

type Distribution = NonNullable<Electrical['distribution']>

/** A 100 A house with an older system of 12 A and a garage panel on a 60 A feeder, which takes the new one. */
export const garageTree: Distribution = {
  panels: {
    main: {
      bus_a: 100,
      main_a: 100,
      main_position: 'end',
      breakers_a: [15, 15, 20, 20],
      spaces_free: 2,
      terminal_temperature_c: 75,
      interrupting_rating_a: 10000,
    },
    garage: {
      bus_a: 125,
      main_position: 'end',
      breakers_a: [20, 20],
      spaces_free: 6,
      terminal_temperature_c: 75,
      interrupting_rating_a: 10000,
      load_a: 30,
    },
  },
  feeders: {
    to_garage: {
      from: 'main',
      to: 'garage',
      breaker_a: 60,
      breaker_position: 'opposite_end',
      material: 'copper',
      size_awg: '6',
      insulation: 'THWN-2',
      length_ft: 40,
      method: 'EMT',
    },
  },
  sources: { old_pv: { kind: 'pv', on: 'main', current_a: 12, breaker_a: 15, breaker_position: 'opposite_end' } },
}

/** An invented house with a tree in place of the only panel. */
export function treeProject(
  distribution: Distribution = garageTree,
  change: Partial<Electrical> = {},
  modules = 24,
): Project {
  const project = microProject(
    {
      service: {
        rating_a: 100,
        conductor_size: '4',
        conductor_material: 'copper',
        conductor_insulation: 'THWN-2',
        available_fault_current_a: 9000,
      },
      connection: { kind: 'load_side_breaker', at: 'garage', breaker_position: 'opposite_end' },
      distribution,
      ...change,
    },
    modules,
  )
  const { panel: _, ...electrical } = project.electrical ?? {}
  return { ...project, electrical }
}
