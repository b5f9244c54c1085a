export { boxFill, smallestBox, type BoxContents, type BoxFill } from './box-fill.js'
export { checkBoxes } from './check-boxes.js'
export { leastPullIn, leastEntryDistanceIn } from './pull-box.js'
