export type NominalSize = '2x4' | '2x6' | '2x8' | '2x10' | '2x12'

/** Dressed sizes of dimension lumber, in. @source American Softwood Lumber Standard PS 20, table 3 (from memory) */
export const LUMBER_SIZES: Readonly<Record<NominalSize, { readonly breadthIn: number; readonly depthIn: number }>> = {
  '2x4': { breadthIn: 1.5, depthIn: 3.5 },
  '2x6': { breadthIn: 1.5, depthIn: 5.5 },
  '2x8': { breadthIn: 1.5, depthIn: 7.25 },
  '2x10': { breadthIn: 1.5, depthIn: 9.25 },
  '2x12': { breadthIn: 1.5, depthIn: 11.25 },
}
