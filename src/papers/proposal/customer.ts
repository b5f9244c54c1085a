import type { Project } from '../../project/index.js'
import type { Speaker } from '../words/index.js'

type Texts = Readonly<Record<string, string>>

/** What a party of the project can say of the customer. */
const OF_PARTY = ['name', 'address', 'phone', 'email'] as const

/** The project with what is told of the customer beside it; without a name there is no party to put it into. */
export function withCustomer(project: Project, customer: Texts): Project {
  const told = Object.fromEntries(Object.entries(customer).filter(([key]) => isOfParty(key)))
  const owner = { name: '', ...project.parties?.owner, ...told }
  if (Object.keys(told).length === 0 || owner.name === '') return project
  return { ...project, parties: { ...project.parties, owner } }
}

/** What stands in lines of its own, as label and text: `Customer: number`. */
export function customerFacts(
  project: Project,
  customer: Texts,
  say: Speaker,
): (readonly [label: string, text: string])[] {
  const hasParty = project.parties?.owner !== undefined
  return Object.entries(customer)
    .filter(([key, text]) => text !== '' && !(hasParty && isOfParty(key)))
    .map(([key, text]) => [`${say.text('customer')}: ${key.replaceAll(/[._]+/gu, ' ')}`, text])
}

const isOfParty = (key: string): boolean => OF_PARTY.some((each) => each === key)
