import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { readFleetPart } from '../../src/project/index.js'
import { planOf } from '../../src/fleet/plan.js'
import { tableJobs } from '../../src/fleet/table-jobs.js'
import { workOut } from '../../src/fleet/work-out.js'
import type { FleetOutcome } from '../../src/fleet/types.js'
import { readPdfSeal } from '../../src/packet/index.js'
import { ROOT } from '../cli/binary.js'
import { pagesOf } from '../drawings/pdf-text.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-papers-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const fleet = join(ROOT, 'examples/fleet')
const template = readFileSync(join(fleet, 'template.yaml'), 'utf8')
  .replace('equipment.yaml', join(fleet, 'equipment.yaml'))
  .replace('letter-rafters.pdf', join(fleet, 'letter-rafters.pdf'))
  .replace(/^fleet:.*$/mu, '')
const PART = `
parties: { owner: { name: Owner (invented) }, installer: { name: Installer (invented) } }
fleet: { extra_columns: [customer.phone, customer.number, lead] }
`

/** Each row of a table through the papers that are asked for. */
async function papers(name: string, part: string, table: string, write: string[]): Promise<FleetOutcome[]> {
  const path = join(folder, `${name}.yaml`)
  const rows = join(folder, `${name}.csv`)
  writeFileSync(path, `${template}${part}`)
  writeFileSync(rows, table)
  const output = { folder: join(folder, name), write }
  const plan = planOf({ projects: [path], tool: 'gablewatt test', allowOutside: true, stages: ['yield'], output })
  const outcomes: FleetOutcome[] = []
  for (const job of tableJobs(path, rows, [], { extra: readFleetPart(path) })) outcomes.push(await workOut(job, plan))
  return outcomes
}
const textOf = async (...path: string[]): Promise<string> =>
  (await pagesOf(new Uint8Array(readFileSync(join(folder, ...path))))).map(({ text }) => text).join('\n')

describe('papers of a fleet', () => {
  test('a proposal for each row, in its language, with its own columns about the customer and no others', async () => {
    const told = await papers(
      'offers',
      PART,
      'id,title,customer.phone,customer.number,lead,proposal.language\n' +
        'a,House A (invented),555-0101 (invented),K-17,margin of 30 percent,\n' +
        'b,House B (invented),,K-18,,es\n',
      ['proposal', 'proposal-html'],
    )
    expect(told.map(({ status, files }) => [status, files])).toEqual([
      ['ok', ['a/proposal.pdf', 'a/proposal.html']],
      ['ok', ['b/proposal.pdf', 'b/proposal.html']],
    ])
    const [a, b] = [await textOf('offers', 'a', 'proposal.pdf'), await textOf('offers', 'b', 'proposal.pdf')]
    expect(a).toContain('Owner (invented), 555-0101 (invented)')
    expect(a).toMatch(/Customer: number\s+K-17/u)
    expect(b).toMatch(/Propuesta de energía solar[\s\S]*Cliente: number\s+K-18/u)
    const html = readFileSync(join(folder, 'offers', 'a', 'proposal.html'), 'utf8')
    expect(html).toContain('555-0101')
    for (const each of [a, html]) expect(each).not.toMatch(/margin of 30|DRAFT|lead/u)
    const sealed = readPdfSeal(readFileSync(join(folder, 'offers', 'a', 'proposal.pdf')))
    expect(sealed).toMatchObject({ isWhole: true, seal: { paper: 'proposal', draft: false, project: told[0]?.digest } })
  })

  test('an offer that breaks a rule is not written, and its line tells why; the other rows are', async () => {
    const part = `${PART}proposal: { payments: [{ due: At the end, usd: 15800 }] }\n`
    const [bad, good] = await papers('payments', part, 'id,finance.installed_cost_usd\nbad,15801\ngood,15800\n', [
      'proposal',
      'application',
    ])
    expect([bad?.status, bad?.files]).toEqual(['failed', ['bad/application.pdf']])
    expect(existsSync(join(folder, 'payments', 'bad', 'proposal.pdf'))).toBe(false)
    const ids = bad?.findings.filter(({ stage }) => stage === 'proposal').map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining(['proposal.payments-not-price', 'fleet.paper-not-written']))
    expect([good?.status, good?.files]).toEqual(['ok', ['good/proposal.pdf', 'good/application.pdf']])
  })

  test('what is made up makes each paper a draft; a house without a tariff has no offer and the other papers', async () => {
    const made = template.replace('basic_speed_mph: 110', 'basic_speed_mph: !made_up 110')
    expect(made).not.toBe(template)
    const path = join(folder, 'draft.yaml')
    writeFileSync(path, `${made}${PART}`)
    const write = ['proposal', 'application', 'handover']
    const output = { folder: join(folder, 'draft'), write }
    const plan = planOf({ projects: [path], allowOutside: true, stages: ['yield'], output })
    const told = await workOut({ index: 0, name: 'h', path, overrides: [] }, plan)
    expect(told.files).toEqual(write.map((name) => `h/${name}.pdf`))
    const drafts = told.findings.filter(({ id }) => id === 'fleet.paper-draft').map(({ stage }) => stage)
    expect(drafts).toEqual(write)
    const bare = join(folder, 'bare.yaml')
    writeFileSync(bare, template.slice(0, template.indexOf('tariff:')) + PART)
    const none = await workOut(
      { index: 0, name: 'bare', path: bare, overrides: [] },
      planOf({ projects: [bare], allowOutside: true, stages: ['yield'], output }),
    )
    expect([none.status, none.files]).toEqual(['failed', ['bare/application.pdf', 'bare/handover.pdf']])
    expect(none.findings.filter(({ severity }) => severity === 'error').map(({ id }) => id)).toEqual([
      'proposal.cannot-run',
    ])
  })
})
