import { LARGEST_YAML_BYTES, readCheckedYaml, readNamedText } from '../../../project/index.js'
import { own } from '../../../values/index.js'
import type { Answers, Question } from './questions.js'

/**
 * Answers of a YAML file, one key a question.
 *
 * @throws ProjectError with every answer that cannot be taken, each at its line.
 */
export function answersFromFile(path: string, questions: readonly Question[]): Answers {
  const schema = {
    type: 'object',
    additionalProperties: false,
    required: questions.filter(({ fallback }) => fallback === undefined).map(({ key }) => key),
    properties: Object.fromEntries(questions.map(({ key }) => [key, { type: ['string', 'number'] }])),
  }
  const isFlat = (data: unknown): boolean =>
    typeof data === 'object' &&
    data !== null &&
    schema.required.every((key) => Object.hasOwn(data, key)) &&
    Object.entries(data).every(
      ([key, value]) => Object.hasOwn(schema.properties, key) && ['string', 'number'].includes(typeof value),
    )
  const textsOf = (data: Record<string, unknown>): Answers =>
    Object.fromEntries(Object.entries(data).map(([key, value]) => [key, String(value)]))
  const { data } = readCheckedYaml<Record<string, unknown>>(path, readNamedText(path, LARGEST_YAML_BYTES), {
    schema,
    validate: isFlat,
    check: (read) => {
      const answers = textsOf(read)
      return questions.flatMap(({ key, refuse }) => {
        const answer = own(answers, key)
        const reason = answer === undefined ? undefined : refuse(answer, answers)
        return reason === undefined ? [] : [{ segments: [key], at: 'value' as const, message: reason }]
      })
    },
  })
  return textsOf(data)
}
