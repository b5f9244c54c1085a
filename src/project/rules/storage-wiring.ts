import type { Segments } from '../path.js'
import { listWords, showValue } from '../words.js'
import type { Rule } from './rule.js'

/** Panels and sources that the installation of the storage names have to exist, and a setting stands in one place only. */
export const checkStorageWiring: Rule = ({ storage, electrical }, report) => {
  const { installation, backup } = storage ?? {}
  if (installation === undefined) return
  const distribution = electrical?.distribution
  const panels = distribution === undefined ? ['panel'] : Object.keys(distribution.panels)
  const sources = Object.keys(distribution?.sources ?? {})
  const known = (path: Segments, id: string | undefined, ids: readonly string[], what: string): void => {
    if (id === undefined || ids.includes(id)) return
    report(path, `no ${showValue(id)} among the ${what}; known there: ${listWords(ids)}`)
  }
  const at: Segments = ['storage', 'installation']
  known([...at, 'at'], installation.at, panels, 'panels')
  known(['storage', 'backup', 'panel'], backup?.panel, panels, 'panels')
  if (backup?.kind === 'critical_loads_panel' && distribution === undefined)
    report(
      ['storage', 'backup', 'kind'],
      'a panel of critical loads is a panel of its own; state panels and feeders under electrical.distribution in place of electrical.panel',
    )
  const control = installation.power_control
  if (control !== undefined && electrical?.power_control !== undefined)
    report([...at, 'power_control'], 'electrical.power_control stands beside it; keep one of them', 'key')
  for (const [i, id] of (control?.sensors_at ?? []).entries())
    known([...at, 'power_control', 'sensors_at', i], id, panels, 'panels')
  for (const [i, id] of (control?.controls ?? []).entries())
    known([...at, 'power_control', 'controls', i], id, ['pv', ...sources], 'sources')
  if (sources.includes('storage'))
    report(
      ['electrical', 'distribution', 'sources', 'storage'],
      'storage means the storage of this project; give this source another id',
      'key',
    )
  for (const part of ['panels', 'feeders', 'taps'] as const)
    if (Object.hasOwn(distribution?.[part] ?? {}, 'storage'))
      report(
        ['electrical', 'distribution', part, 'storage'],
        'storage means the storage of this project; choose another id',
        'key',
      )
}
