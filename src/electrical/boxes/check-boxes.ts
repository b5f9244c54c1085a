import { boxVolumes } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import type { BoxValues, Job } from '../system/index.js'
import type { SizedSegment } from '../segments/index.js'
import { heldIn, type Held } from './box-contents.js'
import { boxFill, smallestBox, type BoxFill } from './box-fill.js'
import { checkBoxKeys, idleKeys, type Judged } from './box-keys.js'
import { boxSites, type BoxSite } from './box-sites.js'
import { checkConduitBody } from './check-conduit-body.js'
import { checkPull } from './check-pull.js'

/**
 * Every stated box: the volume that its contents need, and its length where conductors are 4 AWG or larger.
 *
 * @throws StageError for keys that contradict each other, and for a box where no conductors go on.
 * @source NEC 314.16, 314.28
 */
export function checkBoxes(job: Job, sized: readonly SizedSegment[]): BoxValues[] {
  return boxSites(job, sized).map((site) => {
    checkBoxKeys(site.box, site.where)
    const held = heldIn(site)
    const large = held.large.length > 0
    const fill = boxFill(held.contents, job.edition)
    const volumeIn3 = volumeOf(site)
    const counts = countsByVolume(site, held)
    const byVolume = counts ? checkVolume(job, site, fill, volumeIn3) : true
    const body = site.box.kind === 'conduit_body' ? checkConduitBody(job, site, held) : true
    const pull = large ? checkPull(job, site, held) : undefined
    tellIdle(job, site, { large, spliced: held.spliced, byVolume: counts, volumeKnown: volumeIn3 !== undefined })
    const verdicts = [byVolume, body, pull?.passes ?? (large ? undefined : true)]
    return {
      id: site.id,
      run: site.run,
      after_segment: site.after ?? null,
      kind: site.box.kind,
      standard_box: site.box.standard_box ?? null,
      spliced: held.spliced,
      volume_in3: volumeIn3 ?? null,
      required_in3: counts ? fill.requiredIn3 : null,
      count: fill.count,
      length_in: site.box.length_in ?? null,
      required_length_in: pull?.requiredIn ?? null,
      complies: verdicts.includes(false) ? false : verdicts.includes(undefined) ? null : true,
      section: sectionOfBox(job, site, large).place ?? '',
    }
  })
}

function sectionOfBox(job: Job, { box }: BoxSite, large: boolean): Source {
  return job.nec(large ? 'pullBox' : box.kind === 'conduit_body' ? 'conduitBody' : 'boxFill')
}

/** Conduit bodies without splice have a rule of their own. */
const countsByVolume = ({ box }: BoxSite, { contents, spliced }: Held): boolean =>
  contents.conductors.length > 0 && (box.kind === 'box' || spliced)

function volumeOf({ box }: BoxSite): number | undefined {
  const own = box.volume_in3 ?? boxVolumes.find(({ id }) => id === box.standard_box)?.volumeIn3
  return own === undefined ? undefined : own + (box.extension_in3 ?? 0)
}

/** @returns undefined when it could not be checked. */
function checkVolume(job: Job, site: BoxSite, fill: BoxFill, volumeIn3: number | undefined): boolean | undefined {
  const { box, where, id } = site
  const needs = `${id} needs ${fill.requiredIn3.toFixed(2)} in3 (${fill.rows.map(({ what, volumeIn3: each }) => `${what} ${each.toFixed(2)}`).join(', ')})`
  const metal = smallestBox(fill.requiredIn3)
  const instead =
    metal === undefined ? 'Use a larger marked box' : `Use a metal box ${metal}, or another that is marked large enough`
  if (volumeIn3 === undefined || site.unknown !== undefined) {
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.box-not-checked',
      message:
        site.unknown === undefined
          ? `${needs}; the volume of the box is not stated, so it was not checked`
          : `${needs}, and besides ${site.unknown}; it was not checked`,
      where,
      source: job.nec('boxFill'),
      fix:
        site.unknown === undefined ? `State standard_box or volume_in3. ${instead}` : 'State what else enters the box',
    })
    recordVolume(job, site, fill, volumeIn3)
    return undefined
  }
  const passes = fill.requiredIn3 <= volumeIn3 * (1 + 1e-9)
  recordVolume(job, site, fill, volumeIn3)
  if (!passes)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.box-fill',
      message: `${needs}, ${box.standard_box ?? 'the box'} has ${volumeIn3} in3`,
      where,
      source: job.nec('boxFill'),
      fix: instead,
    })
  return passes
}

function recordVolume(job: Job, { id, where, box }: BoxSite, fill: BoxFill, volumeIn3: number | undefined): void {
  job.worksheet.note({
    id: `wire.${id}.fill`,
    says: `Volume for what is in the ${box.kind.replace('_', ' ')}: conductors that end or are spliced one by one, that pass whole once`,
    formula: 'sum of count x volume for a conductor of that size',
    inputs: fill.rows.map(({ what, count, size, volumeIn3: each }) => ({
      symbol: what,
      value: each,
      unit: 'in3',
      from: `${count} x ${size} AWG`,
    })),
    result: { symbol: 'required', value: fill.requiredIn3, unit: 'in3' },
    ...(volumeIn3 === undefined
      ? {}
      : { check: { relation: '<=', limit: volumeIn3, pass: fill.requiredIn3 <= volumeIn3 * (1 + 1e-9) } as const }),
    source: {
      ...job.nec('boxFill'),
      ...(box.standard_box === undefined
        ? {}
        : { place: `${job.nec('boxFill').place ?? ''}, ${job.nec('boxVolume').place ?? ''}` }),
    },
  })
  if (box.clamps === undefined && box.kind === 'box')
    job.worksheet.assume({
      path: `${where}.clamps`,
      value: 'internal',
      unit: '',
      why: 'Clamps that are not stated count as internal, which needs more volume',
      source: job.nec('boxFill'),
    })
}

function tellIdle(job: Job, { box, where, id }: BoxSite, judged: Judged): void {
  const idle = idleKeys(box, judged)
  if (idle.length === 0) return
  job.worksheet.find({
    severity: 'note',
    id: 'wire.box-facts-unused',
    message: `${idle.join(', ')} of ${id} changed nothing: ${judged.large ? 'a conductor in it is 4 AWG or larger' : 'no conductor in it is 4 AWG or larger'}, ${judged.spliced ? 'conductors are spliced in it' : 'conductors pass it whole'}`,
    where,
    source: job.nec(judged.large ? 'pullBox' : 'boxFill'),
    fix: 'Delete them',
  })
}
