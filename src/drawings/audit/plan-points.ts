import { inches, plainNumber } from '../layout/index.js'
import { hasWords, allOn, missing, notApplicable, present, sheetsOf, type Judge, type Needle } from './verdict.js'
import { EQUIPMENT } from '../sheets/site-figures.js'
import { plansOf } from './cover-points.js'

/** Points of the site plan and of the roof plans. */
export const PLAN_POINTS: Readonly<Record<string, Judge>> = {
  'scale-and-north': (facts) => {
    const plans = plansOf(facts)
    if (plans.length === 0) return missing('no plan to scale is drawn')
    const without = plans.filter(
      (sheet) => !hasWords(sheet, /\bSCALE \S+" = /u) || !hasWords(sheet, /(?:^| )N(?: |$)/u),
    )
    if (without.length > 0) return missing(`no scale or north arrow on ${without.map(({ id }) => id).join(', ')}`)
    return present(
      plans.map(({ id }) => id),
      'scale with a bar, north arrow',
    )
  },
  'roof-covering': (facts) => {
    const framing = Object.entries(facts.input.project.structure?.framing ?? {})
    if (framing.length === 0) return missing('covering: not stated')
    return allOn(
      facts,
      'GS',
      framing.flatMap(([plane, { covering, covering_layers: layers }]): Needle[] => [
        [`covering of ${plane}`, covering?.replaceAll('_', ' ')],
        [`layers on ${plane}`, layers === undefined ? undefined : `${layers} layer`],
      ]),
    )
  },
  'site-plan': (facts) => {
    const plan = facts.input.project.site_plan
    const buildings = Object.entries(plan?.buildings ?? {})
    return allOn(facts, 'C', [
      ['lot lines', 'LOT LINE'],
      ...(buildings.length === 0
        ? ([['buildings', undefined]] as const)
        : buildings.map(([id, { name }]) => [`building ${id}`, name ?? id.replaceAll('_', ' ')] as const)),
      ['street', plan?.street?.name],
    ])
  },
  setbacks: (facts) => {
    const buildings = Object.keys(facts.input.project.site_plan?.buildings ?? {}).length
    if (buildings === 0) return missing('distances: no building is stated on the site plan')
    const [plan] = facts.sheets.filter(({ id }) => id.startsWith('C-'))
    const lengths = plan?.words.match(/(?<!LOT LINE )\b\d+'-\d+(?: \d+\/\d+)?"(?! =)/gu) ?? []
    if (plan === undefined || lengths.length < 2) return missing('distances to the lot lines: on no sheet')
    return present([plan.id], `${lengths.length} distances to lot lines`)
  },
  'corner-lot': (facts) => {
    const second = facts.input.project.site_plan?.second_street
    if (second === 'none') return notApplicable('the lot lies on one street (site_plan.second_street)')
    if (second === undefined)
      return missing('whether the lot lies on two streets: not stated (site_plan.second_street)')
    return allOn(facts, 'C', [['second street', second.name]])
  },
  'roof-plan': (facts) => {
    const { planes, modules } = facts.input.arrangement.values
    const used = Object.entries(planes).filter(([id]) => modules.some(({ roofPlane }) => roofPlane === id))
    if (used.length === 0) return missing('no roof plane with modules has an outline')
    return allOn(
      facts,
      'A',
      used.flatMap(([id, plane]): Needle[] => [
        [`plane ${id}`, `Roof plane ${id}`],
        [`edges of ${id}`, /\bEAVE\b/u],
        [`slope of ${id}`, /IN 12|\u00b0/u],
        ...Object.keys(facts.input.project.roof_planes[id]?.obstructions ?? {}).map((name): Needle => [
          name,
          name.replaceAll('_', ' '),
        ]),
        [`${plane.modules} modules of ${id}`, `Modules ${plane.modules}`],
      ]),
    )
  },
  'fire-access': (facts) => {
    const { project, arrangement } = facts.input
    if (project.codes?.residential === undefined) return missing('free strips: no residential or fire code is stated')
    const planes = Object.values(arrangement.values.planes)
    const needles: Needle[] = [
      ...(planes.some(({ pathways }) => pathways.length > 0)
        ? ([['pathways with their width', /\d+'-\d+(?: \d+\/\d+)?" FIRE ACCESS PATHWAY/u]] as const)
        : []),
      ...(planes.some(({ ridgeSetbackIn }) => ridgeSetbackIn > 0)
        ? ([['strip at the ridge', /STAYS? FREE ALONG THE RIDGE|STAY FREE ALONG .*RIDGE/u]] as const)
        : []),
    ]
    if (needles.length === 0) return notApplicable('the code asks for no pathway and no strip on these planes')
    return allOn(facts, 'A', needles)
  },
  'covered-share': (facts) => {
    const { project, arrangement } = facts.input
    const { planes, roofCoverageShare } = arrangement.values
    const strips = Object.values(planes).map(({ ridgeSetbackIn }) => ridgeSetbackIn)
    if (!strips.some((each) => each > 0 && each < 36))
      return notApplicable('no strip at a ridge is narrower than 36 in, so nothing hangs on the share')
    if (roofCoverageShare === null) return missing('share: the area of the whole roof is not stated')
    return allOn(facts, 'AG', [
      ['covered share of the roof', `modules over ${plainNumber(roofCoverageShare * 100, 0)} % of it`],
      ['sprinklers', project.roof_access?.sprinklered === undefined ? undefined : /SPRINKLER/u],
    ])
  },
  'raceway-route': (facts) => {
    const plan = facts.input.project.site_plan
    const drawn =
      plan?.raceway_route !== undefined ||
      Object.values(plan?.roof_planes ?? {}).some(({ raceway }) => raceway !== undefined)
    if (!drawn) return missing('raceway: its way is not stated (site_plan.raceway_route)')
    return allOn(facts, 'CA', [['raceway', /(?<!CLEAR OF THE )\bRACEWAY\b/u]])
  },
  'equipment-places': (facts) => {
    const equipment = Object.values(facts.input.project.site_plan?.equipment ?? {})
    const kinds = new Set(equipment.map(({ kind }) => kind))
    const lacking = (['utility_meter', 'main_panel'] as const).filter((kind) => !kinds.has(kind))
    if (lacking.length > 0)
      return missing(`${lacking.join(', ').replaceAll('_', ' ')}: no place stated (site_plan.equipment)`)
    const disconnects = Object.keys(facts.input.project.electrical?.disconnects ?? {}).length
    if (disconnects > 0 && !kinds.has('pv_disconnect'))
      return missing('disconnect: no place stated (site_plan.equipment)')
    return allOn(
      facts,
      'C',
      equipment.map(({ kind, name }): Needle => {
        const title = name ?? EQUIPMENT[kind][1]
        return [title, title]
      }),
    )
  },
  elevation: (facts) => {
    const [drawn] = sheetsOf(facts, 'CAE').filter((sheet) =>
      hasWords(sheet, /(?<!GROUND )\bELEVATION\b(?! FACTOR| OF THE)/u),
    )
    if (drawn !== undefined) return present([drawn.id], 'elevation')
    const wall = facts.sheets.find((sheet) => hasWords(sheet, 'From the array to the meter, not to scale'))
    return missing(
      wall === undefined
        ? 'elevation: on no sheet'
        : `elevation: ${wall.id} shows the equipment in a row, but no view of the building`,
    )
  },
  'parallel-to-roof': (facts) => {
    const { arrays } = facts.input.project
    const racks = Object.entries(arrays).filter(([, { module_tilt_deg: tilt }]) => tilt !== undefined)
    if (racks.length > 0)
      return missing(`array ${racks.map(([id]) => id).join(', ')} stands on racks, not parallel to the roof`)
    const over = facts.input.findings.filter(({ id }) => id === 'roof.module-outside')
    if (over.length > 0) return missing(over.map(({ message }) => message).join('; '))
    const flat = Object.values(arrays).every(({ mounting }) => mounting === 'laid_on_roof')
    const gaps = new Set(Object.values(arrays).map(({ standoff_in: gap }) => gap))
    return allOn(facts, 'GS', [
      ['parallel', 'PARALLEL TO THE ROOF'],
      ...(flat ? [] : [...gaps].map((gap): Needle => ['gap', gap === undefined ? undefined : inches(gap)])),
    ])
  },
}
