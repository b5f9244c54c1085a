import { protectedText, type FieldChoice, type FormField } from './document/index.js'
import type { Filling, Trouble } from './filling.js'

/** The choices of a drop-down or a list that texts mean, by what is seen or by what is exported. */
export function pickChoices(field: FormField, texts: readonly string[]): Filling | Trouble {
  const picked: FieldChoice[] = []
  for (const text of texts) {
    const known =
      field.choices.find((choice) => choice.text === text) ?? field.choices.find((choice) => choice.value === text)
    if (known === undefined && !field.editable) {
      const choices = field.choices.map((choice) => choice.text)
      const list =
        choices.length > 12 ? `${choices.slice(0, 12).join(', ')}, ... (${choices.length})` : choices.join(', ')
      const message = `'${field.name}' has no choice '${text}'; its choices: ${list}`
      return { severity: 'error', id: 'form.not-a-choice', message, fix: 'Name one of the choices, or state translate' }
    }
    const choice = known ?? { value: text, text }
    const why = protectedText(`${choice.text} ${choice.value}`, true)
    if (why !== undefined) {
      const message = `'${field.name}' is not put to '${choice.text}': ${why}`
      return { severity: 'error', id: 'form.left-to-person', message, fix: 'Leave it to the person who signs' }
    }
    picked.push(choice)
  }
  return { kind: 'choices', choices: inOrder(picked, field.choices) }
}

/** In the order of the form, each once; a text of the person's own stands alone. */
function inOrder(picked: readonly FieldChoice[], choices: readonly FieldChoice[]): FieldChoice[] {
  const known = choices.filter((choice) => picked.includes(choice))
  return known.length === 0 ? [...picked] : known
}
