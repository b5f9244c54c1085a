import { own } from '../../values/index.js'

/** A matter that is larger than a word: how something of the program is meant to be used, or how far it may be trusted. */
export interface Topic {
  readonly title: string
  readonly paragraphs: readonly string[]
  /** Figures that stand better in columns. */
  readonly table?: { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] }
  /** Other words under which somebody may look for it. */
  readonly also?: readonly string[]
}

/** Topics, keyed as `explain` takes them, in the order in which a newcomer needs them. */
export const TOPICS: Readonly<Record<string, Topic>> = {
  'project-file': {
    title: 'How places, directions and units are written in a project file',
    paragraphs: [
      'Azimuth is clockwise from true north (180 is south), tilt from level, longitude east positive (all of the Americas are negative), hours in local standard time. The ending of a key is its unit.',
      'On a roof plane x runs along the eave to the right, seen from outside facing the slope, and y up the slope, both from the left end of the eave.',
      'schemas/project.schema.json holds every key with its unit, its range and an example. Editors that know YAML schemas complete from it: the first line of a new file names it. In a clone, `npm run --silent reference` writes all of it as one page, and `npm run --silent reference price-list` that of a price list. What changed from version to version stands in schemas/CHANGELOG.md.',
      'A stage asks only for its own parts of the file. `--set path=value` changes one value for one run.',
      'Safety inputs (wind, snow, framing, rail, mount, bus rating) have no default: what is missing is asked for, with the place where it is found. Everything else that is assumed is listed with its reason and its source.',
      'A file of a stranger, as a quote service gets it: `gablewatt SUBCOMMAND project.yaml ... --untrusted` runs the subcommand in a start of Node of its own, which reads only the program and the folder of the project, writes only the file of --out (in that folder) and starts neither a process nor a thread, by the permission model of Node; with 512 MB of memory, 60 s, and a quarter of the sizes of files that are read otherwise. Each project wants a folder of its own. That confines mistakes of the program; it is no wall against hostile code, which a project file cannot hold.',
    ],
    also: ['conventions', 'units', 'keys', 'coordinates', 'schema', 'untrusted', '--untrusted', 'quote-service'],
  },
  battery: {
    title: 'A home battery: what is worked out, and how far to trust it',
    paragraphs: [
      'equipment.storage_units holds the data sheet, storage says which unit, how many, what is kept for an outage and how it is controlled. Without storage.control it serves own use first: surplus charges, and the battery serves the house at any hour. Windows, a limit of demand, events and an export cap change that; in each hour the first that holds decides: reserve, event, limit of demand, window, own use.',
      '`payback` then works out the 8760 hours of the house with it, and all bills from what is left to import and export. Capacity fades from year to year, straight to what the warranty promises unless the project says otherwise; a year counts with what is left at its end. The warranty ends at the first of years, energy and cycles. `payback --optimum` tells what knowing every hour beforehand would save: a bound, never a forecast. `choose-size --storage 2` compares modules and units together.',
      'With storage.backup the essential loads are followed from every hour of the year, beginning with what the ordinary control left in the store. Power, starts of motors, neutral, shutdown and the output that the battery can hold in an island are checked apart. Never plan equipment that keeps a person alive on these hours.',
      'Hours hide what happens within them, so own use comes out some percent too high. Efficiencies are constant. What an inverter clips is not counted as charging a battery on its DC side.',
    ],
    also: ['storage', 'backup', 'outage'],
  },
  'made-up': {
    title: 'Values that are made up, and how they become yours',
    paragraphs: [
      '`new-project` writes a file that runs at once. What nobody has stated bears the marker !made_up between the key and its value: `basic_speed_mph: !made_up 115`. On a list or a map, such as `m410: !made_up` above the lines of a data sheet, it stands for all that lies under it.',
      'To make a value yours, put what is true in its place and take the marker away; where the made-up value is true, take the marker away alone. `--set path=value` states a value for one run, `--set path=null` takes a key away for one run.',
      'Until then each result that reads the value tells of it: a warning [project.made-up-safety] for what somebody could be hurt by, a note [project.made-up] for the rest. The sheets of a permit packet are stamped DRAFT, and the first lists the values. `check-project` lists all of them, stage by stage, and with --watch does so again each time the file is saved.',
      'The marker is a YAML tag. It stays with its value when a file is formatted or lines are moved; other programs that read the file have to be told of it (in editors: custom tags). It counts in the project file and in the file of its equipment.',
      '`new-project --parts wire,mounts,permit,money` writes what later stages need, and `--parts storage` a home battery with its wiring, all of it marked; with --add-to FILE it goes into a file that is there, without a change to what it holds. `new-project --ask` asks for place, roof, modules, bill and panel; --answers FILE takes the answers from a YAML file with one key a question: place, address, azimuth_deg, pitch_in_12, eave_ft, ridge_ft, slope_ft, eave_height_ft, equipment, modules, year_kwh, usd_per_kwh, fixed_usd_per_month, bus_a, main_a.',
    ],
    also: ['!made_up', 'made_up', 'marker', 'answers', 'new-project'],
  },
  output: {
    title: 'Where results go, and what their forms promise',
    paragraphs: [
      'Data go to stdout, everything else to stderr. NO_COLOR and --no-color are obeyed. `-` reads stdin.',
      'Exit code 0: done, nothing failed. 1: done, and the design fails a check. 2: wrong usage, or an invalid project or earlier result. 3: a file cannot be read or written. 70: a defect of the program.',
      '--out FILE writes the whole file or nothing, and replaces one only with --force. --use RESULT.json takes an earlier result of the same project instead of computing it again.',
      'Tables for people round so that rows add up to the sum below them (largest remainder): a row may stand one unit of its last digit off the nearest. JSON and CSV hold the figures themselves.',
      '--show-work prints each step with its formula, numbers and source; --json, --csv and --markdown are for programs and for papers. JSON results follow schemas/result.schema.json, their values schemas/values/, lines of a fleet schemas/fleet-line.schema.json; identical input gives identical bytes.',
      'Results, packets, lines of a fleet, baselines and journals carry the build of the program that made them and a seal, SHA-256 of their content; one whose seal does not fit is not used, nor by --use and --resume one of another build, unless --use-anyway says so. That shows damage and slips of the hand. It is no protection against forgery: anybody can put a new seal on a changed file.',
      'gablewatt verify-file FILE tells which build made a file, from which project, and whether it is as it was written; --project works it out anew. --sign and --key are for signatures with your own key, which do show whose a file is.',
      'Of the PDFs named under `documents` the packet takes over what their pages look like, and no scripts, links, form fields or attachments.',
    ],
    also: ['exit-codes', 'exit-code', 'json', 'csv', 'seal', 'files', 'signature', 'build'],
  },
  'energy-estimate': {
    title: 'How good is the energy estimate?',
    paragraphs: [
      'The measurements are known to be off by 4 to 6 % against each other (closure of the three radiometers; light on the plane against its transposition), so they can prove no more than about 5 % in light and 10 % in energy. They carry no licence and are not part of this project; in a clone, `npm run compare:measured -- FOLDER` repeats the comparison where they are at hand, and `npm run compare:methods -- FOLDER` compares the two methods on any folder of EPW files.',
      'From monthly means the day leans as mornings and afternoons of the climate sites differ. The figures of 60 stations below come from stations that were not used to choose the method, with the middle of each kind of day for its mean; at a house between stations about half of what the leaning gains is left in the east and two thirds on the Pacific coast (reckoned from the shares, not simulated).',
      'That a house is not a station weighs more: 2 to 6 % of the year by region and distance, up to 9 % in Alaska (values.climate.siting_error_pct), and it is in the uncertainty. Steep planes that face east on the southern Californian coast are the worst that is known: 4 to 6 % too high.',
      'Shade is compared in the tests with a ray caster that shares no geometry with the program: within 0.3 points of the light of each module. A year made from global radiation alone is off by 2 % towards the equator and 4 % on other planes.',
    ],
    table: {
      columns: ['Compared with', 'Result'],
      rows: [
        [
          'a second implementation of the same published equations, hourly weather, six planes (a test)',
          'within 0.3 % a year, 1.5 % of the mean month',
        ],
        [
          'monthly method against hourly method, 60 US stations, AC of the year: level',
          'bias 0.2 %, RMS 0.5 %, largest 1.3 %',
        ],
        ['the same, south-east to south-west, tilt up to 34 deg', 'bias 0.1 %, RMS 0.7 %, largest 2.5 %'],
        ['the same, tilt 60 deg', 'bias 0.0 %, RMS 0.9 %, largest 2.8 %'],
        ['the same, east and west, tilt 34 deg', 'bias 0.4 %, RMS 0.9 %, largest 3.1 %'],
        ['the same, east and west, tilt 60 deg', 'bias 0.1 %, RMS 1.2 %, largest 4.5 %'],
        [
          'this program on four public files, DC/AC 1.0 to 1.5 (a test): azimuth 135 to 225, tilt up to 34 deg',
          'bias 0.2 %, RMS 0.5 %, largest 1.4 %',
        ],
        ['the same, azimuth 90 and 270, tilt 18 and 34 deg', 'bias 0.5 %, RMS 0.7 %, largest 1.9 %'],
        ['the same, azimuth 90 and 270, tilt 60 deg', 'bias 0.5 %, RMS 1.1 %, largest 2.7 %'],
        [
          'a measured plant: 15 days, 18.9 kW, 14 years old, tropical coast, 10-minute data',
          'light on the plane +5.0 %, AC -5.6 % and -1.5 % at its two inverters, day-by-day scatter 1.9 %',
        ],
      ],
    },
    also: ['accuracy', 'validation'],
  },
  climate: {
    title: 'Which climate is used',
    paragraphs: [
      'The built-in climate is 1,008 sites of the public TMY3 data, 864 of them with design temperatures. One site alone is off by 5.7 % rms at its neighbours, so the default is the mean of up to eight near ones, weighted by distance and height (4.3 %); in the east, where single years scatter, one that sticks out is left out and named. `gablewatt list-sites --near 38.6,-121.5` shows them.',
      'An hourly file in EPW format (climate: { epw: weather.epw }), or a series of 5 to 60 minutes in other forms (climate: { file, kind }: typical-year CSV, the US solar radiation database, a station of your own with declared columns), brings the hours of the place; its clock is checked, gaps up to 3 days are filled and counted. examples/weather/ holds a public file, unchanged.',
      'TMY3 radiation and temperatures are US government data; the design temperatures come from published weather-file headers of the ASHRAE 2009 edition or are marked estimates, and each can be overridden in the project. dist/program/LICENSES.txt says more, with the licences of the fonts and of the packages inside the program.',
    ],
    also: ['weather', 'rights', 'data'],
  },
  installation: {
    title: 'How a house with several panels, feeders or an older system is stated',
    paragraphs: [
      'With one panel, `electrical.panel` and `electrical.connection` are enough. Otherwise `electrical.distribution` holds the tree: panels, feeders from panel to panel, taps on feeders, and sources that are there already. A panel that no feeder goes to is fed by the service; `connection.at` names the panel or tap that takes the PV system.',
      'Every source that runs beside the utility counts on each busbar and conductor on its way to the service, and each of them is judged by every rule of the edition; size-wire lists them with section, sum and limit. When none holds it lists the ways out in the order in which an electrician tries them, with what each reaches; a smaller main only with `electrical.load_calculation`, prices from `electrical.remedy_costs_usd`.',
      'What is not stated is not guessed: insulation and terminals count as 60 deg C, a breaker without a place as at the wrong end of its busbar. A power control system counts only with a dated document that shows its listing. A licensed electrician and the authority decide.',
    ],
    also: ['distribution', 'subpanel', 'feeder', 'service', 'tap', 'remedies'],
  },
  editions: {
    title: 'Which editions of the codes are there',
    paragraphs: [
      'NEC 2011, 2014, 2017, 2020, 2023 and 2026 and ASCE 7-10, 7-16 and 7-22 are there as data; another edition is refused. The project names one of each, as the building department has adopted it.',
      'NEC 2026 is known from secondary sources only: where they report no change, sections and numbers are those of 2023, and every result by it says so. What it changed in the load calculation of an existing dwelling is not known, so that is refused.',
      'gablewatt size-wire project.yaml --codes "NEC 2014,NEC 2023" sets editions side by side and shows what differs. --show-work gives every step in the order in which an inspector would check it, each with its section.',
    ],
    also: ['codes', 'code-edition', 'nec', 'asce'],
  },
  packet: {
    title: 'What the building department gets',
    paragraphs: [
      'draw-permit draws to true scale on 11x17, letter or A3: cover, site plan, a roof plan for each plane, attachment details, structural calculation, one-line diagram, schedules, electrical calculation and the labels of the edition at size; then your own specification sheets and letters from `documents`.',
      'Failing checks stop it (exit code 1) unless --draft. What an engineer has answered for stands on the letter that the project names among its documents; the letter is appended and named on the packet, and without its file the check fails.',
      '--svg FOLDER and --dxf FOLDER also write each sheet by itself. In a DXF file plans and details stand in the model at real size in inches, on layers of the national CAD guideline, and the layout named after the sheet is the paper; a sheet without a scale stands in the model at the size of the paper. Words of dimensions stay as they were drawn when points are moved.',
    ],
    also: ['permit', 'permit-packet'],
  },
  'bills-and-rates': {
    title: 'A tariff from the public database, and whether it gives your bills',
    paragraphs: [
      'import-rate rates.json makes the block `tariff` of a record of the public national database of utility rates that you saved (an answer of its service, a list, or one record). What would change a bill and no key can say is refused, all of it at once; --anyway leaves it out. What a record never says (taxes, rounding, true-up month, rules of banks and credits) is taken as it saves least, and listed.',
      'check-bill project.yaml bills.csv works out printed bills from their kWh and compares them to the cent. Columns: from, to (year-month-day), kwh, amount; where they are known kwh.PERIOD, export_kwh, export_kwh.PERIOD, generation_kwh, demand_kw, demand_kw.CHARGE, and lines in USD: energy, riders, fixed, demand, minimum, credit, surplus, taxes. Exit code 1 when bills differ.',
      'When bills differ, each number, base, rule and date of the tariff is changed by itself, and those changes after which every bill comes out to the cent are listed, the likeliest slip first: one digit, then a choice among few, then other values. Bills of much the same kWh leave several; lines of the bills tell them apart.',
      'Days: when a bill begins on the day on which the one before ended, the days are readings, and the first does not count; when it begins the day after, both count. --days states it. Half a cent goes up; tariff.rounding says whether each line is rounded or only the total. Energy of a bill that crosses seasons is spread evenly over its days, or over the hours of its period.',
    ],
    also: ['rates', 'check-bill', 'import-rate', 'tariff', 'bills'],
  },
  forms: {
    title: 'Filling PDF forms of the city or the utility',
    paragraphs: [
      'fill-form --list form.pdf prints the fields of a fillable form, --starter form.pdf a mapping to start from, and fill-form project.yaml form.pdf mapping.yaml --out filled.pdf fills it. --preview shows what goes into which field and from where; --flatten makes the fields part of the page.',
      'An entry of the mapping names a field and one of: from (where the value comes from), text (your own words), on (the state of a box or of radio buttons, as --list prints it). from is project. and a path of the project file, totals. and a name of the table, application.fields. with the name of a field of write-application and .value, or yield, wire, mounts, bom or payback and a path of its values as --json prints them; entries of lists go by their number from 0 or by their id.',
      'Beside from: format (decimals, thousands, unit, with_unit, date), translate (what is written for each value), equals (a box is ticked when the value is this one), optional (the field may stay empty). size_pt sets the size of the letters. must_stay_empty names fields that others fill, by_hand fields that a person fills later; a required field that is in none of them and stays empty is an error. form_sha256 tells when the form has changed.',
      'A flat page, such as a scan, has no fields: --starter then begins a mapping with place in place of fields. A place has a name (what is printed beside it), page, x_in and y_in (from the left and from the upper edge of the page as it is seen, to the left end of the line that the text stands on), width_in, lines and size_pt, and from or text as above; mark: true draws a cross with its middle there. What does not fit is an error and nothing is written. Look at the page before it is sent: what is printed on a scan is not read here.',
      'Signatures, their dates, initials and declarations are never filled. Forms that are locked, certified, signed or XFA alone are refused. What is cut, missing or no choice stops the form (exit code 1), and a mapping that asks for what the form does not have does too (exit code 2).',
    ],
    table: {
      columns: ['Total', 'What it is'],
      rows: [
        ['module_count', 'number of modules'],
        ['total_dc_kw', 'rated power of all modules, kW'],
        ['inverter_count', 'number of inverters, those of AC modules among them'],
        ['total_ac_kw', 'rated AC power of all inverters, kW'],
        ['module_list', 'number and name of each kind of module, as a text'],
        ['inverter_list', 'number and name of each kind of inverter, as a text; nothing for AC modules alone'],
      ],
    },
    also: ['form', 'pdf-forms', 'mapping'],
  },
  'many-houses': {
    title: 'A fleet of houses',
    paragraphs: [
      'gablewatt run-fleet template.yaml --table customers.csv runs all stages for every row. --baseline FILE compares with a saved run and fails when a number moved; --resume goes on after an interruption.',
      '--shard 2/8 runs an eighth, for a CI matrix or an array job of a cluster; the shards together equal the whole. For task TASK of TASKS, numbered from 0: --shard "$((TASK+1))/$TASKS" --jsonl --out "part-$TASK.jsonl", and then run-fleet --merge part-*.jsonl --out all.jsonl finds out whether every row is there once, from one build and one table, and joins them.',
      'Columns of your own, such as customer.phone, are declared in the template, under fleet.extra_columns; they pass through to the lines, --csv and the papers. --columns chooses what --csv holds. A table may have semicolons or tabs; --decimal-comma where decimals follow a comma.',
      '--out-dir houses --write price-list writes one price list of all items of all houses, to be filled in once and named in the template.',
      'examples/fleet/ holds sample projects, a template with a table, and the baseline that our own CI compares with.',
      'On a cluster each task of a job array works out one --shard, goes on from its own journal when it was killed, and --merge joins the parts: examples/cluster/ holds scripts for Slurm (tested with a real one, a killed task among it) and an indexed job for Kubernetes (its script is tested, no cluster of that kind).',
    ],
    also: ['fleet', 'shards', 'baseline', 'ci'],
  },
  'measured-production': {
    title: 'Whether a running system gives what it should',
    paragraphs: [
      'gablewatt review-output project.yaml production.csv tells three fine days from a good system: what these days should have given, with its range, and signs of dirt, a dead module, clipping, or a clock that is off.',
    ],
    also: ['monitoring', 'review'],
  },
  library: {
    title: 'The same stages from TypeScript or JavaScript',
    paragraphs: [
      "import { estimateYield, loadProject } from 'gablewatt'",
      "const { project, files } = loadProject({ path: 'project.yaml', overrides: [], allowOutside: false })",
      'const { values, findings } = estimateYield(project, files)',
      'Everything is typed, values.annual.ac_kwh for instance. In a clone, `npm run --silent reference:library` writes every function and type as one page.',
    ],
    also: ['api', 'import'],
  },
}

/** The topic of a word as somebody types it, with its key; undefined when there is none. */
export function findTopic(word: string): readonly [string, Topic] | undefined {
  const topic = own(TOPICS, word)
  return topic === undefined ? Object.entries(TOPICS).find(([, { also = [] }]) => also.includes(word)) : [word, topic]
}
