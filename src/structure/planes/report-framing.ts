import { lumberGrades, lumberSource } from '../../tables/nds/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { type FramingSpec, LOWEST_USUAL, placeOf, type RafterInput, seatOf } from '../rafters/index.js'
import { IRC, type RaftersToReport } from './rafters-to-report.js'

/** What is taken of seat and notch where it is not stated, and a notch that is deeper than the code allows. */
export function reportSeat(id: string, { framing, plane }: RafterInput, worksheet: Worksheet): void {
  const path = `structure.framing.${id}`
  const seat = seatOf(framing, plane.tiltDeg)
  if (framing.seatIn === undefined) {
    worksheet.assume({
      path: `${path}.seat_in`,
      value: seat.seatIn,
      unit: 'in',
      why: 'the least bearing of a rafter on wood that the code allows',
      source: IRC('R802.6'),
    })
  }
  if (framing.notchIn === undefined && framing.seatIn === undefined) {
    worksheet.assume({
      path: `${path}.notch_in`,
      value: seat.notchIn,
      unit: 'in',
      why: 'the deepest notch at a support that the code allows, a quarter of the depth',
      source: { document: 'NDS 2018', place: '4.4.3', standing: 'from memory' },
    })
  }
  if (seat.notchIn <= seat.deepestIn + 1e-9) return
  worksheet.find({
    severity: 'warning',
    id: 'structure.rafter-notch',
    message: `plane '${id}': the notch of the rafters at the wall is ${seat.notchIn.toFixed(2)} in deep, over a quarter of their depth (${seat.deepestIn.toFixed(2)} in); it is checked with that depth`,
    where: `${path}.${framing.notchIn === undefined ? 'seat_in' : 'notch_in'}`,
    source: { document: 'NDS 2018', place: '4.4.3', standing: 'from memory' },
    fix: 'Measure seat and notch, and show them to a structural engineer.',
  })
}

/** Stated supports that do not count. */
export function reportSupports(id: string, { uncounted }: FramingSpec, worksheet: Worksheet): void {
  for (const { number, because } of uncounted) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.rafter-support-not-counted',
      message: `plane '${id}': the support above span ${number} does not count, and the spans beside it are taken as one (${because})`,
      where: `structure.framing.${id}.supports`,
      source: IRC('R802.4.5'),
      fix: 'State for each support its kind, size, braces and what they stand on, as you see them in the attic.',
    })
  }
}

export function reportSharing(
  id: string,
  { loadSharing: sharing, spacingIn }: FramingSpec,
  worksheet: Worksheet,
): void {
  if (sharing === undefined) return
  const least = spacingIn <= 16 ? 0.8 : 0.9
  const isTooLow = sharing.share < least - 1e-9
  worksheet.find({
    severity: isTooLow ? 'error' : 'warning',
    id: 'structure.rafter-load-sharing',
    message: `plane '${id}': ${isTooLow ? `a share of ${sharing.share} that stays in a loaded rafter is under ${least} at ${spacingIn} in spacing` : `the load of a mount is taken to stay in its rafter by ${sharing.share}, the rest in the two beside it, by ${sharing.source}; the repetitive factor is left out for it`}`,
    where: `structure.framing.${id}.load_sharing`,
    fix: 'Leave load_sharing out, or let the engineer behind it state it in a document of the packet.',
  })
}

/** Rafters whose wood is not known cannot be checked, which is no pass. */
export function reportNotChecked({ id, input, result, covered }: RaftersToReport, worksheet: Worksheet): void {
  const { framing } = input
  const { because, lowest } = result.woodMissing ?? { because: '', lowest: undefined }
  const isPair = because.includes('does not come in grade')
  const held = framing.species === undefined ? [] : lumberGrades(framing.species, framing.nominalSize)
  const low =
    lowest === undefined
      ? ''
      : `; if they were ${LOWEST_USUAL.species} ${LOWEST_USUAL.grade}, the lowest usual group, ${(100 * lowest.check.ratio).toFixed(0)} % would be used (${lowest.check.check} at ${placeOf(id, lowest.rafter.number, lowest.check.place)}, ${lowest.check.combination})`
  worksheet.find({
    severity: covered === undefined ? 'error' : 'note',
    id: 'structure.rafter-strength-not-checked',
    message: `plane '${id}': the strength of the rafters is not checked, as ${because}${isPair ? ` (grades held: ${held.join(', ')})` : ''}${low}${covered === undefined ? '' : `; covered by ${covered}`}`,
    where: `structure.framing.${id}.${because.includes('the species') || because.includes('held') ? 'species' : 'grade'}`,
    source: lumberSource(''),
    fix: 'Read species and grade from the stamp on a rafter in the attic and state both. Where no stamp is left, stating the lowest group is your choice; lumber of grade No. 3, Stud or Utility is weaker still.',
  })
}

/** Hips and valleys that jack rafters with mounts rest on: beams of their own, which are not checked here. */
export function reportHips({ id, result, covered }: RaftersToReport, worksheet: Worksheet): void {
  for (const kind of ['hip', 'valley'] as const) {
    const jacks = result.rafters.filter(({ spans }) => spans.lowKind === kind || spans.highKind === kind)
    if (jacks.length === 0) continue
    worksheet.find({
      severity: covered === undefined ? 'warning' : 'note',
      id: 'structure.hip-not-checked',
      message: `plane '${id}': ${jacks.length} rafter${jacks.length === 1 ? '' : 's'} with mounts rest${jacks.length === 1 ? 's' : ''} on a ${kind}, which carries them as a beam and is not checked here`,
      where: `structure.framing.${id}`,
      source: IRC('R802.4.3', 'from memory'),
      fix: `Have a structural engineer look at the ${kind} and what holds it at the ridge, or keep the mounts off the rafters that end at it.`,
    })
  }
}
