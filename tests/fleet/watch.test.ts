import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { dearestFirst, watchedHouses, watchHouse, worstOf, type WatchedOutcome } from '../../src/fleet/index.js'
import { watchHtml } from '../../src/papers/index.js'

const folder = mkdtempSync(join(tmpdir(), 'watch-'))
const table = (text: string): string => {
  const path = join(folder, 'houses.csv')
  writeFileSync(path, text)
  return path
}

describe('watch-fleet', () => {
  it('a table names houses, project files beside it, and readings in the folder', () => {
    expect(watchedHouses([table('id,project,production\na,x/a.yaml,\nb,b.yaml,own.csv\n')], 'readings')).toEqual([
      { name: 'a', projectPath: join(folder, 'x/a.yaml'), productionPath: join('readings', 'a.csv') },
      { name: 'b', projectPath: join(folder, 'b.yaml'), productionPath: join('readings', 'own.csv') },
    ])
  })
  it.each([
    ['id,file\na,a.yaml\n', /:1:1 {2}the table wants columns id and project/u],
    ['id,project\na,a.yaml\na,b.yaml\n', /:3:1 {2}id 'a' stands on line 2 too/u],
    ['id,project\n../a,a.yaml\n', /:2:1 {2}id '\.\.\/a' cannot be the name of a file/u],
    ['id,project\na,\n', /project of 'a' is empty/u],
  ])('a wrong table is refused: %j', (text, message) => {
    expect(() => watchedHouses([table(text)], 'readings')).toThrow(message)
  })
  it('a house whose files are not there is a line of its own, and makes the exit code 3', async () => {
    const outcome = await watchHouse(
      { name: 'gone', projectPath: join(folder, 'no.yaml'), productionPath: 'no.csv' },
      85,
    )
    expect(outcome.line).toMatchObject({ house: 'gone', status: 'unreadable', performance_pct: null, signs: [] })
    expect(outcome.line.messages.join()).toMatch(/no such file/u)
    expect(worstOf([outcome])).toBe(3)
  })
  it('houses that cannot be judged come first, then what costs most', () => {
    const of = (house: string, kwh: number | null, usd: number | null) =>
      ({ line: { house, lost_kwh_per_month: kwh, lost_usd_per_month: usd }, findings: [] }) as unknown as WatchedOutcome
    const sorted = dearestFirst([of('c', 9, 1), of('d', 900, null), of('b', 5, 2), of('a', null, null)])
    expect(sorted.map(({ line }) => line.house)).toEqual(['a', 'b', 'c', 'd'])
  })
  it('the page escapes every text and runs no script', () => {
    const evil = '<script>alert(1)</script>"&'
    const html = watchHtml({ title: evil, below: evil, columns: [evil], rows: [[evil]], details: [evil] })
    expect(html).not.toContain('<script')
    expect(html).toContain('&lt;script&gt;')
    expect(html).toMatch(/stop, do not climb, switch off/u)
  })
})
