/** Where on a rafter something happens. */
export interface RafterPlace {
  readonly kind: 'span' | 'support' | 'overhang'
  /** Counted from the eave: span 1 is the first; support 0 the wall, support 1 that between spans 1 and 2. */
  readonly number: number
}

/** `south rafter 7`, with the span or support where it is not the first span. */
export function placeOf(plane: string, rafter: number, { kind, number }: RafterPlace): string {
  const where =
    kind === 'overhang'
      ? ' at the overhang'
      : kind === 'support'
        ? number === 0
          ? ' at the wall'
          : ` over support ${number + 1}`
        : number > 1
          ? ` in span ${number}`
          : ''
  return `${plane} rafter ${rafter}${where}`
}
