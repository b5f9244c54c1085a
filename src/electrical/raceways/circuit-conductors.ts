import type { Circuit } from '../system/index.js'

/** Current-carrying conductors of a circuit; its neutral carries only what is out of balance and is not one. */
export const currentCarryingOf = (_circuit: Circuit): number => 2
