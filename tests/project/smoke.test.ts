import { expect, test } from 'vitest'
import { failureOf, loadText, STARTER, starterWith } from './support.js'
test('x', () => {
  loadText(STARTER)
  const bad = STARTER.replace('azimuth_deg', 'azimth_deg').replace('pmax_w: 410', "pmax_w: '410'").replace('climate: nearby', 'climate: {station: 724940}').replace('modules: 12', 'modules: -1').replace('standoff_in: 4','standoff_in:').replace('max_dc_power_w: 540','max_dc_power_w: .inf\n      <<: {a: 1}').replace('shape: rectangle','shape: rectangel')
  console.log(failureOf(() => loadText(bad, { overrides: ['site.climat=3', 'site.latitude_deg=95', 'arrays.north.modules=3', 'site.horizon.0=1','codes.electrical=[NEC 2020, NEC 2023]'] })).format({ frames: true }))
})
