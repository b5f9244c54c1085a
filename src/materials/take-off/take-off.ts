import type { CutListEntry, CutSummary } from './cut-record.js'
import { totalNeeds, type Need, type TotalNeed } from './need.js'
import { takeClamps } from './take-clamps.js'
import { takeConnection } from './take-connection.js'
import { takeDcDevices } from './take-dc-devices.js'
import { takeEquipment } from './take-equipment.js'
import { takeFeeders } from './take-feeders.js'
import { takeGrounding } from './take-grounding.js'
import { takeLabels } from './take-labels.js'
import { takeMounts } from './take-mounts.js'
import type { TakeOffJob } from './take-off-job.js'
import { takeRaceways } from './take-raceways.js'
import { takeRails } from './take-rails.js'
import { takeStorage } from './take-storage.js'
import { takeTools } from './take-tools.js'
import { takeTrunks } from './take-trunks.js'
import { takeWire } from './take-wire.js'

export interface TakeOff {
  readonly needs: readonly TotalNeed[]
  readonly cutList: readonly CutListEntry[]
  readonly cutSummaries: readonly CutSummary[]
  /** Parts of the job that could not be counted. */
  readonly missing: readonly string[]
}

/** Quantities of everything that the design asks for, each with its reason. */
export function takeOff(job: TakeOffJob): TakeOff {
  const { mounts, wiring, labels } = job
  const missing: string[] = []
  const needs: Need[] = takeEquipment(job)
  const cuts = []
  if (mounts === undefined) missing.push(tellMissing(job, 'structure', 'rails, clamps, mounts, flashings and screws'))
  else {
    const rails = takeRails(job, mounts.rails)
    needs.push(...rails.needs, ...takeClamps(job, mounts.rails), ...takeMounts(job, mounts))
    cuts.push(rails.cuts)
  }
  if (wiring === undefined)
    missing.push(tellMissing(job, 'electrical', 'wire, raceways, fittings, breakers and labels'))
  else {
    const raceways = takeRaceways(job, wiring)
    needs.push(
      ...takeTrunks(job, wiring),
      ...takeGrounding(job, wiring, mounts?.rails ?? []),
      ...takeWire(job, wiring),
      ...raceways.needs,
      ...takeConnection(job, wiring),
      ...takeFeeders(job, wiring),
      ...takeStorage(job, wiring),
      ...takeDcDevices(job, wiring),
      ...takeLabels(labels ?? [], wiring.edition),
    )
    cuts.push(raceways.cuts)
    if (labels === undefined) missing.push(tellMissing(job, 'labels', 'labels'))
  }
  needs.push(...extraItems(job), ...takeTools(job))
  return {
    needs: totalNeeds(needs, job.materials.spares_pct ?? {}),
    cutList: cuts.flatMap((each) => each.entries),
    cutSummaries: cuts.flatMap((each) => each.summaries),
    missing,
  }
}

function tellMissing(job: TakeOffJob, part: string, what: string): string {
  job.worksheet.find({
    severity: 'warning',
    id: 'materials.part-missing',
    message: `${what} are not counted, because the part ${part} is missing; every total is only a lower bound`,
    where: part === 'labels' ? 'electrical' : part,
    fix: part === 'labels' ? 'Hand the labels of the packet to the bill of materials' : `Fill in the part ${part}`,
  })
  return part
}

function extraItems(job: TakeOffJob): Need[] {
  return Object.entries(job.materials.extra_items ?? {}).map(([id, extra]) => ({
    item: id,
    name: extra.name ?? id,
    group: 'extra',
    unit: extra.unit ?? 'each',
    quantity: extra.quantity,
    why: `${extra.why} (materials.extra_items.${id})`,
  }))
}
