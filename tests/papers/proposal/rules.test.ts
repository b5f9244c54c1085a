import { describe, expect, test } from 'vitest'
import { DISCLOSURE_JUDGES } from '../../../src/papers/proposal/disclosures.js'
import { DISCLOSURES, RULE_SETS, type RuleSet } from '../../../src/tables/papers/index.js'
import { loadSample, prepare } from './offers.js'
import { readOffer } from './read-offer.js'

const harbor = (...overrides: readonly string[]) =>
  loadSample('harbor-point', '', ['finance.uncertainty.samples=100', ...overrides])
const missingIds = async (loaded: ReturnType<typeof harbor>): Promise<string[]> =>
  (await prepare(loaded)).result.values.disclosures.filter(({ state }) => state === 'missing').map(({ id }) => id)
const ids = async (...overrides: readonly string[]): Promise<string[]> =>
  (await prepare(harbor(...overrides))).result.findings.map(({ id }) => id).filter((id) => id.startsWith('proposal.'))

describe('rules of states', () => {
  // Source: NRS 598.9813 16 pt for the top block (read); California BPC 7169 boldface 16 pt (read); Utah 12 pt (read).
  test.each([
    ['nevada', 16, 10],
    ['california', 16, 10],
    ['utah', 12, 12],
    ['idaho', 12, 10],
  ] as const)('%s: the right to cancel has %d pt, and nothing less than %d pt', async (state, cancelPt, restPt) => {
    const offer = await prepare(harbor(`proposal.rule_set=${state}`, 'finance.years=20'))
    const { texts, pages, words } = await readOffer(await offer.pdf())
    const from = texts.findIndex(({ text }) => text.trim() === 'Your right to cancel')
    const to = texts.findIndex(({ text }) => text.trim() === 'In short')
    expect(texts[from]?.page).toBe(1)
    expect(to).toBeGreaterThan(from + 3)
    for (const { sizePt } of texts.slice(from, to)) expect(sizePt).toBeCloseTo(cancelPt, 3)
    for (const { sizePt } of texts) expect(sizePt).toBeGreaterThan(restPt - 0.001)
    expect(words).toContain('the last day to cancel is Tuesday, March 17, 2026')
    expect(pages).toBeLessThanOrEqual(restPt === 12 ? 7 : 5)
  })

  // Source: Utah 13-52-202 (read): an assumed rise not above 3 % a year, savings over 20 years at the most.
  test('Utah: a rise above 3 % in the dollars of the day is an error, and no line goes above it', async () => {
    const utah = 'proposal.rule_set=utah'
    const { result } = await prepare(harbor(utah, 'finance.electricity_escalation_pct=0', 'finance.years=25'))
    expect(result.values.savings.years).toBe(20)
    expect(Math.max(...result.values.savings.lines.map(({ rise_pct }) => rise_pct ?? 99))).toBeLessThanOrEqual(3)
    expect(result.findings.map(({ id }) => id)).toContain('proposal.savings-shortened')
    const most = 100 * (1.03 / 1.022 - 1)
    expect(await ids(utah, `finance.electricity_escalation_pct=${(most - 0.001).toFixed(4)}`)).not.toContain(
      'proposal.rise-above-cap',
    )
    expect(await ids(utah, `finance.electricity_escalation_pct=${(most + 0.001).toFixed(4)}`)).toContain(
      'proposal.rise-above-cap',
    )
    expect(await ids(`finance.electricity_escalation_pct=2`)).not.toContain('proposal.rise-above-cap')
  })

  test('payments must add up to the price to the cent', async () => {
    expect(await ids()).not.toContain('proposal.payments-not-price')
    expect(await ids('proposal.payments.0.usd=999.99')).toContain('proposal.payments-not-price')
  })

  // Source: California BPC 7159.5 (secondary): the lesser of 1,000 USD and 10 % of the price.
  test('California: the deposit has a limit', async () => {
    const state = 'proposal.rule_set=california'
    expect(await ids(state)).not.toContain('proposal.deposit-above-limit')
    expect(await ids(state, 'proposal.payments.0.usd=1000.01')).toContain('proposal.deposit-above-limit')
    const small = ['finance.installed_cost_usd=9000', 'proposal.payments.1.usd=4000']
    expect(await ids(state, ...small)).toContain('proposal.deposit-above-limit')
    expect(await ids('proposal.payments.0.usd=5000')).not.toContain('proposal.deposit-above-limit')
  })

  // Source: AB 1327 of 2025 and consumer pages (secondary): 3 days, 5 from 65 on, 7 after a disaster; 16 CFR 429 from 25 USD in the home.
  test.each([
    ['california', [], 3, '2026-03-17'],
    ['california', ['proposal.customer_65_or_older=true'], 5, '2026-03-19'],
    ['california', ['proposal.disaster_repair=true'], 7, '2026-03-21'],
    ['other', [], 3, '2026-03-17'],
    ['other', ['proposal.sold_at=place_of_business'], undefined, undefined],
    ['nevada', ['proposal.sold_at=place_of_business'], 3, '2026-03-17'],
    ['other', ['proposal.sold_at=temporary_place'], 3, '2026-03-17'],
  ] as const)('%s %j: %s business days', async (state, more, days, last) => {
    const { result } = await prepare(harbor(`proposal.rule_set=${state}`, ...more))
    expect(result.values.cancellation?.business_days).toBe(days)
    expect(result.values.cancellation?.last_day ?? undefined).toBe(last)
  })

  test("words that promise too much are found in the installer's own texts", async () => {
    expect(await ids('proposal.next_steps.0=You get free power')).toContain('proposal.word-to-avoid')
    expect(await ids('proposal.terms=Programa del gobierno')).toContain('proposal.word-to-avoid')
    expect(await ids()).not.toContain('proposal.word-to-avoid')
  })
})

