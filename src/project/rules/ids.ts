import { didYouMean } from '../did-you-mean.js'
import type { Segments } from '../path.js'
import { listWords, showValue } from '../words.js'
import type { Rule } from './rule.js'

/** Ids that other parts refer to have to exist. */
export const checkIds: Rule = (project, report) => {
  const { equipment } = project
  const check = (
    segments: Segments,
    id: string | undefined,
    place: string,
    known: object | undefined,
    at: 'value' | 'key' = 'value',
  ) => {
    if (id === undefined || Object.hasOwn(known ?? {}, id)) return
    const ids = Object.keys(known ?? {})
    const near = didYouMean(id, ids)
    const there = ids.length === 0 ? '; nothing stands there' : `; known there: ${listWords(ids)}`
    report(segments, `no ${showValue(id)} under ${place}${near === '' ? there : near}`, at)
  }
  for (const [id, array] of Object.entries(project.arrays)) {
    check(['arrays', id, 'roof_plane'], array.roof_plane, 'roof_planes', project.roof_planes)
    check(['arrays', id, 'module'], array.module, 'equipment.modules', equipment.modules)
    check(['arrays', id, 'inverter'], array.inverter, 'equipment.inverters', equipment.inverters)
    check(['arrays', id, 'optimiser'], array.optimiser, 'equipment.optimisers', equipment.optimisers)
    array.strings?.forEach((string, i) => {
      const path = ['arrays', id, 'strings', i, 'inverter_unit']
      check(path, string.inverter_unit, 'inverter_units', project.inverter_units)
    })
  }
  for (const [id, unit] of Object.entries(project.inverter_units ?? {})) {
    check(['inverter_units', id, 'inverter'], unit.inverter, 'equipment.inverters', equipment.inverters)
  }
  for (const [id, obstacle] of Object.entries(project.site.obstacles ?? {})) {
    obstacle.arrays?.forEach((array, i) => {
      check(['site', 'obstacles', id, 'arrays', i], array, 'arrays', project.arrays)
    })
  }
  for (const [id, optimiser] of Object.entries(equipment.optimisers ?? {})) {
    optimiser.works_with?.forEach((inverter, i) => {
      check(['equipment', 'optimisers', id, 'works_with', i], inverter, 'equipment.inverters', equipment.inverters)
    })
  }
  const { snow } = project.structure ?? {}
  for (const [id, roof] of Object.entries(snow?.higher_roofs ?? {}))
    check(['structure', 'snow', 'higher_roofs', id, 'plane'], roof.plane, 'roof_planes', project.roof_planes)
  for (const [id, parapet] of Object.entries(snow?.parapets ?? {}))
    check(['structure', 'snow', 'parapets', id, 'plane'], parapet.plane, 'roof_planes', project.roof_planes)
  snow?.planes_above_lower_roofs?.forEach((plane, i) => {
    check(['structure', 'snow', 'planes_above_lower_roofs', i], plane, 'roof_planes', project.roof_planes)
  })
  // What is said of a plane that does not exist would be said of none.
  const ofPlanes: readonly (readonly [Segments, object | undefined])[] = [
    [['structure', 'framing'], project.structure?.framing],
    [['site_plan', 'roof_planes'], project.site_plan?.roof_planes],
  ]
  for (const [path, map] of ofPlanes)
    for (const id of Object.keys(map ?? {})) check([...path, id], id, 'roof_planes', project.roof_planes, 'key')
}
