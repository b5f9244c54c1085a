import { readFileSync } from 'node:fs'

/** Rows of a CSV fixture of published tables; lines that begin with # are notes. */
export function readFixture(name: string): Record<string, string>[] {
  const url = new URL(`../published/fixtures/nec/${name}.csv`, import.meta.url)
  const lines = readFileSync(url, 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
  const [head, ...body] = lines.map(cells)
  return body.map((row) => Object.fromEntries((head ?? []).map((key, i) => [key, row[i] ?? ''])))
}

function cells(line: string): string[] {
  const out: string[] = []
  for (const match of line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/g)) out.push(match[1] ?? match[2] ?? '')
  return out
}

/** A size of the fixtures as the tables name it. */
export const sizeName = (text: string): string => (/^\d{3}$/.test(text) ? `${text} kcmil` : text)

/** A cell as number, undefined when it is blank. */
export const cell = (text: string | undefined): number | undefined =>
  text === undefined || text === '' ? undefined : Number(text)
