import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type BrowserContext } from 'playwright-core'

const CHROMIUM = '/usr/bin/chromium'

/** Whether there is a browser to look at pages with. */
export const hasBrowser = existsSync(CHROMIUM)

export interface Looker {
  readonly context: BrowserContext
  /** A file with a page, by its address. */
  readonly put: (name: string, html: string) => string
  readonly close: () => Promise<void>
}

/** A browser of its own with an empty profile, that may ask the network for nothing. */
export async function openBrowser(): Promise<Looker> {
  const folder = mkdtempSync(join(tmpdir(), 'offer-'))
  const context = await chromium.launchPersistentContext(join(folder, 'profile'), {
    executablePath: CHROMIUM,
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
    // The test's own script is put in beside the page's policy; that the page forbids scripts is looked at apart.
    bypassCSP: false,
  })
  return {
    context,
    put: (name, html) => {
      const path = join(folder, name)
      writeFileSync(path, html)
      return `file://${path}`
    },
    close: async () => {
      await context.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
