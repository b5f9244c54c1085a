import { own } from '../values/index.js'
import type { Project } from './project-types.generated.js'

/**
 * Name of a piece of equipment by kind and id, such as `modules.m410`; its id when it has no name.
 *
 * @returns undefined when there is none.
 */
export function equipmentNamed({ equipment }: Pick<Project, 'equipment'>, item: string): string | undefined {
  const [kind = '', ...rest] = item.split('.')
  const id = rest.join('.')
  const kinds: Readonly<Record<string, unknown>> = { ...equipment }
  const found = own(own(kinds, kind) as Readonly<Record<string, unknown>> | undefined, id)
  if (typeof found !== 'object' || found === null) return undefined
  const { name } = found as { readonly name?: unknown }
  return typeof name === 'string' ? name : id
}
