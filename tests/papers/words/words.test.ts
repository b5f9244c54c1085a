import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { EN, ES, speakerOf, type WordKey } from '../../../src/papers/words/index.js'
import { AVOIDED } from '../../../src/papers/proposal/offer-findings.js'

const keys = Object.keys(EN) as WordKey[]
const namesIn = (text: string): string[] => (text.match(/\{\w+\}/gu) ?? []).toSorted()

describe('texts of papers', () => {
  test('both languages have the same keys and fill in the same names', () => {
    expect(Object.keys(ES).toSorted()).toEqual([...keys].toSorted())
    for (const key of keys) expect([key, namesIn(ES[key])]).toEqual([key, namesIn(EN[key])])
  })

  test('no text promises what consumer bureaus take as deceptive', () => {
    for (const key of keys)
      for (const text of [EN[key], ES[key]]) expect([key, AVOIDED.exec(text)]).toEqual([key, null])
    for (const bad of [
      'Free panels',
      'no-cost solar',
      'eliminate your bill',
      'a government program',
      'paneles gratis',
      'sin costo',
      'elimine su factura',
    ])
      expect(AVOIDED.test(bad), bad).toBe(true)
  })

  test('every text is used, and texts of one language are not those of the other', () => {
    const folder = new URL('../../../src/papers/', import.meta.url).pathname
    const code = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && !file.startsWith('words'))
      .map((file) => readFileSync(join(folder, file), 'utf8'))
      .join('\n')
    const made = /^(?:group|rules|owner|maintenance|rise|change)_/u
    expect(keys.filter((key) => !made.test(key) && !code.includes(`'${key}'`))).toEqual([])
    const same = keys.filter((key) => EN[key] === ES[key])
    expect(same.filter((key) => !/^rules_|^cost_usd$/u.test(key))).toEqual(['no'])
  })

  test('numbers, money and days are written as the language of the country does', () => {
    const [en, es] = [speakerOf('en'), speakerOf('es')]
    expect([en.number(12345.678, 1), en.usd(21900), en.usd(0.5), en.percent(2.2, 1)]).toEqual([
      '12,345.7',
      '21,900 USD',
      '0.50 USD',
      '2.2 %',
    ])
    expect([en.date('2026-03-12'), es.date('2026-03-12')]).toEqual([
      'Thursday, March 12, 2026',
      'jueves, 12 de marzo de 2026',
    ])
    expect([es.number(12345.6, 1), es.month(9), en.month(9, 'short')]).toEqual(['12,345.6', 'septiembre', 'Sep'])
    expect(en.number(-0.001)).toBe('0')
  })
})
