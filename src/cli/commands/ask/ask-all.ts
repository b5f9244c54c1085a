import { cleanLine } from '../../../report/index.js'
import { UsageError } from '../../errors.js'
import type { Answers, Question } from './questions.js'

/** Where answers come from, and where questions go. */
export interface Lines {
  /** Says something above the next question. */
  readonly say: (text: string) => void
  /** The line that follows a prompt; undefined at the end of input. */
  readonly next: (prompt: string) => Promise<string | undefined>
}

/** Longest answer that is read, characters. */
const LONGEST = 500

/**
 * Asks one question after the other; an answer that cannot be taken is told with its reason and asked for again.
 *
 * @throws UsageError when the input ends before the last question.
 */
export async function askAll(questions: readonly Question[], lines: Lines): Promise<Answers> {
  lines.say(
    `${questions.length} questions. Enter takes what stands in [brackets], ? explains; what is left out is made up and marked in the file.`,
  )
  const answers: Record<string, string | undefined> = {}
  for (const [index, question] of questions.entries()) {
    answers[question.key] = await answerTo(question, answers, `${index + 1}/${questions.length}`, lines)
  }
  return answers
}

async function answerTo(
  question: Question,
  answers: Answers,
  number: string,
  lines: Lines,
): Promise<string | undefined> {
  const { key, text, help, fallback, refuse } = question
  const offer = fallback === undefined ? '' : ` [${fallback(answers)}]`
  for (;;) {
    const line = await lines.next(`${number} ${text}${offer}: `)
    if (line === undefined)
      throw new UsageError(
        `the input ends at question ${number} (${key}), and nothing was written; ask again, or use --answers FILE`,
      )
    const answer = line.trim().slice(0, LONGEST)
    if (answer === '?') lines.say(help)
    else if (answer === '') {
      if (fallback !== undefined) return undefined
      lines.say('an answer is needed here; ? explains')
    } else {
      const reason = refuse(answer, answers)
      if (reason === undefined) return answer
      lines.say(cleanLine(reason))
    }
  }
}
