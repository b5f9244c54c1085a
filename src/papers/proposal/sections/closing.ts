import type { PageBlock } from '../../pages/index.js'
import type { Offer } from '../offer.js'

/** What is not in the price, what happens next, the installer's own terms, and where to sign. */
export function closingBlocks(offer: Offer): PageBlock[] {
  const { say, stated } = offer
  return [
    ...nextBlocks(offer),
    { kind: 'heading', text: say.text('not_included_title') },
    { kind: 'list', items: [...(stated.not_included ?? []), say.text('not_included_default')] },
    ...moreBlocks(offer),
    ...termBlocks(offer),
    ...signBlocks(offer),
  ]
}

function nextBlocks({ say, stated }: Offer): PageBlock[] {
  const { timeline, interconnection_by: by, next_steps: steps } = stated
  const apply = by === undefined ? [] : [say.text(by === 'seller' ? 'apply_seller' : 'apply_customer')]
  return [
    { kind: 'heading', text: say.text('steps_title') },
    ...(timeline === undefined
      ? []
      : [
          {
            kind: 'table',
            columns: [
              { heading: say.text('timeline_step'), share: 2 },
              { heading: say.text('timeline_when'), share: 1 },
            ],
            rows: timeline.map(({ step, when }) => [step, when]),
          } as const,
        ]),
    { kind: 'list', mark: 'numbers', items: [...(steps ?? []), ...apply, say.text('permission')] },
  ]
}

function moreBlocks({ say, stated, values }: Offer): PageBlock[] {
  const { certificates_owner: owner, offered_by_utility_guide: guide } = stated
  const facts: (readonly [string, string | undefined])[] = [
    [say.text('certificates'), owner === undefined ? undefined : say.text(`owner_${owner}`)],
    [say.text('lien'), stated.lien],
    [say.text('roof_state'), stated.roof],
    [say.text('insurance'), stated.insurance_and_taxes],
    [say.text('complaints'), stated.complaints],
    [say.text('utility_guide'), guide === true ? say.text('guide_given') : undefined],
  ]
  const known = facts.flatMap(([name, value]) => (value === undefined ? [] : [[name, value] as const]))
  return [
    { kind: 'heading', text: say.text('more_title') },
    ...(known.length === 0 ? [] : [{ kind: 'facts', facts: known } as const]),
    { kind: 'text', text: say.text('rules_line', { rules: say.text(`rules_${values.rule_set}`) }) },
  ]
}

function termBlocks({ say, terms }: Offer): PageBlock[] {
  const paragraphs = (terms ?? '').split(/\r?\n\s*\r?\n/u).map((each) => each.trim())
  const stated = paragraphs.filter((each) => each !== '')
  return [
    { kind: 'heading', text: say.text('terms_title') },
    ...(stated.length === 0 ? [say.text('terms_missing')] : stated).map((text) => ({ kind: 'text', text }) as const),
  ]
}

function signBlocks({ say, project }: Offer): PageBlock[] {
  const { owner, installer, preparer } = project.parties ?? {}
  const person = (label: string, name: string | undefined) => ({ label, ...(name === undefined ? {} : { name }) })
  return [
    { kind: 'heading', text: say.text('sign_title') },
    { kind: 'text', text: say.text('sign_text') },
    {
      kind: 'signatures',
      dateLabel: say.text('sign_date'),
      people: [
        person(say.text('sign_customer'), owner?.name),
        person(say.text('sign_seller'), (installer ?? preparer)?.name),
        person(say.text('initials'), undefined),
      ],
    },
  ]
}
