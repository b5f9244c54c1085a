export { moduleMap, type ModuleMapInput } from './module-map.js'
export { shadeChart, type ShadeChartInput } from './shade-chart.js'
export { siteSketch, type SiteSketch, type SiteSketchInput } from './site-sketch.js'
