import {
  explain,
  findKey,
  findSource,
  findValue,
  formatPath,
  MOST_PROBLEMS,
  parseYaml,
  ProjectError,
  sortProblems,
  type Complaint,
  type Problem,
} from '../../project/index.js'
import { checkPrices } from './check-prices.js'
import { priceListSchema } from './price-list-schema.generated.js'
import type { PriceList } from './price-list-types.generated.js'
import { validate } from './price-list-validator.generated.js'

/**
 * Reads a price list and checks it.
 *
 * @param file Name of the file, for the messages.
 * @param text Its content: YAML of the shape of schemas/price-list.schema.json.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readPriceList(file: string, text: string): PriceList {
  const yaml = parseYaml(file, text)
  const sources = new Map([[file, text]])
  const refuse = (problems: readonly Problem[]): ProjectError =>
    new ProjectError(sortProblems(problems, [file]), 2, sources)
  if (yaml.problems.length > 0) throw refuse(yaml.problems)
  const { data } = yaml
  const place = ({ segments, at, message }: Complaint): Problem => {
    const target = at === 'parent' ? segments.slice(0, -1) : segments
    for (let end = target.length; end >= 0; end--) {
      const inner = target.slice(0, end)
      const span = at === 'value' && end === target.length ? findValue(yaml, inner) : findKey(yaml, inner)
      if (span !== undefined && end > 0) return { file, ...span, path: formatPath(segments), message }
    }
    return { file, line: 1, column: 1, length: 1, path: formatPath(segments), message }
  }
  const complaints = validate(data) ? checkPrices(data as PriceList) : explainPrices(data, yaml)
  if (complaints.length > 0) throw refuse(complaints.slice(0, MOST_PROBLEMS + 1).map(place))
  return data as PriceList
}

function explainPrices(data: unknown, yaml: Parameters<typeof findSource>[0]): Complaint[] {
  const complaints = explain(priceListSchema, data, [], {
    root: priceListSchema,
    sourceAt: (segments) => findSource(yaml, segments),
  })
  if (complaints.length > 0) return complaints
  // The validator refuses what explain does not know of: its own words are better than silence.
  return (validate.errors ?? []).map(({ instancePath, keyword, params }) => ({
    segments: instancePath.split('/').slice(1),
    at: 'value',
    message: `breaks '${keyword}' of the schema: ${JSON.stringify(params)}`,
  }))
}
