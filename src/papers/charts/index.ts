export { bandChart, type BandPoint } from './band-chart.js'
export { pairedBars, rangeBars, type RangeBar } from './bar-charts.js'
export { roofPicture, type PicturedPlane } from './roof-picture.js'
