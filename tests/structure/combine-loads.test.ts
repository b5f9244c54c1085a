import { describe, expect, test } from 'vitest'
import { combinedLoads } from '../../src/structure/loads/combine-loads.js'
import { LOAD_COMBINATIONS } from '../../src/tables/asce7/index.js'

// NDS 2018 table 2.3.2 (secondary; 1.15 also by what the span tables of the residential code imply): the shortest load of a combination
// decides. A load of nought is none.
const DEAD = 0.9
const SNOW = 1.15
const WIND = 1.6

describe('load duration of a combination', () => {
  const rows = LOAD_COMBINATIONS['ASCE 7-16']
  const durations = (snowPsf: number) =>
    combinedLoads('ASCE 7-16', { deadPsf: 3, snowPsf, tiltDeg: 20 }, false).map((each) => each.loadDuration)

  test('with snow', () => {
    expect(durations(20)).toEqual(rows.map((row) => (row.wind > 0 ? WIND : row.snow > 0 ? SNOW : DEAD)))
    expect(durations(20)).toContain(SNOW)
  })

  test('without snow', () => {
    expect(durations(0)).toEqual(rows.map((row) => (row.wind > 0 ? WIND : DEAD)))
    expect(durations(0)).toContain(DEAD)
  })
})
