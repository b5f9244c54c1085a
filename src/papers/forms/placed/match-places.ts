import type { Complaint } from '../../../project/index.js'
import { POINTS_PER_INCH } from '../../../values/index.js'
import { protectedText, wordsOf, type OpenForm } from '../document/index.js'
import type { FormMapping, MappedPlace } from '../mapping/index.js'
import { lowestPt, sizeOf } from './draw-place.js'
import { seenPage } from './seen-page.js'

/** What the form has against the places of a mapping: pages and room that it does not have, names that are never filled. */
export function matchPlaces(mapping: FormMapping, { pdf }: OpenForm): Complaint[] {
  const pages = pdf.getPages()
  return (mapping.place ?? []).flatMap((place, index): Complaint[] => {
    const say = (key: keyof MappedPlace, message: string): Complaint => ({
      segments: ['place', index, key],
      at: 'value',
      message,
    })
    const why = protectedText(place.name, place.mark === true) ?? bareDate(place.name)
    if (why !== undefined) return [say('name', `'${place.name}' is never filled: ${why}; take it out of the mapping`)]
    const page = pages[place.page - 1]
    if (page === undefined)
      return [say('page', `the form has no page ${place.page}; it has ${pages.length === 1 ? 'one' : pages.length}`)]
    const { widthPt, heightPt } = seenPage(page)
    const inches = (pt: number): string => `${Number((pt / POINTS_PER_INCH).toFixed(2))} in`
    const half = place.mark === true ? sizeOf(place) / 2 : 0
    const right = (place.x_in + (place.width_in ?? 0)) * POINTS_PER_INCH + half
    return [
      ...(right > widthPt + 0.01 || place.x_in * POINTS_PER_INCH < half
        ? [
            say(
              'x_in',
              `'${place.name}' reaches to ${inches(right)}, and page ${place.page} is ${inches(widthPt)} wide`,
            ),
          ]
        : []),
      ...(lowestPt(place) > heightPt + 0.01
        ? [
            say(
              'y_in',
              `'${place.name}' reaches down to ${inches(lowestPt(place))}, and page ${place.page} is ${inches(heightPt)} high`,
            ),
          ]
        : []),
    ]
  })
}

/** A page cannot tell whose date is meant, so that the name has to. */
function bareDate(name: string): string | undefined {
  const words = wordsOf(name)
  if (!words.every((word) => /^(?:dated?|\d+|the|day)$/u.test(word)) || !words.some((word) => /^dated?$/u.test(word)))
    return undefined
  return 'it may be the date of signing, which is written by who signs; name what it is the date of, such as drawings date'
}
