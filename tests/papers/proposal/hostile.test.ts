import { describe, expect, test } from 'vitest'
import { loadSample, prepare } from './offers.js'
import { readOffer } from './read-offer.js'

const hostile = (name: string) => {
  const loaded = loadSample('harbor-point')
  const project = structuredClone(loaded.project) as { title: string } & typeof loaded.project
  const changed = {
    ...project,
    title: name,
    parties: { owner: { name }, installer: { name, address: name, license: name } },
    proposal: { ...project.proposal, terms: name, next_steps: [name], not_included: [name], number: name },
  }
  return { ...loaded, project: changed }
}

describe('names of a project', () => {
  test('make no markup in the page and none in the PDF', async () => {
    const name = `<script>alert(1)</script><img src=x onerror="a()">&lt;" ' \`\${x}\``
    const offer = await prepare(hostile(name))
    const html = await offer.html()
    expect(html).not.toMatch(/<script|<img|onerror="/u)
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;')
    expect((await readOffer(await offer.pdf())).words).toContain('<script>alert(1)</script>')
  })

  test('that are long go on over lines and pages', async () => {
    const offer = await prepare(hostile(`${'Verylongname'.repeat(300)} end`))
    const { texts, pages } = await readOffer(await offer.pdf())
    expect(pages).toBeGreaterThan(8)
    for (const { text, left, right, base } of texts)
      expect([text, left > 51 && right < 612 - 51 && base > 20 && base < 792 - 40]).toEqual([text, true])
  })

  test('of letters that the font lacks are refused for paper with their key, and stand in the page', async () => {
    const offer = await prepare(hostile('شمس 太陽'))
    await expect(offer.pdf()).rejects.toMatchObject({
      where: 'title',
      message: expect.stringContaining('cannot print') as string,
    })
    const html = await offer.html()
    expect(html).toContain('<p class="below" dir="auto">شمس 太陽</p>')
  })

  test('that turn the direction of writing or steer a terminal lose it', async () => {
    const offer = await prepare(hostile('A\u202Eevil\u0007\u001B[31m B'))
    // oxlint-disable-next-line no-control-regex
    expect(await offer.html()).not.toMatch(/[\u202A-\u202E\u0000-\u0008\u001B]/u)
    const markdown = await (await prepare(hostile('# [x](javascript:a) | *b*'))).markdown()
    expect(markdown).not.toMatch(/^# \[x\]\(|[^\\]\[x\]\(/mu)
  })
})
