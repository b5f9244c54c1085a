import { engine } from '../kernel/index.js'
import type { SkySteps } from '../sky-steps.js'
import { beamShade, type BeamShade } from './beam-shade.js'
import { domeOf, type DomeShares } from './dome.js'
import type { ModuleView } from './module-view.js'
import { storeView } from './shade-memory.js'

/** Shade on one module, per sun position and month. */
export interface ModuleShade extends BeamShade, DomeShares {
  /** Bypass sections of the module. */
  readonly sections: number
}

/**
 * Shade on one module for the whole year, beam, sky and ground.
 *
 * @param withDiffuse Whether the light of sky and ground is shaded too.
 */
export function moduleShade(steps: SkySteps, view: ModuleView, withDiffuse: boolean): ModuleShade {
  const machine = engine()
  const mark = machine.mark()
  const stored = storeView(machine, view)
  const beam = beamShade(machine, stored, view, steps)
  const diffuse = withDiffuse
    ? (domes.get(view) ?? domeOf(machine, stored, view))
    : { sky: new Float64Array(12).fill(1), ground: new Float64Array(12).fill(1) }
  if (withDiffuse) domes.set(view, diffuse)
  machine.release(mark)
  return { ...beam, ...diffuse, sections: view.sections }
}

/** What a module sees of sky and ground does not hang on where on earth the house stands. */
const domes = new WeakMap<ModuleView, DomeShares>()
