import type { RoofProject } from '../project/index.js'
import { StageError } from '../worksheet/index.js'
import { feetOf, own, type Feet } from '../values/index.js'

/** Outer size of a module, ft. */
export interface ModuleSize {
  /** Long side, ft. */
  readonly longFt: Feet
  /** Short side, ft. */
  readonly shortFt: Feet
}

/**
 * Outer size of the modules of an array, from the equipment list.
 *
 * @param project The project.
 * @param arrayId Id under `arrays`.
 * @throws StageError when the module is not listed or has no dimensions.
 */
export function moduleSize(project: RoofProject, arrayId: string): ModuleSize {
  const array = own(project.arrays, arrayId)
  if (array === undefined) throw new StageError('arrays', `there is no array '${arrayId}'`, 'Add it under arrays.')
  const module = own(project.equipment.modules, array.module)
  if (module === undefined) {
    const known = Object.keys(project.equipment.modules ?? {}).join(', ')
    throw new StageError(
      `arrays.${arrayId}.module`,
      `module '${array.module}' is not under equipment.modules (${known === '' ? 'which is empty' : `known: ${known}`})`,
      'Add the module with its data sheet, or name one that is there.',
    )
  }
  const { length_in: lengthIn, width_in: widthIn } = module
  if (lengthIn === undefined || widthIn === undefined) {
    const missing = [lengthIn === undefined && 'length_in', widthIn === undefined && 'width_in'].filter(Boolean)
    throw new StageError(
      `equipment.modules.${array.module}`,
      `module '${array.module}' has no ${missing.join(' and no ')}, so its place on the roof cannot be worked out`,
      'State both outer dimensions of the frame, from the mechanical drawing on its data sheet.',
    )
  }
  return { longFt: feetOf(Math.max(lengthIn, widthIn)), shortFt: feetOf(Math.min(lengthIn, widthIn)) }
}

/** Size of a module on the plane: along the eave and up the slope, ft. */
export function sizeOnPlane(
  size: ModuleSize,
  orientation: 'portrait' | 'landscape',
): { readonly widthFt: Feet; readonly heightFt: Feet } {
  return orientation === 'portrait'
    ? { widthFt: size.shortFt, heightFt: size.longFt }
    : { widthFt: size.longFt, heightFt: size.shortFt }
}
