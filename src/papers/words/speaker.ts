import { EN, type WordKey } from './en.js'
import { ES } from './es.js'

/** Languages that papers can be written in. */
export const PAPER_LANGUAGES = ['en', 'es'] as const
export type PaperLanguage = (typeof PAPER_LANGUAGES)[number]

const TEXTS: Readonly<Record<PaperLanguage, Readonly<Record<WordKey, string>>>> = { en: EN, es: ES }

/** Making one takes longer than a hundred numbers said with it. */
const FORMATS = new Map<string, Intl.NumberFormat>()

function numbersOf(locale: string, decimals: number): Intl.NumberFormat {
  const key = `${locale} ${decimals}`
  const format =
    FORMATS.get(key) ??
    new Intl.NumberFormat(locale, { minimumFractionDigits: decimals, maximumFractionDigits: decimals })
  FORMATS.set(key, format)
  return format
}

/** Says texts, numbers, money and dates in one language of the country. */
export interface Speaker {
  readonly language: PaperLanguage
  /** BCP 47. */
  readonly locale: 'en-US' | 'es-US'
  /** A text with its names filled in. */
  readonly text: (key: WordKey, fill?: Readonly<Record<string, string>>) => string
  readonly number: (value: number, decimals?: number) => string
  /** `1,234 USD`; cents where there are any. */
  readonly usd: (value: number) => string
  /** `3.5 %` */
  readonly percent: (value: number, decimals?: number) => string
  /** A day in words. @param date Year-month-day. */
  readonly date: (date: string) => string
  /** @param month 1 to 12. */
  readonly month: (month: number, length?: 'long' | 'short') => string
}

/** Words for money without a currency, where it is not the dollar. */
const OF_DOLLARS: readonly (readonly [RegExp, string])[] = [
  [/\bUSD\b/gu, 'USD'],
  [/\bdollars\b/gu, 'money'],
  [/\blos d\u00f3lares\b/gu, 'el dinero'],
  [/\bd\u00f3lares\b/gu, 'dinero'],
]

/**
 * Tells the texts of a language.
 *
 * @param currency Label of all money, three letters; nothing is converted.
 */
export function speakerOf(language: PaperLanguage, currency = 'USD'): Speaker {
  const inMoney = (text: string): string =>
    currency === 'USD'
      ? text
      : OF_DOLLARS.reduce((told, [word, other]) => told.replaceAll(word, other === 'USD' ? currency : other), text)
  const locale = language === 'es' ? 'es-US' : 'en-US'
  const texts = TEXTS[language]
  const number = (value: number, decimals = 0): string =>
    // No minus stands before a zero.
    numbersOf(locale, decimals).format(Number(value.toFixed(decimals)) + 0)
  return {
    language,
    locale,
    text: (key, fill = {}) =>
      inMoney(texts[key]).replaceAll(/\{(?<name>\w+)\}/gu, (_, name: string) => fill[name] ?? ''),
    number,
    usd: (value) => `${number(value, Number.isInteger(value) ? 0 : 2)} ${currency}`,
    percent: (value, decimals = 0) => `${number(value, decimals)} %`,
    date: (date) =>
      new Intl.DateTimeFormat(locale, { dateStyle: 'full', timeZone: 'UTC' }).format(new Date(`${date}T00:00:00Z`)),
    month: (month, length = 'long') =>
      new Intl.DateTimeFormat(locale, { month: length, timeZone: 'UTC' }).format(Date.UTC(2026, month - 1, 15)),
  }
}
