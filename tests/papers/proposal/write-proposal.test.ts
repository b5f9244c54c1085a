import { describe, expect, test } from 'vitest'
import { makeContext } from '../../../src/cli/context.js'
import { configure, run } from '../../../src/cli/commands/write-proposal.js'
import { renderText } from '../../../src/cli/output/text.js'
import { csvTable } from '../../../src/report/index.js'
import type { ProposalValues } from '../../../src/papers/index.js'
import { Command } from 'commander'

const HARBOR = new URL('../../../examples/harbor-point.yaml', import.meta.url).pathname
const LOAN = new URL('../../../examples/fleet/hartford-loan.yaml', import.meta.url).pathname
const tool = 'gablewatt test'

async function ask(path: string, ...args: string[]) {
  const command = new Command().exitOverride()
  configure(command)
  command.parse([path, ...args], { from: 'user' })
  const options = command.opts()
  const context = makeContext([path], tool, { color: false, ...options, set: (options['set'] ?? []) as string[] })
  return await run(context, options as never)
}

describe('write-proposal', () => {
  test('hands back the PDF with the page beside it, and tells what is missing', async () => {
    const outcome = await ask(LOAN, '--html', 'offer.html', '--lang', 'es', '--paper', 'a4')
    if (!('document' in outcome)) throw new Error('a document was expected')
    expect(Buffer.from(outcome.document as Uint8Array).toString('latin1', 0, 8)).toBe('%PDF-1.7')
    expect(outcome.files?.map(({ path }) => path)).toEqual(['offer.html'])
    expect(String(outcome.files?.[0]?.content)).toContain('<html lang="es-US">')
    expect(outcome.notes?.join('\n')).toMatch(
      /no seller[\s\S]*disclosures that the rules ask for are missing: .*finance|cancellation/u,
    )
  })

  test('--check prints the offer and every disclosure, within 80 columns', async () => {
    const outcome = await ask(HARBOR, '--check', '--set', 'proposal.rule_set=california')
    if (!('report' in outcome)) throw new Error('a report was expected')
    const { report } = outcome
    expect(report.stage).toBe('proposal')
    const around = { tool, project: undefined, locate: () => undefined, showWork: false }
    const text = await renderText(report, around, { width: 80, paint: (_, each) => each, lines: false })
    expect(text).toContain('2026-03-17')
    expect(text).toContain('MISSING')
    expect(Math.max(...text.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(80)
    expect(csvTable(report)?.rows.length).toBe((report.result.values as ProposalValues).disclosures.length)
  })

  test('--versus puts another way beside it, with the figures of its own payback', async () => {
    const outcome = await ask(HARBOR, '--check', '--versus', 'finance.installed_cost_usd=15000')
    if (!('report' in outcome)) throw new Error('a report was expected')
    const { options, cost } = outcome.report.result.values as ProposalValues
    expect(options.map(({ cost_usd }) => cost_usd)).toEqual([cost.net_usd, 15000])
    expect(options[1]?.name).toBe('finance.installed_cost_usd=15000')
  })

  test.each([
    [
      ['--set', 'proposal.payments.0.usd=1'],
      /not written, because one check fails:\n {2}- proposal\.payments: .*15001\.00 USD.*16000\.00 USD\n {4}fix: /u,
    ],
    [['--logo', 'no-such.svg'], /no-such\.svg/u],
    [['--markdown'], /--markdown goes with --check/u],
    [['--check', '--html', 'a.html'], /--html goes with the drawn offer/u],
    [['--set', 'proposal.signing_date=2026-02-30'], /proposal\.signing_date/u],
    [['--set', 'proposal.valid_until=2020-01-01'], /is before/u],
    [['--set', 'proposal.terms_file=x.txt'], /terms_file/u],
  ])('%j is refused with a message', async (args, message) => {
    const error: unknown = await ask(HARBOR, ...args).then(
      () => undefined,
      (thrown: unknown) => thrown,
    )
    expect(error).toBeInstanceOf(Error)
    const { problems = [] } = error as { problems?: readonly { path: string; message: string }[] }
    const told = [(error as Error).message, ...problems.map(({ path, message: each }) => `${path}: ${each}`)].join('\n')
    expect(told).toMatch(message)
  })
})
