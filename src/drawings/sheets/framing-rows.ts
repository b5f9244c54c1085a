import type { Project } from '../../project/index.js'
import { counted, feetInches, inches } from '../layout/index.js'

/** Framing and covering of each roof plane, as the owner states them: `Rafters, south`. */
export function framingRows({ structure }: Project): [string, string][] {
  return Object.entries(structure?.framing ?? {}).flatMap(([plane, framing]): [string, string][] => {
    const { kind, nominal_size: size, spacing_in: spacing, species, grade, span_ft: span } = framing
    const members = [
      [size, spacing === undefined ? undefined : `at ${inches(spacing)}`]
        .filter((each) => each !== undefined)
        .join(' '),
      species === undefined ? '' : [species, grade].filter((each) => each !== undefined).join(', '),
      span === undefined ? '' : `span ${feetInches(span)}`,
    ].filter((each) => each !== '')
    const { covering, covering_layers: layers } = framing
    const roofing = [covering?.replaceAll('_', ' ') ?? '', layers === undefined ? '' : counted(layers, 'layer')].filter(
      (each) => each !== '',
    )
    return [
      ...(members.length === 0
        ? []
        : [[`${kind === 'truss' ? 'Trusses' : 'Rafters'}, ${plane}`, members.join('; ')] as [string, string]]),
      ...(roofing.length === 0 ? [] : [[`Covering, ${plane}`, roofing.join(', ')] as [string, string]]),
    ]
  })
}
