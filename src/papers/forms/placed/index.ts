export { drawPlace } from './draw-place.js'
export { matchPlaces } from './match-places.js'
export { placeField } from './place-field.js'
