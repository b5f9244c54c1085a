import { feetInches, inches, plainNumber } from '../layout/index.js'
import { own } from '../../values/index.js'
import { rafterDocuments } from '../sheets/rafter-documents.js'
import { allOn, missing, present, type Judge, type Needle } from './verdict.js'

/** Points of the attachment and of the structural calculation. */
export const STRUCTURE_POINTS: Readonly<Record<string, Judge>> = {
  'attachment-rail': (facts) => {
    const { equipment, structure } = facts.input.project
    const rail = own(equipment.rails, structure?.rail)
    const mount = own(equipment.mounts, structure?.mount)
    return allOn(facts, 'S', [
      ['rail', rail?.name ?? structure?.rail],
      ['mount', mount?.name ?? structure?.mount],
    ])
  },
  'attachment-fastener': (facts) => {
    const { equipment, structure } = facts.input.project
    const mount = own(equipment.mounts, structure?.mount)
    if (mount === undefined) return missing('mount: not stated')
    const flashing: Needle = ['flashing', /FLASH/u]
    if (mount.kind === 'standing_seam_clamp') return allOn(facts, 'S', [['clamp', /SETSCREW/u]])
    if (mount.kind === 'deck') return allOn(facts, 'S', [['screws', /SCREW/u], flashing])
    if (mount.structural_screw !== undefined)
      return allOn(facts, 'S', [['structural screw', mount.structural_screw.name ?? 'structural screw'], flashing])
    const { lag } = mount
    const thread = facts.input.mounts?.values.lag?.thread_in_rafter_in
    return allOn(facts, 'S', [
      ['size of the lag screw', lag === undefined ? undefined : `${lag.size} x ${inches(lag.length_in)}`],
      ['thread in the rafter', thread === undefined ? undefined : inches(thread)],
      flashing,
    ])
  },
  'attachment-framing': (facts) => {
    const framing = Object.entries(facts.input.project.structure?.framing ?? {})
    if (framing.length === 0) return missing('framing: not stated')
    return allOn(
      facts,
      'S',
      framing.flatMap(
        ([plane, { kind, nominal_size: size, species, spacing_in: spacing, span_ft: span }]): Needle[] => [
          [`size on ${plane}`, size],
          [`spacing on ${plane}`, spacing === undefined ? undefined : inches(spacing)],
          ...(kind === 'truss'
            ? []
            : ([
                [`species on ${plane}`, species],
                [`span on ${plane}`, span === undefined ? undefined : `span ${feetInches(span)}`],
              ] as const)),
        ],
      ),
    )
  },
  'attachment-spacing': (facts) => {
    if (facts.input.mounts === undefined) return missing('mounts: the structural part of the project is not complete')
    return allOn(facts, 'SA', [
      ['rails with their length', /RAILS AND MOUNTS, ROOF PLANE|\bRAIL ROW\b/u],
      ['free ends', 'Free ends'],
      ['places of the mounts', /MOUNTS, FROM THE LEFT/u],
    ])
  },
  'dead-load': (facts) => {
    const psf = facts.input.mounts?.values.added_dead_load_psf
    return allOn(facts, 'GS', [['weight', psf === undefined ? undefined : `${plainNumber(psf)} psf`]])
  },
  'structural-calculation': (facts) => {
    const drawn = allOn(facts, 'S', [['structural calculation', 'Structural calculation']])
    if (drawn.state !== 'present') return drawn
    const failing = facts.input.findings.filter(
      ({ severity, where, id }) => severity === 'error' && (where.startsWith('structure') || id.startsWith('mounts.')),
    )
    if (failing.length > 0) return missing(`letter of an engineer: ${failing.map(({ message }) => message).join('; ')}`)
    const letters = rafterDocuments(facts.input)
    const unbound = letters.filter((text) => text.includes('not appended'))
    if (unbound.length > 0) return missing(unbound.join('; '))
    return letters.length === 0 ? drawn : present(drawn.sheets, `structural calculation; ${letters.join('; ')}`)
  },
}
