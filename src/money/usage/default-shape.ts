import { LOAD_SHAPES, type LoadShape, type LoadShapeName } from '../../tables/money/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'

/** States by the profile that stands nearest in climate; all others take `cold-fuelheat-MI`. */
const BY_STATE: readonly { readonly shape: LoadShapeName; readonly states: string }[] = [
  { shape: 'cold-fuelheat-CT', states: 'CT NJ NY PA VT' },
  { shape: 'cold-coast-fuelheat-MA', states: 'MA ME NH RI' },
  { shape: 'warm-coast-CA', states: 'HI' },
  { shape: 'inland-semiarid-CA', states: 'CA' },
  { shape: 'hot-dry-desert-CA', states: 'AZ NV NM' },
  { shape: 'mixed-humid-fuelheat-MO', states: 'AL AR DC DE FL GA KS KY LA MD MO MS NC OK SC TN TX VA WV' },
]
const NO_HOT_HUMID = new Set(['AL', 'AR', 'FL', 'GA', 'LA', 'MS', 'SC', 'TX', 'HI'])

/**
 * The load shape that the person named, or one by the state with an assumption that prints its name.
 *
 * @param state Two letters; undefined when unknown.
 * @throws StageError for an unknown name.
 */
export function chooseShape(
  name: string | undefined,
  state: string | undefined,
  worksheet: Worksheet,
): LoadShape | 'even' {
  if (name === 'even') return 'even'
  const known = Object.values(LOAD_SHAPES)
  if (name !== undefined) {
    const shape = known.find((one) => one.name === name)
    if (shape !== undefined) return shape
    throw new StageError(
      'usage.load_shape',
      `there is no load shape '${name}'; known: even, ${known.map((one) => one.name).join(', ')}`,
      'Name one of them.',
    )
  }
  const place = state?.toUpperCase() ?? ''
  const fallback: LoadShapeName = place === '' ? 'mixed-humid-fuelheat-MO' : 'cold-fuelheat-MI'
  const chosen = LOAD_SHAPES[BY_STATE.find(({ states }) => states.split(' ').includes(place))?.shape ?? fallback]
  worksheet.assume({
    path: 'usage.load_shape',
    value: chosen.name,
    unit: '',
    why:
      place === ''
        ? 'the state is not known, so a mean climate is taken'
        : `nearest in climate for ${place} among the built-in profiles`,
    source: chosen.source,
  })
  if (place === '' || NO_HOT_HUMID.has(place)) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.shape-poor-fit',
      message: `no built-in load shape fits ${place === '' ? 'an unknown place' : `the climate of ${place}`}; ${chosen.name} is used`,
      where: 'usage.load_shape',
      fix: 'Use a meter export (usage.green_button or usage.interval_csv), or name the shape yourself.',
    })
  }
  return chosen
}
