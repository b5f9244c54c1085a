import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { hasBrowser, openBrowser, type Looker } from './browser.js'
import { loadSample, prepare } from './offers.js'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Violation {
  readonly id: string
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[]
}

describe.skipIf(!hasBrowser)(
  `the offer as a web page${hasBrowser ? '' : ' (skipped: no chromium at /usr/bin/chromium)'}`,
  () => {
    let looker: Looker
    const pages = new Map<string, string>()
    beforeAll(async () => {
      looker = await openBrowser()
      for (const [house, language] of [
        ['harbor-point', 'en'],
        ['harbor-point', 'es'],
        ['fleet/hartford-loan', 'es'],
        ['lark-hollow', 'en'],
      ] as const) {
        const name = `${house.replace('/', '-')}-${language}.html`
        pages.set(
          `${house} ${language}`,
          looker.put(name, await (await prepare(loadSample(house), { language })).html()),
        )
      }
    }, 120_000)
    afterAll(async () => {
      await looker.close()
    })

    // Source: axe-core, rules of WCAG 2 A and AA and its best practices.
    test.each(['light', 'dark'] as const)(
      'axe finds nothing in %s, in either language',
      { timeout: 120_000 },
      async (colorScheme) => {
        for (const [name, url] of pages) {
          const page = await looker.context.newPage()
          await page.emulateMedia({ colorScheme })
          await page.goto(url)
          await page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true })")
          const found = await page.evaluate<{ violations: Violation[]; passes: unknown[] }>(
            `(() => { ${AXE}; return axe.run() })()`,
          )
          expect(found.passes.length).toBeGreaterThan(10)
          const told = found.violations.map(
            ({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''} ${nodes[0]?.failureSummary ?? ''}`,
          )
          expect([name, colorScheme, told]).toEqual([name, colorScheme, []])
          await page.close()
        }
      },
    )

    test('asks for nothing, runs no script, and tells no error', { timeout: 60_000 }, async () => {
      const html = await (await prepare(loadSample('lark-hollow'))).html()
      // A script that got in all the same would not run.
      const url = looker.put(
        'bad.html',
        html.replace('</main>', '<script>document.title = "run"</script><img src="https://x.invalid/a.png"></main>'),
      )
      const asked: string[] = []
      const said: string[] = []
      for (const [address, isBad] of [
        [url, true],
        [pages.get('harbor-point en') ?? '', false],
      ] as const) {
        const page = await looker.context.newPage()
        page.on('request', (request) => asked.push(request.url()))
        page.on('console', (message) => said.push(message.text()))
        page.on('pageerror', (error) => said.push(String(error)))
        await page.goto(address)
        expect(await page.title()).not.toBe('run')
        if (isBad) {
          expect(said.join('\n')).toMatch(/Content Security Policy/u)
          expect(asked.filter((each) => each.startsWith('http')).length).toBeLessThanOrEqual(1)
          said.length = asked.length = 0
        }
        await page.close()
      }
      expect(said).toEqual([])
      expect(asked.length).toBe(1)
    })

    test(
      'fits a telephone without scrolling sideways, opens its tables by key, and follows the colours of the screen',
      { timeout: 60_000 },
      async () => {
        for (const [name, url] of pages) {
          const page = await looker.context.newPage()
          await page.setViewportSize({ width: 360, height: 740 })
          await page.goto(url)
          const wide = await page.evaluate<number>('document.documentElement.scrollWidth')
          expect([name, wide <= 360]).toEqual([name, true])
          // A number that is broken over two lines reads as another one.
          const broken = await page.evaluate<string[]>(
            `[...document.querySelectorAll('.right')].filter((cell) => {
              const range = document.createRange()
              range.selectNodeContents(cell)
              const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)))
              return lines.size > 1 && !/\\s/u.test(cell.textContent)
            }).map((cell) => cell.textContent)`,
          )
          expect([name, broken]).toEqual([name, []])
          const tables = page.locator('details table')
          expect(await tables.first().isVisible()).toBe(false)
          await page.locator('summary').first().focus()
          await page.keyboard.press('Enter')
          expect(await tables.first().isVisible()).toBe(true)
          const ground = async (colorScheme: 'light' | 'dark'): Promise<string> => {
            await page.emulateMedia({ colorScheme })
            return await page.evaluate<string>(
              'getComputedStyle(document.body).backgroundColor + getComputedStyle(document.querySelector("svg text")).fill',
            )
          }
          const [light, dark] = [await ground('light'), await ground('dark')]
          expect(light).toContain('rgb(255, 255, 255)')
          expect(dark).not.toBe(light)
          expect(dark).toContain('rgb(26, 29, 28)')
          await page.close()
        }
      },
    )

    test('prints light on paper, no figure cut', { timeout: 60_000 }, async () => {
      const page = await looker.context.newPage()
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
      await page.goto(pages.get('harbor-point en') ?? '')
      expect(await page.evaluate('getComputedStyle(document.body).backgroundColor')).toBe('rgb(255, 255, 255)')
      expect(await page.evaluate('getComputedStyle(document.querySelector("figure")).breakInside')).toBe('avoid')
      await page.close()
    })
  },
)

test('the page says what the PDF says', async () => {
  const offer = await prepare(loadSample('harbor-point'))
  const html = (await offer.html()).replaceAll(/<[^>]*>/gu, ' ').replaceAll(/\s+/gu, ' ')
  const { values } = offer.result
  for (const { stands_under: under } of values.disclosures) if (under !== null) expect(html).toContain(under)
  for (const number of [values.energy.first_year.p50_kwh, values.cost.gross_usd, values.cash.at(-1)?.p90_usd ?? 0])
    expect(html).toContain(number.toLocaleString('en-US'))
  expect(html).not.toMatch(/NaN|undefined|Infinity/u)
})
