import { landingPanel, panelName } from '../../project/facts.js'
import type { Electrical } from '../../project/index.js'

/** The panel with the PV breaker, as tables of the sheets call it: the only one is the main panel. */
export function landingWords(electrical: Electrical | undefined): string {
  const landing = landingPanel(electrical)
  return landing.where === 'electrical.panel' ? 'Main panel' : `Panel ${panelName(landing)}`
}

/** The same in a sentence. */
export function landingPhrase(electrical: Electrical | undefined): string {
  const landing = landingPanel(electrical)
  return landing.where === 'electrical.panel' ? 'the main panel' : `panel ${panelName(landing)}`
}
