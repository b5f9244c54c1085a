import type { Rule } from './rule.js'

/** The monthly snow-loss method needs both series. */
export const checkSnow: Rule = ({ site }, report) => {
  const { monthly_snowfall_in: snowfall, monthly_snow_events: events } = site
  if ((snowfall === undefined) === (events === undefined)) return
  const [given, missing] =
    snowfall === undefined
      ? ['monthly_snow_events', 'monthly_snowfall_in']
      : ['monthly_snowfall_in', 'monthly_snow_events']
  report(['site', missing], `missing; ${given} is used only together with it: give both or none`, 'parent')
}
