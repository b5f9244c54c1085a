/** Editions of the National Electrical Code (NFPA 70) that the tables hold, oldest first. */
export const editions = ['NEC 2011', 'NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023', 'NEC 2026'] as const

export type Edition = (typeof editions)[number]

/** Whether the tables hold this edition. */
export function isEdition(text: string): text is Edition {
  return (editions as readonly string[]).includes(text)
}
