import { readFileSync } from 'node:fs'

/** Rows of a CSV beside the tests, by column name; quoted fields may hold commas. */
export function readTable(name: string): Record<string, string>[] {
  const text = readFileSync(new URL(`tables/${name}.csv`, import.meta.url), 'utf8')
  const [header, ...lines] = text.trim().split(/\r?\n/)
  const names = fields(header ?? '')
  return lines.map((line) => Object.fromEntries(fields(line).map((value, index) => [names[index] ?? '', value])))
}

/** The pattern also matches the empty rest behind a last field that is not empty. */
function fields(line: string): string[] {
  const found = [...line.matchAll(/("([^"]*)"|[^,]*)(,|$)/g)].map((m) => m[2] ?? m[1] ?? '')
  return line.endsWith(',') ? found : found.slice(0, -1)
}
