import { moduleName } from '../../roof/index.js'

/** Short name of a module on the plan of its plane: `r1c2`, with its block when the array has several. */
export function shortModuleName(id: string, array: string): string {
  const name = moduleName({ id })
  return name.startsWith(`${array} `) ? name.slice(array.length + 1) : name
}
