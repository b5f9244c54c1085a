import { dirname, resolve } from 'node:path'
import type { StartingHouse } from '../../../project/index.js'
import { UsageError } from '../../errors.js'
import { answersFromFile } from './answers-file.js'
import { askAll } from './ask-all.js'
import { chooseEquipment } from './equipment-file.js'
import { openLines } from './open-lines.js'
import { houseFrom, QUESTIONS, type Answers, type Question } from './questions.js'

/**
 * The house that a person tells of, question by question, or that a file of answers tells of.
 *
 * @param known What the command line says already; that is not asked.
 * @param answersPath A YAML file; '-' or nothing for lines from the keyboard or a pipe.
 * @param out Where the project will lie, as files of equipment are named from there.
 */
export async function askForHouse(
  known: Partial<StartingHouse>,
  answersPath: string | undefined,
  out: string | undefined,
): Promise<Partial<StartingHouse>> {
  const folder = out === undefined || out === '-' ? resolve('.') : dirname(resolve(out))
  const questions = QUESTIONS.filter(({ key }) => !(key === 'place' && known.site !== undefined)).map(
    (each): Question =>
      each.key === 'equipment' ? { ...each, refuse: (text) => reasonOf(chooseEquipment(text, folder)) } : each,
  )
  const answers =
    answersPath === undefined || answersPath === '-'
      ? await askInTurn(questions)
      : answersFromFile(answersPath, questions)
  const file = answers['equipment']
  const chosen = file === undefined ? undefined : chooseEquipment(file, folder)
  if (typeof chosen === 'string') throw new UsageError(chosen)
  return houseFrom(answers, known, chosen)
}

const reasonOf = (chosen: ReturnType<typeof chooseEquipment>): string | undefined =>
  typeof chosen === 'string' ? chosen : undefined

async function askInTurn(questions: readonly Question[]): Promise<Answers> {
  const lines = openLines()
  try {
    return await askAll(questions, lines)
  } finally {
    lines.close()
  }
}
