import type { StorageValues } from '../../electrical/index.js'
import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { storageSection, type StorageTopic } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import { plural, quantity } from './plan-facts.js'
import type { PlanSystem } from './plan-system.js'
import type { StepRule } from './step-rule.js'

const has = ({ wire }: PlanSystem): boolean => wire?.storage !== undefined
const hasBackup = ({ wire }: PlanSystem): boolean => wire?.storage !== undefined && wire.storage.backup !== null
const hasControl = ({ wire }: PlanSystem): boolean => wire?.storage !== undefined && wire.storage.power_control !== null

/** What follows from the storage; nothing without one. */
const of =
  <Part>(from: (storage: StorageValues) => readonly Part[]) =>
  ({ wire }: PlanSystem): readonly Part[] =>
    wire?.storage === undefined ? [] : from(wire.storage)

/** A section on storage of the edition that the wiring was sized by. */
const storage =
  (topic: StorageTopic) =>
  ({ edition }: PlanSystem): Source | undefined =>
    edition === undefined ? undefined : storageSection(edition, topic)

/** Setting and wiring the storage: its cells are never dead. */
export const STEPS_STORAGE: readonly StepRule[] = [
  {
    id: 'storage.place',
    title: 'Prepare the place of the storage',
    when: has,
    state: ({ wallUnits }) => (wallUnits ? 'open_strings_live' : 'dead'),
    tools: ['tape', 'listed alarm', 'posts, wheel stops or boards as the drawings have them'],
    tasks: [
      {
        says: of(({ places }) =>
          places.map(({ id, location, units }) => `${id.replaceAll('_', ' ')}: ${plural(units, 'unit')}, ${location}`),
        ),
        source: { document: 'residential or fire code in force', standing: 'secondary' },
      },
      {
        says: of(({ checks }) =>
          checks
            .filter(({ verdict }) => verdict === 'fail' || verdict === 'not_stated')
            .map(({ says }) => `open before anything is set: ${says}`),
        ),
      },
      {
        says: 'distances to doors, windows, gas meter and between units measured and written on the plan; wall or slab carries the weight of the units by their manual',
        source: WORK_SOURCES.makersSheet,
      },
    ],
    cautions: ['authority'],
    needs: 'size-wire',
  },
  {
    id: 'storage.set',
    title: 'Set and wire the storage',
    when: has,
    state: ({ wallUnits }) => (wallUnits ? 'open_strings_live' : 'dead'),
    tools: ['lifting gear or two and more people', 'insulated tools', 'calibrated torque tool', 'voltage tester'],
    quantities: of(({ name, count }) => [quantity(name, count)]),
    tasks: [
      {
        id: 'storage.never-dead',
        says: 'cells cannot be switched off: their terminals stay live with every switch open. No rings, watches or loose tools; covers stay on terminals that nobody works on; units are neither opened nor dropped',
        source: WORK_SOURCES.makersSheet,
      },
      {
        id: 'storage.damaged',
        says: 'a unit that fell, was wet, is swollen, warm or smells is not set and not charged: it goes outdoors away from the house, and the maker is called; in case of smoke everybody leaves and the fire service hears that a battery is involved',
        source: WORK_SOURCES.practice,
      },
      {
        id: 'storage.off',
        says: 'units off, their DC and AC switches open and locked, the breaker of their circuit off and locked; absence of voltage proved on the AC side at the place of work',
        source: WORK_SOURCES.absenceOfVoltage,
      },
      {
        says: of(({ circuits, panel }) =>
          circuits.map(
            ({ id, breaker_a: deviceA, kind }) =>
              `${id}: ${kind === 'ac_storage' ? `breaker ${deviceA ?? '?'} A in ${panel ?? 'its panel'}` : `DC device ${deviceA ?? '?'} A, listed for DC, at the battery`}`,
          ),
        ),
        source: storage('overcurrent'),
      },
      {
        says: of(({ disconnect }) => [
          `disconnect of the storage ${disconnect.at === null ? 'where the drawings have it' : { in_unit: 'in the unit', within_10_ft: 'within sight of the units', lockable_elsewhere: 'lockable open' }[disconnect.at]}${disconnect.rating_a === null ? '' : `, ${disconnect.rating_a} A`}`,
        ]),
        source: storage('disconnect'),
      },
      {
        when: hasBackup,
        says: of(({ backup }) =>
          backup === null
            ? []
            : [
                `isolating device${backup.isolating_device_a === null ? '' : `, ${backup.isolating_device_a} A,`} ahead of ${backup.panel}; chosen circuits moved to that panel with their neutrals, and no neutral shared with a circuit that stays`,
              ],
        ),
        source: storage('isolatingDevice'),
      },
      {
        when: hasControl,
        says: 'current sensors of the power control system round the conductors that the manual names, arrows the way it says',
        source: WORK_SOURCES.makersSheet,
      },
    ],
    cautions: ['energised-batteries', 'live-conductors', 'electrician'],
    needs: 'size-wire',
    stop: 'a licensed electrician makes or checks the connection of the storage; its maker may ask for people whom it has trained',
  },
]

/** After the system may run: commissioning of the storage. */
export const STEPS_STORAGE_TEST: readonly StepRule[] = [
  {
    id: 'storage.commission',
    title: 'Commission the storage',
    when: has,
    state: 'on_after_permission',
    tools: ['manual of the storage', 'clamp meter'],
    tasks: [
      {
        id: 'storage.commission-list',
        says: "the maker's list of commissioning done and signed; firmware, grid profile of the utility and reserve written down",
        source: WORK_SOURCES.makersSheet,
      },
      {
        id: 'storage.shutdown-test',
        says: of(({ disconnect }) =>
          disconnect.outside === 'none'
            ? ['the disconnect of the storage stops charging and discharging']
            : ['what stands outside stops the storage: output gone, state plainly shown'],
        ),
        source: storage('disconnect'),
      },
      {
        id: 'storage.island-test',
        when: hasBackup,
        says: 'island test: main switched off, chosen circuits go on, no voltage on the side of the utility; the rapid shutdown of the modules works meanwhile; main on again, storage returns to the grid by itself',
        source: storage('isolatingDevice'),
      },
      {
        id: 'storage.control-test',
        when: hasControl,
        says: of(({ power_control: control }) =>
          control === null
            ? []
            : [`power control: setting ${control.setting_a} A read on its screen, photographed, locked`],
        ),
        source: { document: 'NEC', place: '705.13', standing: 'secondary' },
      },
      {
        says: 'owner shown how to stop it, what its alarms mean, and that it is not for life support; instructions and contact for service left at the unit',
        source: WORK_SOURCES.practice,
      },
    ],
    cautions: ['energised-batteries', 'electrician', 'authority'],
    needs: 'size-wire',
  },
]