describe('disclosures', () => {
  test('every point has a judge, and every judge a point', () => {
    expect(Object.keys(DISCLOSURE_JUDGES).toSorted()).toEqual(DISCLOSURES.map(({ id }) => id).toSorted())
  })

  test('Harbor Point tells all but what its state would add', async () => {
    const { values } = (await prepare(harbor())).result
    expect(values.disclosures.filter(({ state }) => state === 'missing').map(({ id }) => id)).toEqual(['utility-guide'])
    const { words } = await readOffer(await (await prepare(harbor())).pdf())
    for (const { stands_under: under } of values.disclosures) if (under !== null) expect(words).toContain(under)
  })

  /** What is taken out of the file, and the points that must be missing then. */
  const TAKEN: readonly (readonly [key: string, ...ids: string[]])[] = [
    ['parties.installer.license', 'seller'],
    ['parties.owner', 'customer'],
    ['proposal.number', 'date'],
    ['proposal.signing_date', 'cancellation'],
    ['proposal.cancel_email', 'cancel-address'],
    ['proposal.complaints', 'complaints'],
    ['proposal.maintenance', 'maintenance'],
    ['proposal.payments', 'payments'],
    ['proposal.warranties.roof', 'warranties'],
    ['proposal.timeline', 'timeline'],
    ['proposal.interconnection_by', 'interconnection'],
    ['proposal.export_rule', 'export-rule'],
    ['proposal.escalation_basis', 'rise-basis'],
    ['proposal.certificates_owner', 'certificates'],
    ['proposal.lien', 'lien'],
    ['proposal.roof', 'roof'],
    ['proposal.insurance_and_taxes', 'insurance'],
    ['proposal.terms', 'terms'],
    ['tariff.source', 'tariff'],
    ['finance.replacements', 'replacement'],
    ['parties.installer.address', 'seller'],
    ['parties.installer.phone', 'seller'],
    ['parties.installer.email', 'seller'],
    ['parties.owner.name', 'customer'],
    ['document.date', 'date'],
    ['proposal.valid_until', 'date'],
    ['proposal.help_phone', 'cancel-address'],
    ['proposal.warranties.modules', 'warranties'],
    ['proposal.warranties.power', 'warranties'],
    ['proposal.warranties.inverter', 'warranties'],
    ['proposal.warranties.work', 'warranties'],
    ['tariff.checked', 'tariff'],
  ]
  test.each(TAKEN)('without %s the point %s is missing', async (key, id) => {
    const loaded = harbor()
    const project = structuredClone(loaded.project)
    const path = key.split('.')
    const last = path.pop() ?? ''
    let at = project as unknown as Record<string, unknown>
    for (const each of path) at = at[each] as Record<string, unknown>
    expect(at[last]).toBeDefined()
    delete at[last]
    const { values, findings } = (await prepare({ ...loaded, project })).result
    const missing = values.disclosures.filter(({ state }) => state === 'missing').map((each) => each.id)
    expect(missing).toEqual(expect.arrayContaining([id, 'utility-guide']))
    expect(missing.length).toBe(2)
    expect(findings.filter((each) => each.id === 'proposal.disclosure-missing').length).toBe(2)
  })

  test.each(['start', 'completion', 'permission_to_operate'])(
    'without the step %s the timeline is missing',
    async (kind) => {
      const loaded = harbor()
      const project = structuredClone(loaded.project)
      const stated = project.proposal as { timeline?: unknown[] }
      stated.timeline = project.proposal?.timeline?.filter((step) => step.kind !== kind) ?? []
      expect(stated.timeline.length).toBe((loaded.project.proposal?.timeline?.length ?? 0) - 1)
      expect(await missingIds({ ...loaded, project })).toContain('timeline')
    },
  )

  test('a point that a state alone asks for does not apply elsewhere, and is missing where it is not kept', async () => {
    const stateOf = async (id: string, ...overrides: readonly string[]) =>
      (await prepare(harbor(...overrides))).result.values.disclosures.find((each) => each.id === id)?.state
    expect(await stateOf('rise-cap')).toBe('does_not_apply')
    expect(await stateOf('rise-cap', 'proposal.rule_set=utah')).toBe('there')
    expect(await stateOf('rise-cap', 'proposal.rule_set=utah', 'finance.electricity_escalation_pct=2')).toBe('missing')
    expect(await stateOf('deposit')).toBe('does_not_apply')
    expect(await stateOf('deposit', 'proposal.rule_set=california')).toBe('there')
    expect(await stateOf('deposit', 'proposal.rule_set=california', 'proposal.payments.0.usd=1001')).toBe('missing')
    expect(await stateOf('finance')).toBe('does_not_apply')
  })

  test.each(['leased', 'power_purchase'])('a system that is %s is no purchase', async (ownership) => {
    const { result } = await prepare(harbor(`utility_application.ownership=${ownership}`))
    expect(result.findings.find(({ id }) => id === 'proposal.not-a-purchase')).toMatchObject({
      severity: 'error',
      where: 'utility_application.ownership',
    })
    expect(result.values.disclosures.find(({ id }) => id === 'purchase')?.state).toBe('missing')
    expect(await ids()).not.toContain('proposal.not-a-purchase')
    expect(await ids('utility_application.ownership=owned')).not.toContain('proposal.not-a-purchase')
  })

  test("an offer in Spanish names the installer's own texts, which stay as they are", async () => {
    const spanish = (await prepare(harbor(), { language: 'es' })).result.findings.find(
      ({ id }) => id === 'proposal.own-texts-not-translated',
    )
    expect(spanish?.severity).toBe('note')
    for (const key of ['not_included', 'warranties', 'timeline', 'payments', 'complaints', 'terms'])
      expect(spanish?.message).toContain(`proposal.${key}`)
    expect(spanish?.message).toContain('finance.replacements')
    expect(await ids()).not.toContain('proposal.own-texts-not-translated')
    const bare = (await prepare(loadSample('lark-hollow'), { language: 'es' })).result.findings
    const message = bare.find(({ id }) => id === 'proposal.own-texts-not-translated')?.message
    expect(message).toMatch(/: incentives, tariff\.source$/u)
  })

  // Source: the list of rules with what each asks (read and secondary, see the tables).
  test.each([
    ['utah', 'rise-cap', 'must'],
    ['utah', 'maintenance', 'must'],
    ['nevada', 'export-rule', 'must'],
    ['california', 'complaints', 'must'],
    ['california', 'utility-guide', 'must'],
    ['rhode_island', 'replacement', 'must'],
    ['idaho', 'replacement', 'must'],
    ['other', 'complaints', 'should'],
    ['other', 'cancellation', 'must'],
    ['utah', 'roof', 'should'],
  ] as const)('%s: %s is a %s', async (state, id, ask) => {
    const { values } = (await prepare(harbor(`proposal.rule_set=${state}`))).result
    expect(values.disclosures.find((each) => each.id === id)?.ask).toBe(ask)
  })

  test('every rule set says where it is from', () => {
    for (const [state, { source }] of Object.entries(RULE_SETS) as [RuleSet, (typeof RULE_SETS)[RuleSet]][])
      expect([state, source.document !== '' || source.standing === 'common practice, no source']).toEqual([state, true])
  })
})
