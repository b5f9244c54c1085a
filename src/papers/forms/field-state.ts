import type { FormField } from './document/index.js'

/** The state that a name, or the text that the form has for it, means. */
export function findState(field: FormField, text: string): FormField['states'][number] | undefined {
  return field.states.find((one) => one.name === text) ?? field.states.find((one) => one.text === text)
}

/** The states of a button as they are told: `0 (Roof)`. */
export function statesText({ states }: FormField): string {
  return states.map(({ name, text }) => (text === undefined || text === name ? name : `${name} (${text})`)).join(', ')
}
