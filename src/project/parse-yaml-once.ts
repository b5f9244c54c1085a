import { parseYaml } from './parse-yaml.js'
import { toData } from './yaml-data.js'

type Parsed = ReturnType<typeof parseYaml>

/** A fleet reads one template and one price list again and again. */
const KEPT = 8
/** The files read last, the latest at the end. */
const kept = new Map<string, Parsed>()

/** `parseYaml`, with the tree of the same text kept; the data are the caller's own each time. */
export function parseYamlOnce(file: string, text: string): Parsed {
  const known = kept.get(file)
  const isKnown = known?.document !== undefined && known.text === text
  const parsed = isKnown ? { ...known, data: toData(known.document).data } : parseYaml(file, text)
  if (parsed.problems.length > 0) return parsed
  kept.delete(file)
  kept.set(file, { ...parsed, data: undefined })
  const [oldest] = kept.keys()
  if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest)
  return parsed
}
