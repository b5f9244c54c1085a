/** What a practitioner would say beside a result that can hurt someone. Each text stands here and nowhere else. */
const CAUTIONS = {
  estimate:
    'Production is an estimate from long-term averages: a single year, and a single week even more, will differ from it.',
  height:
    'Work on a roof can kill: tie off to an anchor rated for it, keep off wet, icy and windy roofs, and never work alone.',
  'live-conductors':
    'Modules make voltage whenever there is light on them, and the line side of the main breaker stays live with the main off: lock out, measure, and only then touch.',
  authority:
    'The locally adopted code and its amendments, as the authority having jurisdiction and the utility read them, decide; ask both before buying.',
  electrician:
    'A licensed electrician makes or checks the final connection to the service equipment, and every conductor and breaker size before it is installed.',
  'structural-engineer':
    'Have a structural engineer look at the roof where it is old, altered, sagging or damaged, or where a limit of the method is passed.',
  money:
    'Rates, credits and tax rules change, and this is no tax advice: check each against the utility’s current tariff sheet and with a tax adviser.',
} as const

export type CautionSubject = keyof typeof CAUTIONS

/** The texts in the order of this file, each once. */
export function cautionTexts(subjects: readonly CautionSubject[]): string[] {
  return Object.entries(CAUTIONS)
    .filter(([subject]) => (subjects as readonly string[]).includes(subject))
    .map(([, text]) => text)
}

/** Cautions of the stages whose results stand alone, by stage. */
export const STAGE_CAUTIONS = {
  yield: ['estimate', 'authority'],
  wire: ['live-conductors', 'authority', 'electrician'],
  mounts: ['height', 'authority', 'structural-engineer'],
  bom: ['authority', 'money'],
  payback: ['estimate', 'money'],
} as const satisfies Record<string, readonly CautionSubject[]>
