export { moduleMap, type ModuleMapInput } from './module-map.js'
export { shadeChart, type ShadeChartInput } from './shade-chart.js'
