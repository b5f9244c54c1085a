import { describe, expect, it } from 'vitest'
import { climateSites, distanceKm, explainSiteFlag, findSite, listSites } from '../../src/climate/index.js'

describe('listSites', () => {
  it('lists all by state, then name', () => {
    const all = listSites({})
    expect(all).toHaveLength(climateSites().length)
    const keys = all.map((site) => `${site.state} ${site.name}`)
    expect(keys).toEqual(keys.toSorted())
    expect(all[0]!.distanceKm).toBeUndefined()
  })
  it('finds words of name, state and number, in any order and case', () => {
    expect(listSites({ text: 'reno nv' }).map((site) => site.wmo)).toEqual(['724880'])
    expect(
      listSites({ text: 'WA seatt' })
        .map((site) => site.wmo)
        .toSorted(),
    ).toEqual(['727930', '727935'])
    expect(listSites({ text: '727450' })).toHaveLength(1)
    expect(listSites({ text: 'nowhere at all' })).toEqual([])
  })
  it('puts the nearest first with a place', () => {
    const sites = listSites({ near: { latitudeDeg: 39.5, longitudeDeg: -119.8 } })
    expect(sites[0]!.wmo).toBe('724880')
    const distances = sites.map((site) => site.distanceKm!)
    expect(distances).toEqual(distances.toSorted((a, b) => a - b))
  })
})

describe('findSite', () => {
  it('finds the one site of a city', () => {
    expect(findSite('Duluth, MN')).toMatchObject({ site: { wmo: '727450' }, candidates: [] })
    expect(findSite('reno').site?.wmo).toBe('724880')
    expect(findSite('727450').site?.state).toBe('MN')
  })
  it('takes the international airport of a city with several sites, and names the others', () => {
    const found = findSite('Seattle, WA')
    expect(found.site?.wmo).toBe('727930')
    expect(found.candidates.map((site) => site.wmo)).toEqual(['727935'])
    expect(findSite('Washington, DC').site?.state).toBe('VA')
  })

  it('gives candidates when the name stands in several states', () => {
    const found = findSite('Springfield')
    expect(found.site).toBeUndefined()
    expect(new Set(found.candidates.map((site) => site.state)).size).toBeGreaterThan(1)
  })

  it('says what may have been meant', () => {
    expect(findSite('Duluht, MN').candidates[0]?.wmo).toBe('727450')
    expect(findSite('Qqqqqqqqqq, MN')).toEqual({ site: undefined, candidates: [] })
    expect(findSite('')).toEqual({ site: undefined, candidates: [] })
  })
})

describe('helpers', () => {
  it('measures a quarter of the Earth and across the date line', () => {
    expect(distanceKm(0, 0, 90, 0)).toBeCloseTo((Math.PI / 2) * 6371.0088, 6)
    expect(distanceKm(0, 179.5, 0, -179.5)).toBeCloseTo((Math.PI / 180) * 6371.0088, 6)
    expect(distanceKm(40, -100, 40, -100)).toBe(0)
  })
  it('explains every flag that occurs', () => {
    for (const flag of new Set(climateSites().flatMap((site) => site.flags))) {
      expect(explainSiteFlag(flag)).not.toContain('it carries the flag')
    }
  })
})
