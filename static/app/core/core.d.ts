// Written by internal/declare out of what the Go types say: make types.
//
// An answer leaves out what is empty, zero or false; an input may leave out, or set
// to null, whatever is marked so. Texts that are word ids are strings here.

/** How the core answers: with what was asked for, or with what refuses it. */
export type Answer<Out> =
  { ok: Out; findings?: undefined } | { ok?: undefined; findings: Finding[] };

/** The operations by their names. */
export interface Ops {
  asked: { in: AskedInput; out: AskedAnswer };
  'bill-lines': { in: ReplayInput; out: BillLinesAnswer };
  'card-changes': { in: ChangesInput; out: ChangesAnswer };
  cards: { in: CardsInput; out: CardsAnswer };
  due: { in: DueInput; out: Outlook };
  'due-notice': { in: NoticeInput; out: NoticeAnswer };
  calendar: { in: CalendarInput; out: TextAnswer };
  csv: { in: CsvInput; out: TextAnswer };
  'check-card': { in: CardInput; out: CheckAnswer };
  fault: { in: FaultInput; out: FaultAnswer };
  'filter-kind': { in: KindInput; out: KindAnswer };
  find: { in: Search; out: FindFound };
  'first-entries': { in: CardInput; out: PlacesAnswer };
  forms: { in: CalcAsk; out: Forms };
  garage: { in: GarageInput; out: GarageAnswer };
  'job-page': { in: PageInput; out: Page };
  'judge-pages': { in: JudgeInput; out: Judged };
  'last-job': { in: LastInput; out: LastAnswer };
  'lay-over': { in: LayInput; out: LayAnswer };
  limits: { in: Nothing; out: LimitsAnswer };
  'old-oil': { in: OldOilInput; out: OldOilAnswer };
  plan: { in: PlanInput; out: Plan };
  'read-entry': { in: EntryInput; out: EntryAnswer };
  'read-line': { in: LineAsk; out: LineReading };
  'read-page': { in: ManualInput; out: ManualAnswer };
  replay: { in: ReplayInput; out: State };
  roadside: { in: RoadsideInput; out: RoadsideAnswer };
  shelf: { in: ShelfInput; out: ShelfAnswer };
  survey: { in: SurveyInput; out: SurveyAnswer };
  'take-readings': { in: TakeInput; out: TakeAnswer };
  'tell-page': { in: TellInput; out: Telling };
  unsaved: { in: UnsavedInput; out: UnsavedAnswer };
  visit: { in: VisitInput; out: VisitAnswer };
  visits: { in: TodayInput; out: Today };
  wrenches: { in: WrenchInput; out: WrenchBook };
  'oil-suits': { in: OilSuitsInput; out: OilSuitsAnswer };
  bottles: { in: BottlesInput; out: BottlesAnswer };
  cool: { in: CoolInput; out: CoolAnswer };
  'run-out': { in: RunOutInput; out: RunOutAnswer };
  leak: { in: LeakInput; out: LeakAnswer };
  debris: { in: DebrisInput; out: DebrisAnswer };
  'torque-check': { in: TorqueCheckInput; out: TorqueCheckAnswer };
  'torque-guess': { in: TorqueGuessInput; out: TorqueGuessAnswer };
  wrench: { in: WrenchInput; out: WrenchAnswer };
  'o-ring': { in: ORingInput; out: ORingAnswer };
  'wrench-check': { in: WrenchCheckInput; out: WrenchCheckAnswer };
  turn: { in: TurnInput; out: TurnAnswer };
  'first-fill': { in: FirstFillInput; out: FirstFillAnswer };
  level: { in: LevelInput; out: LevelAnswer };
  'oil-curve': { in: OilCurveInput; out: OilCurveAnswer };
  'oil-mix': { in: OilMixInput; out: OilMixAnswer };
  fuel: { in: FuelInput; out: FuelAnswer };
  'oil-pressure': { in: OilPressureInput; out: OilPressureAnswer };
  'oil-volume': { in: OilVolumeInput; out: OilVolumeAnswer };
  convert: { in: ConvertInput; out: ConvertAnswer };
  bill: { in: BillInput; out: BillAnswer };
  gauge: { in: GaugeInput; out: GaugeAnswer };
}

/** A whole number of things. */
export type Count = number;

/** A place in a row, from 0, the higher the worse. */
export type Rank = number;

/** A year of the Gregorian calendar. */
export type Year = number;

/** How many letters a text may have. */
export type Letters = number;

/** How many bytes a text may have in UTF-8. */
export type Bytes = number;

/** Money in whole minor units of its currency, such as cents. */
export type MinorUnits = number;

/** Money in major units of whatever currency, with decimals. */
export type MajorUnits = number;

/** A part of the whole, which is 1; of a level, of the band between the marks. */
export type Share = number;

/** A part of the whole, which is 100. */
export type Percent = number;

/** A volume in L. */
export type Litres = number;

/** A volume in mL. */
export type Millilitres = number;

/** A volume in cm³. */
export type CubicCentimetres = number;

/** A torque in N·m. */
export type NewtonMetres = number;

/** A distance in km. */
export type Kilometres = number;

/** A temperature in °C. */
export type Celsius = number;

/** A kinematic viscosity in mm²/s. */
export type Viscosity = number;

/** A time in s. */
export type Seconds = number;

/** A time in min. */
export type Minutes = number;

/** A place in a picture, of its width from where it begins or of its height from below, which is 1000. */
export type Thousandths = number;

/** A length on the screen in CSS pixels. */
export type Pixels = number;

/** How large a millimetre is on the screen, in CSS pixels. */
export type PixelsPerMillimetre = number;

/** A number in the unit that the member `unit` beside it names. */
export type InUnit = number;

/** A number in the base unit of the quantity that the member `kind` beside it names. */
export type InBase = number;

/** A number in the unit that specs/ops.md names for the figure. */
export type InFigure = number;

/** Book is what a fact is told in. */
export type Book = 'bike' | 'visit' | 'oil' | 'shelf' | 'wrench';

/** Clutch says whether the clutch runs in oil. */
export type Clutch = 'wet' | 'dry';

/** Cooling is what takes the engine's heat away. */
export type Cooling = 'air' | 'oil' | 'liquid';

/** Device is what an oil level is read on. */
export type Device =
  'window' | 'stick-resting' | 'stick-screwed' | 'stick-pushed' | 'hole' | 'measured';

/** Drive is what a fastener is turned with. */
export type Drive = 'hexagon' | 'hexagon-key' | 'six-lobe' | 'hand' | 'strap';

/** EventKind is what an event says happened. */
export type EventKind =
  | 'done'
  | 'reading'
  | 'note'
  | 'undo'
  | 'finish'
  | 'timer'
  | 'problem'
  | 'look'
  | 'bill'
  | 'choose'
  | 'photo';

/** FactKind is what a fact says. All books have Undo; the others are those of their rooms. */
export type FactKind =
  | 'gone'
  | 'can'
  | 'drained'
  | 'handed-in'
  | 'item'
  | 'opened'
  | 'added'
  | 'used'
  | 'wrench'
  | 'checked'
  | 'used'
  | 'follows'
  | 'told'
  | 'figure'
  | 'aside'
  | 'back'
  | 'joined'
  | 'job'
  | 'odometer'
  | 'photo'
  | 'undo'
  | 'said'
  | 'found'
  | 'trouble'
  | 'answer'
  | 'signed'
  | 'handed';

/** FilterKind is a kind of oil filter. */
export type FilterKind = 'spin-on' | 'cartridge' | 'centrifugal' | 'unknown';

/** Goods are what may lie on a shelf. */
export type Goods = 'oil' | 'filter' | 'washer' | 'ring' | 'other';

/** Grade says how bad a finding is. */
export type Grade = 'refuse' | 'doubt' | 'note';

/** Kind is a kind of quantity. */
export type Kind =
  | 'text'
  | 'choice'
  | 'yes'
  | 'list'
  | 'taps'
  | 'grades'
  | 'grade'
  | 'marks'
  | 'service'
  | 'volume'
  | 'torque'
  | 'length'
  | 'temperature'
  | 'distance'
  | 'pressure'
  | 'mass'
  | 'duration'
  | 'angle'
  | 'viscosity'
  | 'density'
  | 'area'
  | 'share'
  | 'number';

/** Layout is how the bike keeps its oil. */
export type Layout =
  | 'wet-sump'
  | 'wet-sump-shaft'
  | 'separate-gearbox'
  | 'small-strainer'
  | 'v-twin-strainers'
  | 'two-compartment'
  | 'dry-sump'
  | 'dry-sump-frame'
  | 'separate-oils'
  | 'flat-twin'
  | 'scooter';

/** Measure says how a fastener is known to be tight. */
export type Measure = 'torque' | 'turn' | 'hand';

/** Motif is what a photo shows. */
export type Motif = 'plug' | 'pan' | 'filter' | 'seal' | 'odometer' | 'other';

/** Mount is where the open end of a mounted filter points. */
export type Mount = 'up' | 'sideways' | 'down';

/** NotePlace is the moment of the job that a note belongs to. */
export type NotePlace =
  | 'ready'
  | 'warm'
  | 'drain'
  | 'strainer'
  | 'filter-off'
  | 'look'
  | 'close'
  | 'filter-on'
  | 'fill'
  | 'first-start'
  | 'level'
  | 'leak'
  | 'ride'
  | 'panel'
  | 'waste';

/** OwnFigure is what a machine may have of its own. */
export type OwnFigure =
  | 'volume'
  | 'volume-filter'
  | 'grade'
  | 'thread'
  | 'torque'
  | 'size'
  | 'inner'
  | 'outer'
  | 'thickness'
  | 'number';

/** PagePart is a section of a page. */
export type PagePart = 'opened' | 'oil' | 'seen' | 'gates' | 'rest' | 'steps';

/** Phase is how far a job has come. */
export type Phase = 'open' | 'waiting' | 'closed';

/** PlaceWord is where the work is done. */
export type PlaceWord = 'garage' | 'roadside';

/** Progress is how far a visit has come. */
export type Progress = 'begun' | 'agreed' | 'asking' | 'ready' | 'gone' | 'working';

/** Purpose is what a fastener is for. */
export type Purpose =
  | 'drain-plug'
  | 'strainer-cap'
  | 'filter-cover-screw'
  | 'filter-can'
  | 'filter-or-cover'
  | 'filler-cap'
  | 'level-screw'
  | 'panel'
  | 'leave-alone';

/** Reason is why a bike was laid aside. */
export type Reason = 'sold' | 'gone' | 'other';

/** RingWith is what is put on a filter's new ring before it is mounted. */
export type RingWith = 'oil' | 'grease' | 'dry';

/** Role is what a circuit's oil serves first of all. */
export type Role = 'engine' | 'gearbox' | 'primary' | 'final-drive';

/** SealKind is a kind of washer, ring or gasket. */
export type SealKind =
  | 'flat-aluminium'
  | 'flat-copper'
  | 'folded'
  | 'bonded'
  | 'fibre'
  | 'o-ring'
  | 'square-ring'
  | 'paper';

/** Signal is a signal word in the sense of ANSI Z535.4 and ISO 3864-2. */
export type Signal = 'DANGER' | 'WARNING' | 'CAUTION' | 'NOTICE';

/** Stage is one of the seven stages of the job. */
export type Stage = 'ready' | 'warm' | 'drain' | 'look' | 'close' | 'fill' | 'settle';

/** Stance is how the bike stands when a level is read. */
export type Stance = 'upright' | 'side-stand' | 'centre-stand';

/**
 * Stand is how a reading stands: as it was read, then as the person decided about it. "" is of one
 * that is not sure, and about which nobody decided.
 */
export type Stand = 'sure' | 'taken' | 'refused' | 'left';

/** Standing says how far a figure can be trusted. */
export type Standing = 'manual' | 'measured' | 'decided' | 'estimated' | 'unknown' | 'standard';

/** StateWord is how hot the oil is when its level is read. */
export type StateWord = 'cold' | 'warm' | 'hot';

/**
 * System is the set of units that a person works in. It settles what "qt", "pt", "oz" and "gal"
 * mean.
 */
export type System = 'metric' | 'us' | 'imperial';

/** TellingWord is what is told of a bike. */
export type TellingWord = 'called' | 'plate' | 'frame' | 'words' | 'owner' | 'reach';

/** Thing is what can be asked of a bike. */
export type Thing =
  | 'drain'
  | 'filter'
  | 'strainer'
  | 'filler'
  | 'level-screw'
  | 'oil'
  | 'volume'
  | 'grade'
  | 'level'
  | 'interval'
  | 'torque'
  | 'tool'
  | 'washer'
  | 'engine'
  | 'gearbox'
  | 'primary'
  | 'final-drive'
  | 'none';

/** Waste is a kind of old oil that is kept apart from the others until it is handed in. */
export type Waste = 'engine' | 'gear' | 'spoiled';

/** AskedInput is a card, and the things that are asked of it. */
export interface AskedInput {
  card: Card;
  bench?: Bench | null;
  things: Thing[];
}

/** Card is a bike's card. */
export interface Card {
  format: string;
  version?: Count;
  id: string;
  /** an example that belongs to no real machine */
  invented?: boolean;
  make: string;
  model: string;
  yearFrom?: Year;
  yearTo?: Year;
  layout: Layout;
  engine?: Engine;
  sources?: Source[];
  circuits?: Circuit[];
  /** the manual's own chart of grades over the air, of all oils */
  chart?: ChartRow[];
  bolts?: Bolt[];
  filters?: Filter[];
  strainers?: Strainer[];
  interval?: Interval;
  /** the owner's or the manual's, in the card's own language */
  notes?: string[];
  /** those that belong to a moment of the job */
  notesAt?: NoteAt[];
  /** the words of a manual that parts of the card come from */
  quotes?: Quote[];
}

/** Engine is what the engine is. */
export interface Engine {
  cylinders?: Count;
  /** cm³ */
  displacement?: CubicCentimetres;
  cooling?: Cooling;
  clutch?: Clutch;
  /** it has no oil lamp, nor anything else that shows the pressure */
  noLamp?: boolean;
  /** oil that runs back into the tank is seen through its filler */
  returnSeen?: boolean;
  /** a belt drives the wheel, and nothing can be put in neutral */
  noNeutral?: boolean;
}

/** Source is a document that figures of the card come from. */
export interface Source {
  id: string;
  title: string;
}

/** Circuit is one oil of the bike: what it is, how much, how its level is read. */
export interface Circuit {
  id: string;
  role: Role;
  /** WetClutch: a clutch runs in this oil. */
  wetClutch?: boolean;
  oil?: OilNeed;
  /** volume when the filter stays */
  oilOnly?: CardFigure;
  /** volume when the filter is changed too */
  withFilter?: CardFigure;
  /** volume of a stripped and dry engine: never for an oil change */
  dry?: CardFigure;
  /** EveryNth: the oil is due at each nth oil change of the engine (1 = each). */
  everyNth?: Count;
  /** of an oil that has one of its own; the engine's is the card's */
  interval?: Interval;
  warm?: Warming;
  level?: CardLevel;
}

/** OilNeed is the oil that the card asks for. */
export interface OilNeed {
  /** SAE J300 or SAE J306 grades, the first being the usual one */
  grades?: string[];
  /** JASO T903 marks that suit, for instance MA and MA2 */
  marks?: string[];
  /** API service category, at least */
  service?: string;
  standing?: Standing;
  source?: string;
  page?: string;
  method?: string;
}

/** CardFigure is a quantity with its standing. An absent figure is an unknown one. */
export interface CardFigure {
  value?: InUnit;
  to?: InUnit;
  unit?: string;
  standing: Standing;
  source?: string;
  page?: string;
  method?: string;
  kept?: string;
}

/** Interval is when the oil is due again, whichever comes first. */
export interface Interval {
  distance?: CardFigure;
  time?: CardFigure;
  /** of running, where a manual counts those */
  hours?: CardFigure;
  /** of a new or rebuilt engine, counted from its beginning */
  first?: CardSpan;
  /** in severe use; what it leaves out is as usual */
  severe?: CardSpan;
}

/** CardSpan is how long an oil may stay in, whichever comes first. */
export interface CardSpan {
  distance?: CardFigure;
  time?: CardFigure;
  /** of running, where a manual counts those */
  hours?: CardFigure;
}

/** Warming is how warm the manual wants the oil to be when it is let out. */
export interface Warming {
  /** a temperature */
  target?: CardFigure;
  /** how long the engine is run for that */
  time?: CardFigure;
}

/**
 * CardLevel is how the oil level is read. State, stance, wait and device are four separate facts
 * with no default: each alone can move the reading by the whole band, so what is empty is asked
 * for. Few manuals say how long the engine runs first: of the others nothing is missing.
 */
export interface CardLevel {
  device?: Device;
  state?: StateWord;
  stance?: Stance;
  /** how long the engine runs before it is stopped to read */
  run?: CardFigure;
  wait?: CardFigure;
  /** volume between the marks */
  band?: CardFigure;
  /** where on the bike, in the card's own words */
  where?: string;
}

/**
 * ChartRow is a row of the manual's own chart: a grade, and the air for which it is. An end that is
 * absent is open.
 */
export interface ChartRow {
  /** id of the oil that it is of */
  circuit: string;
  grade?: string;
  from?: Degrees;
  to?: Degrees;
}

/** Figure is a quantity with its standing. An absent figure is an unknown one. */
export interface Degrees {
  value?: InUnit;
  to?: InUnit;
  unit?: string;
  standing: Standing;
  source?: string;
  page?: string;
  method?: string;
  kept?: string;
}

/**
 * Bolt is a fastener: a plug, a cap, a screw, a spin-on filter, or what closes a filter whose kind
 * is not known.
 */
export interface Bolt {
  id: string;
  purpose: Purpose;
  /** id of the circuit it closes */
  circuit?: string;
  /** id of the filter or strainer it holds */
  of?: string;
  /** id of the fastener, filter or strainer right in front, which comes off first */
  behind?: string;
  /** where on the bike, in the card's own words */
  place?: string;
  /** how many alike; 0 means one */
  count?: Count;
  /** in which order they are tightened, and which is the longer one */
  order?: string;
  /** oil runs out here */
  drains?: boolean;
  /** and out of the oil tank or the frame, not out of the crankcase */
  tank?: boolean;
  magnet?: boolean;
  /** "M12x1.5", "3/4-16 UNF" */
  thread?: string;
  drive?: Drive;
  size?: CardFigure;
  torque?: CardFigure;
  /** after the gasket touches */
  turn?: CardFigure;
  seal?: Seal;
}

/** Seal is a washer, ring or gasket that is new at every change. */
export interface Seal {
  kind: SealKind;
  inner?: CardFigure;
  outer?: CardFigure;
  thickness?: CardFigure;
  count?: Count;
}

/** Filter is an oil filter that is changed, or a centrifugal one. */
export interface Filter {
  id: string;
  kind: FilterKind;
  circuit: string;
  mount?: Mount;
  /** what a new ring of it gets, as the manual has it */
  ringWith?: RingWith;
  /** EveryNth: due at each nth oil change (1 = each). */
  everyNth?: Count;
  /** where it has one of its own */
  interval?: Interval;
  place?: string;
  /** id of the fastener, filter or strainer right in front, which comes off first */
  behind?: string;
  /**
   * What a new one is held against: the thread that a spin-on filter is screwed onto, the outer
   * diameter of its sealing ring or of a cartridge, and how tall it is.
   */
  thread?: string;
  ring?: CardFigure;
  height?: CardFigure;
  /** the part number that the owner goes by, as he wrote it */
  ownNumber?: string;
  seals?: Seal[];
}

/** Strainer is a mesh that is cleaned and put back. */
export interface Strainer {
  id: string;
  circuit: string;
  /** EveryNth: cleaned at each nth oil change (1 = each). */
  everyNth?: Count;
  /** where it has one of its own */
  interval?: Interval;
  place?: string;
  /** id of the fastener, filter or strainer right in front, which comes off first */
  behind?: string;
  seals?: Seal[];
}

/** NoteAt is a note for one moment of the job, before the act. */
export interface NoteAt {
  at: NotePlace;
  /** in the card's own language */
  text?: string;
}

/**
 * Quote are words of a manual, and what of the card comes from them: figures and words alike,
 * several where one line of the manual says several things.
 */
export interface Quote {
  /** as they stand in the manual */
  words: string;
  /** id of one of the card's sources */
  source?: string;
  page?: string;
  of?: Quoted[];
}

/**
 * Quoted is one thing that comes from the words of a manual. It is called by the id of its part,
 * and not by its place, so that it stays with it; and it holds what was said there: once the card
 * says something else, by whichever hand, nothing of it is from those words.
 */
export interface Quoted {
  /** as Slot has it */
  at: string;
  /** what the card said when it was taken from there */
  says: string;
}

/**
 * Bench is what is true here today. Its zero value is a garage with metric units, where the filter
 * is changed and every circuit due at each change is done.
 */
export interface Bench {
  system?: System | null;
  place?: PlaceWord | null;
  /** KeepFilter: the filter stays on today. */
  keepFilter?: boolean | null;
  /**
   * Circuits are the ids of the circuits done today; empty means those that the card wants at each
   * change.
   */
  circuits?: string[] | null;
  /**
   * Also are the ids of the strainers and centrifugal filters not due at each change that are
   * cleaned today all the same; any other id does nothing.
   */
  also?: string[] | null;
  /** Outside is the air expected until the next change, as typed: "20 °C", "-5 to 30 °C". */
  outside?: string | null;
  /** Severe: the bike is used hard, so that its oil is due earlier. */
  severe?: boolean | null;
  /**
   * GetHome: the short form of the job, to top up or to close what leaks and get home. It is no oil
   * change.
   */
  getHome?: boolean | null;
  /** Helper: somebody helps. */
  helper?: boolean | null;
}

/** AskedAnswer are the answers. */
export interface AskedAnswer {
  answers?: Reply[];
}

/**
 * Reply is what a card knows of one thing that was asked: of an oil, of a fastener, or of how long
 * the oil lasts. Its figures are those of the plan.
 */
export interface Reply {
  /** word id of what it is told of */
  of: string;
  /** of a fastener, in the card's words */
  place?: string;
  count?: Count;
  figures?: ShownFigure[];
  /** as in plan.BoltSheet */
  tool?: string[];
  thread?: string;
  /** how a level is read */
  lines?: Line[];
  /** the card has nothing of that kind */
  lacks?: boolean;
}

/**
 * ShownFigure is a figure ready to be read: its name and texts, and how far it can be trusted. A
 * figure that is not known has no text, and Lookup says where to find it.
 */
export interface ShownFigure {
  /** word id */
  name: string;
  /** in the person's units first */
  texts?: string[];
  standing?: Standing;
  /** title of the document */
  source?: string;
  page?: string;
  /** in the card's words, or a word id after "@" */
  method?: string;
  kept?: string;
  /** the words of the manual that it comes from */
  quote?: string;
  /** word id; only for what is not known */
  lookup?: string;
  /** Values fill a text that is a word id after "@". */
  values?: { [name: string]: string };
  /**
   * Low and High are the figure itself, in the unit that specs/ops.md names: only where a
   * calculation gives them.
   */
  low?: InFigure;
  /**
   * Low and High are the figure itself, in the unit that specs/ops.md names: only where a
   * calculation gives them.
   */
  high?: InFigure;
}

/** Line is a sentence to be said. */
export interface Line {
  /** word id */
  word: string;
  /** fill it; one that begins with "@" is a word id itself */
  values?: { [name: string]: string };
  /** it says that something is not known */
  unknown?: boolean;
}

/** ReplayInput is a job: what it is planned from, and its events. */
export interface ReplayInput {
  card: Card;
  bench?: Bench | null;
  steps?: string[] | null;
  /** time; empty where that isn't known */
  started?: string | null;
  events?: Event[] | null;
  /**
   * Beside are other contents under ids of Events, which came from elsewhere. What stands in Events
   * counts until an event of the kind Choose says otherwise.
   */
  beside?: Event[] | null;
  /**
   * Adding: the last of Events is about to be written. What a record holds is taken as it is; a new
   * event is refused where the plan doesn't ask for it.
   */
  adding?: boolean | null;
  /** on the same bike; nil where there is none */
  last?: Past | null;
}

/**
 * Event is one thing that happened during a job. Events are never changed and never removed; a
 * mistake is mended by an Undo event.
 */
export interface Event {
  id?: string;
  /** RFC 3339 in UTC with milliseconds, "2026-11-25T10:09:01.000Z", as the phone's clock told it */
  time?: string;
  /**
   * Seq is the place of the event in its job, from 1: how many events the job had before it, and
   * one. Zero in events of earlier versions.
   */
  seq?: Count;
  /** the phone's own day, "2026-11-25"; empty in events of earlier versions */
  day?: string;
  kind?: EventKind;
  /** id of the step */
  step?: string;
  /** of a reading: one of the Ask words; of a photo: what it shows */
  what?: string;
  /**
   * About is the circuit or fastener of a reading, or the event that an undo cancels or a choice is
   * about.
   */
  of?: string;
  /** as typed */
  value?: string;
  text?: string;
  /** of a timer: when it ends, in the form of Time */
  until?: string;
  /** Signs are answers by question: of a problem, and of a look by the names of debris.Asks. */
  signs?: { [name: string]: string };
  manner?: string;
}

/** Past is an earlier job on the same bike, as it is stored. */
export interface Past {
  card: Card;
  bench?: Bench | null;
  /** ids of the steps that it began with; empty where they aren't known */
  steps?: string[] | null;
  /** time; empty where that isn't known */
  started?: string | null;
  events?: Event[] | null;
  /**
   * Beside are other contents under ids of Events, which came from elsewhere. What stands in Events
   * counts until an event of the kind Choose says otherwise.
   */
  beside?: Event[] | null;
  /**
   * Adding: the last of Events is about to be written. What a record holds is taken as it is; a new
   * event is refused where the plan doesn't ask for it.
   */
  adding?: boolean | null;
}

/**
 * BillLinesAnswer are the lines proposed, and the counts that a bill takes from them and not from
 * its estimate.
 */
export interface BillLinesAnswer {
  lines?: Item[];
  recounted?: { [name: string]: string };
}

/** Item is a part or a tool to lay out. */
export interface Item {
  /** word id */
  word: string;
  values?: { [name: string]: string };
  count?: Count;
  /**
   * Against is what a part is held against before it is fitted: texts, or word ids after "@" that
   * the values fill.
   */
  against?: string[];
}

/** ChangesInput are two texts of one card, the earlier one first. */
export interface ChangesInput {
  from: Card;
  to: Card;
  system?: System | null;
}

/** ChangesAnswer is where they differ. */
export interface ChangesAnswer {
  changes?: Change[];
}

/** Change is one thing that differs. */
export interface Change {
  /** of what: a word id; empty for the bike as a whole */
  part?: string;
  /** where that is, in the card's own words */
  place?: string;
  /** word id of what differs */
  word: string;
  /** Before and After are what the cards say; nil where one says nothing. */
  before?: ShownFigure;
  /** Before and After are what the cards say; nil where one says nothing. */
  after?: ShownFigure;
  /** Origin: both say the same, and it differs where they have it from. */
  origin?: boolean;
}

/** CardsInput is a set of cards to be listed, canonical with the text of each. */
export interface CardsInput {
  cards: Card[];
  bench?: Bench | null;
  canonical?: boolean | null;
}

export interface CardsAnswer {
  bikes?: Listed[];
  findings?: Finding[];
}

/** Listed is a line in the list of bikes; place and text are given with the canonical text only. */
export interface Listed {
  /** of its card */
  id: string;
  /** make and model */
  name: string;
  years?: string;
  /** word id */
  layout?: string;
  invented?: boolean;
  oils?: Oil[];
  gaps?: Count;
  /** in the input */
  place?: Count;
  /** canonical */
  text?: string;
}

/** Oil is the sheet of one circuit: what goes in and how much. */
export interface Oil {
  circuit: string;
  /** word id */
  role: string;
  today?: boolean;
  /** Due is the volume for today; Figures are the others on the card. */
  due: ShownFigure;
  figures?: ShownFigure[];
  grades?: string[];
  marks?: string[];
  service?: string;
  /** the standing of grade and mark */
  need: ShownFigure;
  /**
   * Chart is the grade that the card's chart gives for the air expected; Rows are all that it says.
   * Only where the card has a chart for the oil.
   */
  chart?: ShownFigure;
  rows?: ShownFigure;
  /**
   * Read is what the card knows of how its level is read: how long the engine runs before, and the
   * wait.
   */
  read?: ShownFigure[];
  /** Quoted are the words that come from the words of a manual. */
  quoted?: ShownFigure[];
}

/**
 * Finding is one remark of a check. Code is an id of the word catalogue ("finding.<code>" says what
 * is wrong, "finding.<code>.do" what to do about it); Where is an RFC 6901 JSON pointer into the
 * input; Values fill the placeholders of the sentence.
 */
export interface Finding {
  code: string;
  where: string;
  grade: Grade;
  values?: { [name: string]: string };
}

/** DueInput is the record of a bike: its jobs, the newest last. */
export interface DueInput {
  system?: System | null;
  today?: string | null;
  jobs?: Past[] | null;
  /** what the odometer showed between them */
  read?: OdometerReading[] | null;
}

/** OdometerReading is what the odometer of a bike showed between two jobs. */
export interface OdometerReading {
  /** of the fact that tells it */
  id?: string;
  /** the phone's own, "2026-11-30" */
  day?: string;
  /** time, which puts those of one day in order */
  at?: string;
  km?: Kilometres;
}

/** Outlook is what the record of a bike says about its next change of oil. */
export interface Outlook {
  oils?: DueOil[];
  /**
   * Grade is that of the most urgent oil (due.Grade), Remind the first day of them all, for lists
   * and the first screen.
   */
  grade?: Rank;
  remind?: string;
  /** circuit of the most urgent oil of which something is known */
  first?: string;
  /** the bike is used hard, as the newest job has it */
  severe?: boolean;
  /** what is ridden in a month; nil while not known */
  pace?: ShownFigure;
  /** Readings are the odometer readings that the pace comes from, Since the day of the first. */
  readings?: Count;
  since?: string;
  /** of the odometer; nil where it was never read */
  last?: LastReading;
  /** the oldest first */
  uses?: Use[];
  findings?: Finding[];
}

/** DueOil is when an oil is due. Days are full-dates, months "2027-03". */
export interface DueOil {
  circuit: string;
  /** word id */
  role: string;
  /** word id */
  verdict: string;
  values?: { [name: string]: string };
  /** due.Grade */
  grade?: Rank;
  /** sorts the oils of many bikes, the most urgent first */
  order?: string;
  /** something is known of it: when it was changed, or when it is due */
  known?: boolean;
  /** day of the last change; empty when the record has none */
  changed?: string;
  /** odometer then */
  changedAt?: string[];
  /** odometer at which it is due */
  at?: string[];
  /** counter of hours at which it is due */
  hours?: string;
  /** by time */
  day?: string;
  /**
   * From and To are the months between which the first of both comes, by what is ridden. Without To
   * it can't be said, without From time comes first or nothing is known.
   */
  from?: string;
  /**
   * From and To are the months between which the first of both comes, by what is ridden. Without To
   * it can't be said, without From time comes first or nothing is known.
   */
  to?: string;
  /** word id: what comes first */
  why?: string;
  /** distance from the last reading to At */
  left?: string[];
  /** day for a calendar; empty when nothing is known */
  remind?: string;
  /** nil where one of two limits isn't known */
  plot?: Plot;
  /** Intervals are the card's figures, as the bike is used. */
  intervals?: ShownFigure[];
}

/**
 * Plot is the picture of a counter between a change and both limits, with what it says. Places are
 * thousandths of its width and height (due.Plot).
 */
export interface Plot {
  read?: Place[];
  limit: Place;
  today?: Thousandths;
  middle?: Place[];
  spread?: Place[];
  /** on the side of time */
  ticks?: Tick[];
  /** on the side of the counter */
  marks?: Mark[];
  /**
   * Word says what the picture says: which limit comes first by what is ridden, that nobody can
   * tell yet, or that one is passed. Only the first is an estimate: about what it will have come to
   * on the day, or that the limit of the counter comes before.
   */
  word: string;
  values?: { [name: string]: string };
}

/**
 * PlotPoint is a place in a picture, in thousandths of its width from where it begins and of its
 * height from below.
 */
export interface Place {
  x?: Thousandths;
  y?: Thousandths;
}

/** DayTick is the first of a month, on the side of time. */
export interface Tick {
  x?: Thousandths;
  day: string;
}

/** Mark is a round count that is marked. */
export interface Mark {
  y?: Thousandths;
  texts?: string[];
}

/** LastReading is what the odometer showed last. */
export interface LastReading {
  /** of the fact that tells it; empty where a job does */
  id?: string;
  day: string;
  texts?: string[];
}

/** Use is the oil used between two changes, or what came in instead. */
export interface Use {
  /** days */
  from?: string;
  /** days */
  to?: string;
  /** ridden between; empty where that isn't known */
  distance?: string[];
  /** oil */
  lost?: string[];
  /** what came in; then there is no rate, and nothing lost */
  came?: string[];
  /** oil for the distance Per */
  rate?: string;
  per?: string;
  /** word id of due.Use */
  use?: string;
  /** word id of due.Trend; empty for the first */
  trend?: string;
  /** word id: measured by level or by what was poured and drained */
  method?: string;
  /** Help is the calculation that says what came in; nil where nothing did. */
  help?: Help;
}

/**
 * Help is a calculation that answers what a step raises: an operation of the core, and what the
 * card knows of its input.
 */
export interface Help {
  op: string;
  given?: { [name: string]: string };
}

/**
 * NoticeInput are the bikes that the phone remembers, each with the day from which it is to be
 * looked at.
 */
export interface NoticeInput {
  bikes?: NoticedBike[] | null;
  today: string;
  notified?: string | null;
  asked?: string | null;
  now: string;
}

export interface NoticedBike {
  id?: string | null;
  name?: string | null;
  remind?: string | null;
  read?: string | null;
}

export interface NoticeAnswer {
  bike?: string;
  ask?: string;
}

/** CalendarInput are days to remember; the sentences are the page's. */
export interface CalendarInput {
  stamp: string;
  maker?: string | null;
  entries: CalendarEntry[];
}

/** CalendarEntry is one day to remember. */
export interface CalendarEntry {
  uid: string;
  day: string;
  summary: string;
  description?: string | null;
}

/** TextAnswer is a file for another program. */
export interface TextAnswer {
  text?: string;
}

/**
 * CsvInput is a table: what kind of thing each column holds, and its cells, row by row, amounts in
 * base units.
 */
export interface CsvInput {
  system?: System | null;
  comma?: boolean | null;
  kinds?: string[] | null;
  cells?: string[] | null;
}

/** CardInput is the input of an operation that needs no more than a card. */
export interface CardInput {
  card: Card;
}

/**
 * CheckAnswer is the answer of a check: what was found, and what of the card comes from the words
 * of a manual.
 */
export interface CheckAnswer {
  findings?: Finding[];
  quotes?: QuotedAt[];
}

/** QuotedAt is a quote as it is shown: the place that it is of, and its words. */
export interface QuotedAt {
  /** JSON pointer into the card */
  at: string;
  words: string;
  /** of the document */
  title?: string;
  page?: string;
}

/** FaultInput is a problem of the table, with what was answered and is at hand. */
export interface FaultInput {
  table: Table;
  id: string;
  answers?: { [name: string]: string } | null;
  hand?: string[] | null;
}

/** Table is all that is known of what can go wrong. */
export interface Table {
  format?: string | null;
  version?: Count | null;
  /** the possible answers of each, blanks between */
  questions?: { [name: string]: string } | null;
  /** signal word of each caution, by its word id */
  warns?: { [name: string]: string } | null;
  faults?: Fault[] | null;
}

/** Fault is one problem, as one sees it. Of its rows the first that holds counts. */
export interface Fault {
  id: string;
  group?: string | null;
  /** one of Doors */
  door?: string | null;
  /** it stands before the doors too, since it can't wait */
  top?: boolean | null;
  /** steps of a job, without "step.", at which it stands on top */
  at?: string[] | null;
  /** first aid comes before it */
  aid?: boolean | null;
  /** the calculation that judges it more closely */
  calc?: string | null;
  /** ids of its questions */
  asks?: string[] | null;
  /** what may be at hand that changes the answer */
  hand?: string[] | null;
  rows?: Row[] | null;
}

/**
 * Row is a rule: when the answers are such and these things are at hand, that follows. All but
 * Outcome are word ids; Sure is "sure", "likely" or "guess".
 */
export interface Row {
  /** by question: the answers that fit, blanks between */
  when?: { [name: string]: string } | null;
  /** all of them are at hand */
  with?: string[] | null;
  outcome?: string | null;
  /** how far it may be ridden gently */
  to?: string | null;
  why?: string | null;
  now?: string[] | null;
  limits?: string[] | null;
  home?: string[] | null;
  /** what has to be seen before it is ridden again */
  until?: string[] | null;
  warns?: string[] | null;
  sure?: string | null;
  source?: string | null;
}

/** FaultAnswer is what follows, with its cautions' signal words. */
export interface FaultAnswer {
  outcome?: string;
  to?: string;
  open?: string[];
  other?: string[];
  why?: string;
  feared?: boolean;
  warns?: Warn[];
  now?: string[];
  limits?: string[];
  home?: string[];
  until?: string[];
  sure?: string;
  source?: string;
}

/**
 * Warn is a caution of a step: its signal word and the word id of its text, which is one sentence
 * of the hazard and how to avoid it; with ".more" behind it, what happens otherwise and what else
 * helps.
 */
export interface Warn {
  signal: Signal;
  word: string;
  /**
   * Short: an earlier step of the job says it whole. Here the one sentence stands, and the rest
   * opens from it.
   */
  short?: boolean;
}

/** KindInput is a card, however unfinished, and what somebody saw of a filter of it. */
export interface KindInput {
  card: Card;
  filter: string;
  kind: FilterKind;
}

/** KindAnswer is the card with a filter of that kind. */
export interface KindAnswer {
  card?: Card;
}

/**
 * Search is what is typed, and what it is looked for in. Its texts are plain: without accents and
 * capitals.
 */
export interface Search {
  typed: string;
  /**
   * Lines are the bikes of the list, each as the words that find it; Volumes are theirs as they are
   * shown, with their unit.
   */
  lines: string[];
  /**
   * Lines are the bikes of the list, each as the words that find it; Volumes are theirs as they are
   * shown, with their unit.
   */
  volumes?: string[] | null;
  /**
   * Names says how people call each of Things in their language, and what they say beside it that
   * asks for nothing (None), each a list with commas.
   */
  names?: { [name: string]: string } | null;
  system?: System | null;
}

/** FindFound is what a search found. */
export interface FindFound {
  /** places in the list, in its order */
  fits?: Count[];
  /** nothing stands there as it was typed: these differ by a letter */
  near?: boolean;
  /** the few bikes of which the things are asked */
  about?: Count[];
  /** that are asked for; of no bike yet where About is empty */
  things?: Thing[];
}

/** PlacesAnswer are places in a card, as pointers into it. */
export interface PlacesAnswer {
  places?: string[];
}

/** CalcAsk says for which forms one asks. */
export interface CalcAsk {
  system?: System | null;
  /** "bill" for the bill's form; else those at the bench */
  of?: string | null;
}

/** Forms is what calculations ask for. */
export interface Forms {
  forms?: Form[];
}

export interface Form {
  op: string;
  caution?: string;
  fields?: Field[];
}

/** Field is a field as the page draws it; unit is what a bare number is read in. */
export interface Field {
  name: string;
  /** of a quantity, or one of those above */
  kind: Kind;
  needed?: boolean;
  /** asked at once although it isn't needed */
  front?: boolean;
  unit?: string;
  low?: Percent;
  high?: Percent;
  letters?: Letters;
  /** several lines may be typed */
  lines?: boolean;
  /** that may be chosen */
  words?: string[];
  /** a word's word id is family + word; "": it stands for itself */
  family?: string;
  rows?: Field[];
  /** name of a field, with one of whose answers in when this one is asked */
  on?: string;
  when?: string[];
}

/** GarageInput is what was told of any number of bikes. */
export interface GarageInput {
  facts?: Fact[] | null;
  adding?: boolean | null;
}

/** Fact is one thing that somebody told. */
export interface Fact {
  book?: Book | null;
  /** the subject, an id */
  of?: string | null;
  /** its own among those of its subject */
  id?: string | null;
  kind?: FactKind | null;
  /** RFC 3339 in UTC with milliseconds, as the phone's clock told it */
  time?: string | null;
  /** the phone's own day, "2026-11-30" */
  day?: string | null;
  /**
   * Seq is one more than the highest that its subject had on the phone when it was told, from 1 to
   * MostSeq.
   */
  seq?: Count | null;
  /** what it is about: a word of its kind, or an id */
  what?: string | null;
  /** as typed */
  value?: string | null;
  /** in several lines */
  text?: string | null;
  /** id of the job that it was told in */
  job?: string | null;
  signs?: { [name: string]: string } | null;
}

/** GarageAnswer are the bikes, in the order of their ids, and what is wrong with the facts. */
export interface GarageAnswer {
  bikes?: Bike[];
  findings?: Finding[];
}

/** Bike is what is true of a machine, before anything is looked up in its card. */
export interface Bike {
  id: string;
  /** id of the card that it follows: its own where it was told of none */
  card: string;
  called?: string;
  plate?: string;
  frame?: string;
  words?: string;
  owner?: string;
  reach?: string;
  /** empty while it is not laid aside */
  aside?: Reason;
  /** id of the bike that it went into, through all joins; empty where it is one by itself */
  into?: string;
  jobs?: string[];
  figures?: Own[];
  /**
   * Odometer is what it showed between the jobs, the newest last: of a day what was told last,
   * since a slip is put right by telling again.
   */
  odometer?: OdometerReading[];
  photos?: Photo[];
}

/** Own is a figure of one machine, which lies over that of the card it follows. */
export interface Own {
  /** a word of OwnFigures, "." and the id of the circuit, fastener or filter */
  what: string;
  /** as typed */
  value: string;
  /** Measured or Decided */
  standing?: Standing;
  /** how it was measured, or for what reason decided */
  why?: string;
  system?: System;
}

/** Photo is a picture of a bike. */
export interface Photo {
  /** of its fact */
  id: string;
  /** what it shows */
  what?: string;
}

/**
 * PageInput is a job, and the stage of it whose page is asked for; empty for that of the whole job.
 */
export interface PageInput {
  card: Card;
  bench?: Bench | null;
  steps?: string[] | null;
  /** time; empty where that isn't known */
  started?: string | null;
  events?: Event[] | null;
  /**
   * Beside are other contents under ids of Events, which came from elsewhere. What stands in Events
   * counts until an event of the kind Choose says otherwise.
   */
  beside?: Event[] | null;
  /**
   * Adding: the last of Events is about to be written. What a record holds is taken as it is; a new
   * event is refused where the plan doesn't ask for it.
   */
  adding?: boolean | null;
  /** on the same bike; nil where there is none */
  last?: Past | null;
  stage?: Stage | null;
}

/**
 * Page is a job on one page, for one who knows: a line for each thing that was opened, for the oil
 * and what it showed, for the gates, and for all the rest. Of a stage it is a line for each of its
 * steps.
 */
export interface Page {
  lines?: PageLine[];
  /** Finished: the work was ended. */
  finished?: boolean;
}

/** PageLine is a line of a page: a tick for the steps that it stands for, and what it asks. */
export interface PageLine {
  id: string;
  part: PagePart;
  /** word id of its title */
  word: string;
  /** that fill it */
  values?: { [name: string]: string };
  /** ids of the steps that its tick says were done; empty where there is no tick */
  steps?: string[];
  /** how many of them were told */
  done?: Count;
  /** Figures are the card's. */
  figures?: ShownFigure[];
  asks?: PageAsk[];
  /** Looks are ids of the steps at which all that came out is told, where it was something. */
  looks?: string[];
}

/** PageAsk is something that a line asks: a reading of a step, or AskSeen. */
export interface PageAsk {
  /** id of the step whose reading it is */
  step?: string;
  what: string;
  of?: string;
  unit?: string;
  choice?: string[];
  card?: string;
  /**
   * Texts are what was told, in the person's units; of a volume the sum. Answer is the choice that
   * was told. Manners are word ids of how.
   */
  texts?: string[];
  answer?: string;
  manners?: string[];
}

/** JudgeInput is what was read on all pages of a manual, and what the person decided about it. */
export interface JudgeInput {
  readings: PlaceReading[];
  models?: string[] | null;
}

/** PlaceReading is a figure or word that was read on a page. */
export interface PlaceReading {
  what: string;
  /** "30 N·m", "26–34 N·m", "cartridge" */
  text?: string | null;
  quote?: PlaceSpan | null;
  /** of several models on one page, the one that it is of */
  model?: string | null;
  /** Over: the person chose it over what the card says. */
  over?: boolean | null;
  /** as Judge is to know it */
  stands?: Stand | null;
}

/** PlaceSpan is a piece of a page's text: bytes of its UTF-8, To not included. */
export interface PlaceSpan {
  from?: Bytes;
  to?: Bytes;
}

/**
 * Judged says of readings of one manual, each called by its number from 0, what is sure and what
 * has to be decided.
 */
export interface Judged {
  /** those that nobody decided about and nothing contradicts */
  sure?: Count[];
  /** for each reading the number of the question that it is asked in, from 1; 0 for none */
  asked?: Count[];
  /** what readings contradict each other in */
  contested?: string[];
}

/** LastInput are the jobs on the bike of a job that was started then. */
export interface LastInput {
  started: string;
  jobs?: Finished[] | null;
}

/** Finished is a job of a bike by its id, with the time of its finish; empty while it is open. */
export interface Finished {
  id?: string | null;
  finished?: string | null;
}

export interface LastAnswer {
  id?: string;
}

/** LayInput is a card, and the figures of a machine that follows it. */
export interface LayInput {
  card: Card;
  figures?: Own[] | null;
}

/** LayAnswer is the card with those figures over its own. */
export interface LayAnswer {
  card?: Card;
  /** what the machine may have of its own */
  places?: OwnPlace[];
  findings?: Finding[];
}

/** OwnPlace is a figure that a machine may have of its own by its card. */
export interface OwnPlace {
  /** as Own has it */
  what: string;
  /** word id of the figure */
  word: string;
  /** what it is of: a word id, or a place in the card's own words */
  of: string;
}

/**
 * Nothing is the input of an operation that is asked for nothing in particular. It has a size, so
 * that two are never one.
 */
export interface Nothing {}

/**
 * LimitsAnswer is what a page has to know before it asks for anything else. It is the same at each
 * call.
 */
export interface LimitsAnswer {
  /** bytes; the events of a job in all */
  call?: Bytes;
  /** bytes; the events of a job in all */
  text?: Bytes;
  /** bytes; the events of a job in all */
  events?: Bytes;
  /** letters that are offered to be typed */
  note?: Letters;
  /** letters that are offered to be typed */
  reading?: Letters;
  /** letters that are offered to be typed */
  entry?: Letters;
  /** letters that are offered to be typed */
  remark?: Letters;
  /** letters of what is told in a fact; the highest number of one */
  value?: Letters;
  /** letters of what is told in a fact; the highest number of one */
  seq?: Count;
  /** of a bike; in one call */
  jobs?: Count;
  /** of a bike; in one call */
  survey?: Count;
  photos?: Motif[];
  systems?: System[];
  places?: PlaceWord[];
  getHomeAt?: PlaceWord[];
  /** facts that tell of a person */
  personal?: Person[];
  /** of a bike, and of its owner */
  told?: TellingWord[];
  /** of a bike, and of its owner */
  whose?: TellingWord[];
  aside?: Reason[];
  /** that a bike may have of its own */
  figures?: OwnFigure[];
  /** that may lie on a shelf */
  goods?: Goods[];
  /** that may be asked of a bike, and what asks for nothing */
  things?: Thing[];
  /** that goods of these kinds may be */
  washers?: SealKind[];
  /** that goods of these kinds may be */
  rings?: SealKind[];
  /** kinds of old oil */
  wastes?: Waste[];
  /** bytes of the text of pages that are read in one go */
  page?: Bytes;
  /** what may be read there */
  whats?: string[];
  /** in which it is read */
  languages?: string[];
}

/**
 * Person says which facts tell of a person: those of a kind in a book, and where What isn't empty
 * of them those that are about it.
 */
export interface Person {
  book: Book;
  kind: FactKind;
  what?: string;
}

/** OldOilInput is the book of old oil, and what jobs drained. */
export interface OldOilInput {
  facts?: Fact[] | null;
  /**
   * Adding: the last of the facts is about to be written, and may be refused. What stands already
   * never is.
   */
  adding?: boolean | null;
  system?: System | null;
  today?: string | null;
  jobs?: DrainedJob[] | null;
}

/** DrainedJob is what a job's balance says was drained of one of its oils. */
export interface DrainedJob {
  job: string;
  circuit: string;
  role?: string | null;
  waste?: Waste | null;
  /** L */
  out?: Litres | null;
}

/** OldOilAnswer is the book of old oil as it stands. */
export interface OldOilAnswer {
  cans?: Can[];
  proposed?: DrainedOil[];
  /** the newest first */
  years?: OilYear[];
  findings?: Finding[];
}

/** Can is a can of old oil. */
export interface Can {
  id: string;
  name?: string;
  /** word id: what may go in */
  kind: string;
  waste?: Waste;
  /** empty where nobody knows */
  size?: string[];
  /** its size, as it was typed */
  typed?: string;
  /** empty when nothing is in it */
  holds?: string[];
  /** what still fits; empty where the size isn't known, and when nothing does */
  room?: string[];
  /** word id: how full it is */
  state: string;
  /** percent of its size, at most 100 */
  filled?: Percent;
  /** oils that are kept apart are together in it */
  mixed?: boolean;
  gone?: boolean;
  entries?: CanEntry[];
}

/** CanEntry is what happened with a can. */
export interface CanEntry {
  /** of the fact */
  id: string;
  kind: FactKind;
  day: string;
  /** what came in, or went */
  volume?: string[];
  /** word id of what came in */
  waste?: string;
  job?: string;
  /** where it was handed in */
  place?: string;
  /** the same of the job is in the book already, and doesn't count here */
  again?: boolean;
}

/** DrainedOil is a volume that a job drained and no can has yet. */
export interface DrainedOil {
  job: string;
  circuit: string;
  role?: string;
  waste?: Waste;
  /** word id of Waste */
  kind: string;
  volume?: string[];
  /** the volume, as it would be typed */
  typed?: string;
  /** id of the one proposed; empty where there is none of its kind */
  can?: string;
  /** what wouldn't fit there */
  over?: string[];
}

/** OilYear is what was handed in in a year. */
export interface OilYear {
  year?: Year;
  sums?: OilSum[];
  /** the earliest first */
  rows?: HandedIn[];
}

/** OilSum is how much of a kind was handed in in a year. */
export interface OilSum {
  /** word id */
  kind: string;
  volume?: string[];
  litres?: Litres;
}

/** HandedIn is one handing in of old oil. */
export interface HandedIn {
  /** of the fact, and of the can */
  id: string;
  /** of the fact, and of the can */
  can: string;
  /** the can's */
  name?: string;
  day: string;
  /** word id */
  kind: string;
  volume?: string[];
  litres?: Litres;
  place?: string;
}

/** PlanInput is a card and a bench, and of a job that has begun the ids of its steps. */
export interface PlanInput {
  card: Card;
  bench?: Bench | null;
  steps?: string[] | null;
}

/**
 * Plan is all that a person needs to know before the first bolt turns, and the steps of the job.
 */
export interface Plan {
  card: string;
  /** make and model */
  name: string;
  /** "2014–2021"; "" where the card doesn't say */
  years?: string;
  invented?: boolean;
  /** until LayPlate there is nothing on it */
  plate?: PlateFigure[];
  oils?: Oil[];
  bolts?: BoltSheet[];
  parts?: Item[];
  tools?: Item[];
  steps?: Step[];
  gaps?: Gap[];
  /** cleaned at some changes only; Count is 1 for those of today */
  also?: Item[];
  /** MayKeepFilter: there is a filter that is changed unless the bench keeps it. */
  mayKeepFilter?: boolean;
  /**
   * FilterNth: of so many oil changes the card asks for a new filter at one; 0 where it is each, or
   * nobody knows.
   */
  filterNth?: Count;
  findings?: Finding[];
}

/**
 * PlateFigure is a figure on the plate of a plan: what somebody who has done the job before reads
 * first. Its name and texts are filled from its values.
 */
export interface PlateFigure {
  /** word id */
  name: string;
  /** in the person's units first */
  texts?: string[];
  standing?: Standing;
  /** title of the document */
  source?: string;
  page?: string;
  /** in the card's words, or a word id after "@" */
  method?: string;
  kept?: string;
  /** the words of the manual that it comes from */
  quote?: string;
  /** word id; only for what is not known */
  lookup?: string;
  /** Values fill a text that is a word id after "@". */
  values?: { [name: string]: string };
  /**
   * Low and High are the figure itself, in the unit that specs/ops.md names: only where a
   * calculation gives them.
   */
  low?: InFigure;
  /**
   * Low and High are the figure itself, in the unit that specs/ops.md names: only where a
   * calculation gives them.
   */
  high?: InFigure;
  /** id of the circuit or fastener */
  of: string;
  /** its text is words, and no number that is drawn large */
  words?: boolean;
  /** how many of them, where more than one is tightened so */
  count?: Count;
  /** what is read with it: texts, or word ids after "@" */
  beside?: string[];
}

/** BoltSheet is the sheet of one fastener. */
export interface BoltSheet {
  id: string;
  /** word id */
  purpose: string;
  place?: string;
  count?: Count;
  thread?: string;
  /** word id */
  drive?: string;
  size: ShownFigure;
  /** what it is turned with: a word id after "@", and a size if it has one; empty when not known */
  tool?: string[];
  torque: ShownFigure;
  turn?: ShownFigure;
  /** which of the two counts */
  by?: Measure;
  /** word id of the kind */
  seal?: string;
  /** its size, "12 × 16 × 1.5 mm" */
  sealSize?: string;
  /** turned today */
  today?: boolean;
  /** how tight it gets today is worth reading beforehand */
  listed?: boolean;
  /** to be left alone today */
  leave?: boolean;
  /** as an oil has them */
  quoted?: ShownFigure[];
}

/**
 * Step is one step of the job. Word names its texts in the catalogue: the title, what to do (".do")
 * and why (".why"); Values fill their placeholders, and a value that begins with "@" is itself a
 * word id.
 */
export interface Step {
  id: string;
  stage: Stage;
  word: string;
  values?: { [name: string]: string };
  warns?: Warn[];
  figures?: ShownFigure[];
  asks?: PlanAsk[];
  helps?: Help[];
  timers?: PlanTimer[];
  /**
   * Must: the job should not go on without it, and the record says so when it was finished without
   * it.
   */
  must?: boolean;
  /**
   * Signs are the names of the signs that the step asks for, where it looks at what came out; Sums
   * says that it sums up what was seen.
   */
  look?: string[];
  sums?: boolean;
  /** Photo is what a photo taken at the step shows most likely. */
  photo?: Motif;
  /** After: it comes when the job is finished and the bike was ridden. */
  after?: boolean;
  /** Takes is what the step wants in the hand: tools in their size, and new parts. */
  takes?: Item[];
  /** Tally is what is to be touched and counted at the step: each with its place and its pieces. */
  tally?: Item[];
  /** Notes are the card's for this moment, read before the act. */
  notes?: string[];
}

/** PlanAsk is a reading that a step asks for. */
export interface PlanAsk {
  what: string;
  /** id of the circuit or fastener it belongs to */
  of?: string;
  /** taken when none is typed */
  unit?: string;
  choice?: string[];
  /** Gauge: a level that may also be read as a share of the band between the marks. */
  gauge?: Gauge;
  /**
   * Card is what the card gives, as it would be typed: it can be taken over in one tap. Empty where
   * the card doesn't know it, gives a range or only estimates it.
   */
  card?: string;
  /**
   * Amends: oil can be poured or taken out here to mend the level. A level read before anything is
   * drained changes nothing.
   */
  amends?: boolean;
}

/**
 * Gauge is a level gauge to be drawn: the shares of the band at its lowest and its highest point,
 * and as shares of the way between these where the marks and the aim lie. Slide is the same in
 * percent, for a hand that slides the level, with where it begins: between the marks.
 */
export interface Gauge {
  /** "window" or "stick" */
  kind: string;
  low?: Share;
  high?: Share;
  lowMark?: Share;
  highMark?: Share;
  aimLow?: Share;
  aimHigh?: Share;
  slideLow?: Percent;
  slideHigh?: Percent;
  slideFrom?: Percent;
}

/**
 * PlanTimer is a wait that belongs to a step: how long it takes, with name, texts and standing as a
 * shown figure has them.
 */
export interface PlanTimer {
  what: string;
  seconds?: Seconds;
  /** word id */
  name: string;
  /** in the person's units first */
  texts?: string[];
  standing?: Standing;
  /** title of the document */
  source?: string;
  page?: string;
  /** in the card's words, or a word id after "@" */
  method?: string;
  kept?: string;
  /** the words of the manual that it comes from */
  quote?: string;
  /** word id; only for what is not known */
  lookup?: string;
  /** Values fill a text that is a word id after "@". */
  values?: { [name: string]: string };
  /**
   * Low and High are the figure itself, in the unit that specs/ops.md names: only where a
   * calculation gives them.
   */
  low?: InFigure;
  /**
   * Low and High are the figure itself, in the unit that specs/ops.md names: only where a
   * calculation gives them.
   */
  high?: InFigure;
}

/** Gap is something the card does not know and the job needs. */
export interface Gap {
  /** word id of what is missing */
  word: string;
  values?: { [name: string]: string };
  /** word id of where to find it */
  lookup?: string;
  /** its place in the card, a JSON pointer, where it is chosen and not looked up */
  at?: string;
}

/** EntryInput is what a person writes into a card, and what kind of thing it is. */
export interface EntryInput {
  kind: Kind;
  text: string;
  unit?: string | null;
  system?: System | null;
}

/** EntryAnswer is it as a card holds it: value and unit of a figure, or words. */
export interface EntryAnswer {
  value?: InUnit;
  to?: InUnit;
  unit?: string;
  words?: string[];
  notes?: Finding[];
}

/** LineAsk is a line and what is known beside it. */
export interface LineAsk {
  text: string;
  system?: System | null;
  /** in which it most likely is */
  language?: string | null;
  /** the calculation that the person chose; "" leaves it open */
  op?: string | null;
  /** what the person said of figures that were asked for */
  put?: Put[] | null;
  /** the wrenches and bottles that the person has */
  kept?: LineAskKept | null;
}

/** Put says into which field a figure goes: the one that is quoted. */
export interface Put {
  quote: PlaceSpan;
  list?: string | null;
  field: string;
  /** with its unit; "" where the line has it */
  text?: string | null;
}

/** One of `kept` of LineAsk. */
export interface LineAskKept {
  system?: System | null;
  bottles?: LineAskKeptBottles[] | null;
  wrenches?: LineAskKeptWrenches[] | null;
}

/** One of `bottles` of LineAskKept. */
export interface LineAskKeptBottles {
  id?: string | null;
  size?: string | null;
  left?: string | null;
  opened?: boolean | null;
  price?: string | null;
}

/** One of `wrenches` of LineAskKept. */
export interface LineAskKeptWrenches {
  id?: string | null;
  low?: string | null;
  high?: string | null;
  graduation?: string | null;
  grip?: string | null;
  tool?: string | null;
}

/** LineReading is how a line was read. */
export interface LineReading {
  /** its own; "" where none of its words was known */
  language?: string;
  /** the calculation that is meant; "" where that is open */
  op?: string;
  /** those that may be meant, the likeliest first */
  ops?: string[];
  pieces?: Piece[];
  /** what was not understood */
  unread?: PlaceSpan[];
  /** the form as far as the line fills it */
  given?: { [name: string]: any };
  /** of the calculation, where the line and the lists suffice */
  answer?: { [name: string]: any };
  /** what keeps it from answering, at its fields */
  lacks?: Finding[];
}

/** Piece is a piece of the line and what it was read as. */
export interface Piece {
  quote: PlaceSpan;
  list?: string;
  row?: Count;
  field?: string;
  /** as it is filled in */
  text?: string;
  /** word id of what was chosen */
  word?: string;
  /** where it may go, where that is open: then it goes nowhere yet */
  options?: Goal[];
}

/** Goal is a field, with what goes into it. Row counts the rows of the list that it stands in. */
export interface Goal {
  list?: string;
  row?: Count;
  field?: string;
  /** as it is filled in */
  text?: string;
  /** word id of what was chosen */
  word?: string;
}

/** ManualInput is the text of a manual's page. */
export interface ManualInput {
  text: string;
  language?: string | null;
  model?: string | null;
  card?: Card | null;
  say?: CoreSaid[] | null;
  /** which of the program's own texts is read instead, from 1; 0 for none */
  warm?: Count | null;
}

/** CoreSaid is what a person says that a piece of the text is. */
export interface CoreSaid {
  what: string;
  quote: PlaceSpan;
}

/** ManualAnswer is what was read. */
export interface ManualAnswer {
  readings?: ManualReading[];
  language?: string;
  models?: string[];
  page?: string;
  layout?: ManualLayout;
  /** there is a further text to warm up on */
  more?: boolean;
}

/** ManualReading is one reading of it. */
export interface ManualReading {
  what?: string;
  at?: string;
  text?: string;
  quote: PlaceSpan;
  sure?: string;
  doubts?: Finding[];
  model?: string;
}

/** ManualLayout is how the bike keeps its oil, as far as the page tells. */
export interface ManualLayout {
  word?: string;
  sure?: string;
}

/** State is where a job stands: a replay of its events over its plan. */
export interface State {
  phase: Phase;
  /** Next is the id of the first step not done; empty when all are done. */
  next?: string;
  /** ids of the steps done, in the order of the plan */
  done?: string[];
  /**
   * ids of the steps not done that have their turn: what comes after the job only once it is
   * finished
   */
  toDo?: string[];
  /** how many steps the plan has */
  steps?: Count;
  stages?: StageCount[];
  oils?: Balance[];
  readings?: Read[];
  notes?: Remark[];
  photos?: Picture[];
  /** Missing are the steps that must be done before the job can be finished. */
  missing?: string[];
  /** what the oil's temperature means; nil while not read */
  warmth?: Warmth;
  /** time of the finish; empty while the work is under way */
  finished?: string;
  /** time at which the second look closed the job */
  closed?: string;
  /** Timers are those that count, or have rung and were not answered. */
  timers?: JobTimer[];
  /** odometer reading at which the oil is due again */
  dueAgain?: ShownFigure;
  change: NextChange;
  /** that wrote estimates and bills: the last of each */
  papers?: Event[];
  /** id of the one of them that says what the job cost; empty when there is none */
  costs?: string;
  /** what the job knows of a calculation beyond what its step gives */
  helps?: StepHelp[];
  /** LastID is the id of the last event that still counts: what an undo would cancel. */
  lastID?: string;
  /** km; zero while not read */
  odometer?: Kilometres;
  /**
   * Looks are what was seen, and Verdict the word id of the worst of it; empty when nobody said.
   * Actions are word ids of what to do, in the order of doing.
   */
  looks?: Look[];
  verdict?: string;
  actions?: string[];
  /** Warns stand at the steps that fill, start and ride: what came out says stop. */
  warns?: StepWarn[];
  /**
   * Open is what was opened and not closed, in the order of opening; OpenAt are the cautions at the
   * steps at which something of it must not be open: oil is poured where it would run out again, or
   * the engine runs.
   */
  open?: OpenPlace[];
  openAt?: StepWarn[];
  /**
   * Disputed are the events of which there are other contents, Elsewhere the steps done that the
   * plan doesn't have, in the order of doing.
   */
  disputed?: Dispute[];
  elsewhere?: StepElsewhere[];
  /**
   * Redo is the id of the undo that was the last thing to happen, and can be undone; empty
   * otherwise.
   */
  redo?: string;
  /** events that can't be read */
  unread?: Count;
  /**
   * Gates are the steps not done at which something is to be looked at, touched or read before one
   * goes on, and was not: ids. Afterwards counts the steps told afterwards.
   */
  gates?: string[];
  /** Passed are those done at which somebody went on without that, and said so: ids. */
  passed?: string[];
  afterwards?: Count;
  findings?: Finding[];
  /** that stand, the earliest first */
  problems?: Trouble[];
  summary: Summary;
  /** what a finished job shows first; empty while it is open */
  face?: Deed[];
}

/** StageCount is how far a stage has got. */
export interface StageCount {
  stage: Stage;
  done?: Count;
  steps?: Count;
}

/** Balance is a circuit's oil out and in. */
export interface Balance {
  circuit: string;
  /** word id */
  role: string;
  /** as the card has it, empty when not known */
  due?: string[];
  /** sum of what was measured, empty when nothing was */
  drained?: string[];
  /** sum of what was poured */
  poured?: string[];
  /** word id of the last level read */
  level?: string;
  /** word id: what the poured volume means */
  verdict?: string;
  /** word id: what the drained volume means */
  caught?: string;
  /** what is still to be poured of what is due; empty when nothing or not known */
  left?: string[];
  /** word id: how far the pouring has come; empty before it has begun */
  pouring?: string;
  /** word id: what to do about a level read between the marks */
  amend?: string;
  /** how much to pour or take out for it */
  change?: string[];
  /** Since is what was used since the last job on the same bike; nil where that is not known. */
  since?: Use;
  /** what was drained and poured, in L */
  out?: Litres;
  /** what was drained and poured, in L */
  in?: Litres;
  /** Full is how full its space is, from 0 to 1: it goes out and comes in again. */
  full?: Share;
  /** Waste is the kind of old oil that it is once it is drained; empty when nothing was. */
  waste?: Waste;
}

/** Read is a reading that counts, ready to be shown. */
export interface Read {
  /** of the event */
  id: string;
  time: string;
  step?: string;
  what: string;
  of?: string;
  /** word id of the circuit's role, or the fastener's place */
  name?: string;
  /** in the person's units, or a word id after "@" */
  texts?: string[];
  /** the card's figure beside it, where there is one */
  card?: string[];
  /**
   * Choice is the answer that was chosen, or that a level in percent comes to; Share is that level.
   */
  choice?: string;
  /**
   * Choice is the answer that was chosen, or that a level in percent comes to; Share is that level.
   */
  share?: string;
  /** Verdict is what a temperature means before the oil is drained, a word id. */
  verdict?: string;
  /** Manners are word ids of how it was told; empty for what was typed as it was done. */
  manners?: string[];
  /** Stands: nothing later says otherwise about the same thing. */
  stands?: boolean;
}

/** Remark is a note that counts. */
export interface Remark {
  id: string;
  time: string;
  step?: string;
  text?: string;
}

/** Picture is a photo that counts. */
export interface Picture {
  /** of the event, and of the picture in the phone's store */
  id: string;
  time: string;
  step?: string;
  /** it shows: a plan.Motif */
  what: string;
}

/** Warmth is what the temperature of the oil means before it is drained. */
export interface Warmth {
  /** word id of the verdict */
  word: string;
  /** how long bare metal of that temperature may be touched; empty where it may for hours */
  burns?: string[];
  /**
   * Wait is how long it takes to be cool enough to drain, from two readings; empty when it is, or
   * is not known.
   */
  wait?: string[];
}

/**
 * JobTimer is a timer of a step that was started: it counts, or has rung and nobody has answered.
 * Whether it is over only the phone's clock can say: Until is a text that sorts as the times of
 * events do.
 */
export interface JobTimer {
  /** of the event that started it */
  id: string;
  step?: string;
  what: string;
  until: string;
}

/**
 * NextChange is when the oil is due again by the card, whichever comes first: at a reading of the
 * odometer, or after a distance where that is not known, and after a time, whose day counts from
 * the finish. What is not known is empty.
 */
export interface NextChange {
  at?: string;
  after?: string;
  day?: string;
}

/**
 * StepHelp is a calculation of a step with what the job knows of its input, in place of what the
 * plan gives.
 */
export interface StepHelp {
  step: string;
  op: string;
  given?: { [name: string]: string };
}

/** Look is what was seen at a step, judged. */
export interface Look {
  /** of the event */
  id: string;
  time: string;
  step: string;
  /** as they were given */
  signs?: { [name: string]: string };
  /** word ids of the same */
  told?: string[];
  /**
   * Verdict is a word id; Reasons are findings, the worst first; Next are word ids of what to do,
   * in the order of doing.
   */
  verdict: string;
  reasons?: Finding[];
  next?: string[];
  /**
   * Compared is what the last job on this bike saw at the same step, and how this differs: one
   * finding, or none where it didn't look.
   */
  compared?: Finding[];
  /**
   * MayDeny: it comes out as more than the last time, or as the same that was to be watched
   * (Recurs), which the person may deny.
   */
  mayDeny?: boolean;
  /**
   * MayDeny: it comes out as more than the last time, or as the same that was to be watched
   * (Recurs), which the person may deny.
   */
  recurs?: boolean;
}

/** StepWarn is a caution that a step has from what happened in the job. */
export interface StepWarn {
  /** id */
  step: string;
  signal: Signal;
  word: string;
  /**
   * Short: an earlier step of the job says it whole. Here the one sentence stands, and the rest
   * opens from it.
   */
  short?: boolean;
}

/** OpenPlace is a fastener that was opened and not closed. */
export interface OpenPlace {
  /** id of the fastener */
  of: string;
  /** word id */
  purpose: string;
  /** as on the card; may be empty */
  place?: string;
  /** pieces */
  count?: Count;
  /** id of the step that closes it; empty where the plan has none */
  step?: string;
}

/** Dispute is an event of which there is more than one content under its id. */
export interface Dispute {
  id: string;
  /** the one in History.Events first */
  variants?: Variant[];
}

/** Variant is one content of a disputed event. */
export interface Variant {
  /** what an event of the kind Choose names it by */
  digest: string;
  event: Event;
  /** it stands in History.Events */
  here?: boolean;
  counts?: boolean;
}

/**
 * StepElsewhere is a step that was done and that the plan doesn't have: a plan of another version
 * did.
 */
export interface StepElsewhere {
  /** of the event */
  id: string;
  time: string;
  /** id of the step */
  step: string;
}

/** Trouble is a problem that was met in the job, with what follows from it. */
export interface Trouble {
  /** of the event */
  id: string;
  time: string;
  /** where it was met; may be empty */
  step?: string;
  /** id of the problem in the table */
  what: string;
  /** one of fault.Outcomes */
  outcome: string;
  /** the bike is not to be ridden or started */
  stops?: boolean;
  signs?: { [name: string]: string };
}

/**
 * Summary is what lists show and find of a job without replaying it. The phone keeps it beside the
 * job.
 */
export interface Summary {
  phase: Phase;
  done?: Count;
  steps?: Count;
  /** time */
  finished?: string;
  /** as it was read last */
  odometer?: string;
  oils?: SummaryOil[];
  /** word id of the worst that was seen; empty when nobody looked */
  verdict?: string;
  /** that is a reason to watch or to stop */
  watch?: boolean;
  /** that, or a problem that was met, says not to start or ride it */
  stop?: boolean;
  notes?: Count;
  photos?: Count;
  /** the beginning of the notes */
  said?: string;
  /**
   * Events is how many the job has, each id counted once, Disputed and Unread how many of them are.
   */
  events?: Count;
  /**
   * Events is how many the job has, each id counted once, Disputed and Unread how many of them are.
   */
  disputed?: Count;
  /**
   * Events is how many the job has, each id counted once, Disputed and Unread how many of them are.
   */
  unread?: Count;
  /** of the finish, the phone's own */
  day?: string;
  /** it was only to get home, and no oil change */
  home?: boolean;
  /** Of an open job: the step that has its turn, and its stage. */
  next?: string;
  stage?: Stage;
  /** started and not answered: other screens show and ring them */
  timers?: JobTimer[];
}

/** SummaryOil is an oil that was poured. */
export interface SummaryOil {
  /** word id */
  role: string;
  poured?: string;
  /** the usual one of the card's */
  grade?: string;
}

/** Deed is one of the four figures that a finished job shows first. */
export interface Deed {
  /** word id */
  name: string;
  /** word id of the oil's role after "@", or the fastener's place; empty for the bike */
  of?: string;
  /** in the person's units, or a word id after "@"; empty where it was not told */
  texts?: string[];
  /** word ids of how it was told */
  beside?: string[];
}

/**
 * RoadsideInput is a problem of the table as it was met, or the door behind which one looks, and
 * the bike, as far as it is known.
 */
export interface RoadsideInput {
  table?: Table | null;
  id?: string | null;
  door?: string | null;
  answers?: { [name: string]: string } | null;
  hand?: string[] | null;
  /** of the bike */
  name?: string | null;
  card?: Card | null;
  system?: System | null;
}

/**
 * RoadsideAnswer is how the level of this bike is read, where that is asked, and what to say to
 * whoever fetches it, where there is a problem.
 */
export interface RoadsideAnswer {
  levels?: RoadsideLevel[];
  say?: Line[];
}

/** RoadsideLevel is how the level of one oil is read. */
export interface RoadsideLevel {
  circuit: string;
  role: Role;
  lines?: Line[];
}

/** ShelfInput is the book of the shelf, and jobs that would take from it. */
export interface ShelfInput {
  facts?: Fact[] | null;
  /**
   * Adding: the last of the facts is about to be written, and may be refused. What stands already
   * never is.
   */
  adding?: boolean | null;
  system?: System | null;
  today?: string | null;
  wants?: WantInput[] | null;
}

/** WantInput is a job by what it is planned from, with what was poured. */
export interface WantInput {
  id: string;
  name?: string | null;
  card: Card;
  bench?: Bench | null;
  steps?: string[] | null;
  poured?: PouredOil[] | null;
}

/** PouredOil is what a job's balance says was poured of an oil. */
export interface PouredOil {
  circuit: string;
  in?: Litres | null;
}

/** ShelfAnswer is the shelf as it stands, and what it has for the lists asked about. */
export interface ShelfAnswer {
  items?: ShelfItem[];
  lists?: WantedList[];
  /** over all lists */
  missing?: Missing[];
  findings?: Finding[];
}

/** ShelfItem is a thing on the shelf. */
export interface ShelfItem {
  id: string;
  name?: string;
  what?: Goods;
  /** how much is there: a volume, or a number; empty where nobody said */
  left?: string[];
  /** nothing is left */
  out?: boolean;
  /** day on which the bottle was opened that is open; empty where none is */
  opened?: string;
  signs?: { [name: string]: string };
  gone?: boolean;
  entries?: ShelfEntry[];
}

/** ShelfEntry is what happened with a thing on the shelf. */
export interface ShelfEntry {
  /** of the fact */
  id: string;
  kind: FactKind;
  day: string;
  /** how much */
  texts?: string[];
  job?: string;
  /** the same of the job is in the book already, and doesn't count here */
  again?: boolean;
}

/** WantedList is what a job needs, line by line. */
export interface WantedList {
  id: string;
  name?: string;
  lines?: WantedLine[];
}

/** WantedLine is one thing that a job needs. */
export interface WantedLine {
  /** by which its job's facts name it */
  key: string;
  /** word id, filled by Values */
  word: string;
  values?: { [name: string]: string };
  what?: Goods;
  /** how much; empty where that isn't known */
  needs?: string[];
  /** word id */
  state: string;
  picks?: ShelfPick[];
  /** that may do, or of which that isn't known */
  others?: ShelfPick[];
  /** what the shelf doesn't have of it */
  lacking?: string[];
}

/** ShelfPick is what is proposed from a thing on the shelf. */
export interface ShelfPick {
  item: string;
  name?: string;
  /** word id: whether it suits */
  verdict: string;
  /** how much of it; empty for what is not proposed */
  takes?: string[];
  /** the same, as it would be typed */
  typed?: string;
  /** codes of findings that say why it doesn't suit without more */
  reasons?: string[];
}

/** Missing is what the shelf lacks of one thing, for all lists together. */
export interface Missing {
  /** word id, filled by Values */
  word: string;
  values?: { [name: string]: string };
  what?: Goods;
  lacking?: string[];
  /** ids of the lists */
  for?: string[];
}

/** SurveyInput are many jobs, and the cards that they are planned from. */
export interface SurveyInput {
  cards?: Card[] | null;
  jobs?: Surveyed[] | null;
  rows?: boolean | null;
  system?: System | null;
}

/** Surveyed is a job by the place of its card among the cards. */
export interface Surveyed {
  card?: Count | null;
  bench?: Bench | null;
  steps?: string[] | null;
  /** time; empty where that isn't known */
  started?: string | null;
  events?: Event[] | null;
  /**
   * Beside are other contents under ids of Events, which came from elsewhere. What stands in Events
   * counts until an event of the kind Choose says otherwise.
   */
  beside?: Event[] | null;
  /**
   * Adding: the last of Events is about to be written. What a record holds is taken as it is; a new
   * event is refused where the plan doesn't ask for it.
   */
  adding?: boolean | null;
}

/** SurveyAnswer has an answer for each job, in their order. */
export interface SurveyAnswer {
  jobs?: SurveyedAnswer[];
}

/**
 * SurveyedAnswer is what lists show of a job, nil where it can't be worked out, and what is wrong
 * with it.
 */
export interface SurveyedAnswer {
  summary?: Summary;
  row?: TableRow;
  findings?: Finding[];
}

/** TableRow is what a table shows of a job, amounts in base units. */
export interface TableRow {
  /** km; zero while not read */
  odometer?: Kilometres;
  /** steps */
  done?: Count;
  /** time */
  finished?: string;
  oils?: RowOil[];
  notes?: string[];
  findings?: Finding[];
}

/** RowOil is an oil in a table. */
export interface RowOil {
  /** word id */
  role: string;
  /** in the person's units; empty when nothing was */
  poured?: string;
  /** word id of the last level read; empty when none was */
  level?: string;
  /** what was poured and drained, in L */
  in?: Litres;
  /** what was poured and drained, in L */
  out?: Litres;
  /** only where something was drained, as Waste */
  circuit?: string;
  waste?: Waste;
}

/** TakeInput is a card, however unfinished, and what was read on a page. */
export interface TakeInput {
  card: Card;
  readings: PlaceReading[];
  text?: string | null;
  /** of the document; empty for the first that the card names */
  title?: string | null;
  /** its number or name */
  page?: string | null;
  /** the one of several that the bike is; empty for any */
  model?: string | null;
  system?: System | null;
}

/** TakeAnswer is the card with the readings, and what it still lacks. */
export interface TakeAnswer {
  card: Card;
  at?: string[];
  findings?: Finding[];
  gaps?: Gap[];
}

/** TellInput is what was filled in on a page, at the phone's time now. */
export interface TellInput {
  card: Card;
  bench?: Bench | null;
  steps?: string[] | null;
  /** time; empty where that isn't known */
  started?: string | null;
  events?: Event[] | null;
  /**
   * Beside are other contents under ids of Events, which came from elsewhere. What stands in Events
   * counts until an event of the kind Choose says otherwise.
   */
  beside?: Event[] | null;
  /**
   * Adding: the last of Events is about to be written. What a record holds is taken as it is; a new
   * event is refused where the plan doesn't ask for it.
   */
  adding?: boolean | null;
  /** on the same bike; nil where there is none */
  last?: Past | null;
  stage?: Stage | null;
  told?: Told[] | null;
  now: string;
}

/**
 * Told is what was filled in on a page: the tick of a line, an answer to what it asks, or that the
 * work is finished.
 */
export interface Told {
  /** id of the line; TellFinish for the finish */
  line: string;
  /** What and About name the question; empty for the tick. */
  what?: string | null;
  /** What and About name the question; empty for the tick. */
  of?: string | null;
  /**
   * Value is as typed, or the choice; of a tick "yes" or "no". An empty answer, and a tick that is
   * taken away, takes back what was told.
   */
  value?: string | null;
  /** Manner is AsCard where the value is taken over from the card. */
  manner?: string | null;
}

/**
 * Telling is what a filled-in page comes to: the events to write, none where something was refused,
 * and what was found, with places below "/told".
 */
export interface Telling {
  /** without id, time and place in the job */
  events?: Event[];
  findings?: Finding[];
}

/** UnsavedInput are a record's jobs and the times of its backups. */
export interface UnsavedInput {
  jobs?: UnsavedJob[] | null;
  backup?: string | null;
  later?: string | null;
  now: string;
}

/**
 * UnsavedJob is a job with how many events it has, and how many of them were in a file that this
 * phone handed out.
 */
export interface UnsavedJob {
  finished?: string | null;
  events?: Count | null;
  saved?: Count | null;
}

export interface UnsavedAnswer {
  count?: Count;
  remind?: boolean;
}

/** VisitInput is a visit as it is handed in. */
export interface VisitInput {
  facts?: Fact[] | null;
  adding?: boolean | null;
  system?: System | null;
  total?: MinorUnits | null;
  currency?: string | null;
  started?: boolean | null;
  finished?: boolean | null;
}

/** VisitAnswer is a visit, with what is asked in one. */
export interface VisitAnswer {
  stage: Progress;
  /** time of the first fact; empty while nothing was told */
  arrived?: string;
  /** what holds of what was told at arrival, in the order of Asks */
  said?: VisitSaid[];
  found?: VisitFound[];
  troubles?: Snag[];
  /** ids of the troubles that nobody has decided on, as long as the bike is here */
  unanswered?: string[];
  /**
   * Most is what it may cost as it was agreed at arrival, Limit that with the prices of what the
   * customer agreed to later; nil while nothing was agreed.
   */
  most?: Money;
  /**
   * Most is what it may cost as it was agreed at arrival, Limit that with the prices of what the
   * customer agreed to later; nil while nothing was agreed.
   */
  limit?: Money;
  /** as the bill says, else the estimate; nil while there is neither */
  costs?: Money;
  /** how much more it costs than it may; nil where it doesn't, or nobody can tell */
  over?: Money;
  /** when it is to be ready, on the phone's own clock: "2026-11-30T17:00" */
  promised?: string;
  signatures?: Signature[];
  /** time of handing over; empty before */
  handed?: string;
  /** the phone's own */
  handedDay?: string;
  /** of the fact that says so */
  handedID?: string;
  /**
   * Agreement is what a signature signs: handed back with it as its text. Empty while there is
   * nothing to sign.
   */
  agreement?: string;
  findings?: Finding[];
  asks?: Question[];
  others?: Question[];
}

/** VisitSaid is what was told of one thing at arrival, and holds. */
export interface VisitSaid {
  /** of the question */
  name: string;
  /** of the fact */
  id: string;
  time: string;
  /** as it was typed or chosen */
  value?: string;
  /** as it is read: in the person's units, or a word id after "@"; empty for money and a moment */
  texts?: string[];
  money?: Money;
}

/** Money is an amount in whole minor units of its currency. */
export interface Money {
  minor?: MinorUnits;
  /** decimals of the currency */
  digits?: Count;
  currency: string;
}

/** VisitFound is what the look round at arrival found. */
export interface VisitFound {
  id: string;
  time: string;
  /** a word of the question "found" */
  what: string;
  text?: string;
  /** a picture was taken; it may be missing on this phone */
  photo?: boolean;
}

/** Snag is what was found during the work, and what the customer said of it. */
export interface Snag {
  id: string;
  time: string;
  text?: string;
  photo?: boolean;
  /** nil where none was named */
  price?: Money;
  /** Yes, No, NotReached; empty while nobody asked */
  answer?: string;
  /** of the fact that says so */
  answerID?: string;
  /** a word of the question "way" */
  how?: string;
  /** on the phone's own clock; empty where it was written down at once */
  when?: string;
  /** time of the fact that says so */
  answered?: string;
}

/** Signature is what somebody signed with a finger: the last of its moment. */
export interface Signature {
  id: string;
  /** AtArrival or AtHandover */
  moment: string;
  /** Day is the phone's own */
  time: string;
  /** Day is the phone's own */
  day?: string;
  /** who signed, if that was written down */
  name?: string;
  /** of an SVG that is 1000 wide and 400 high */
  path: string;
  agreement: Agreement;
  /** what was agreed then can be read */
  known?: boolean;
  /** word ids of what is otherwise now */
  changed?: string[];
}

/** Agreement is what a signature was given for, as it stood then. */
export interface Agreement {
  agreed?: string;
  most?: Money;
  promised?: string;
  /** troubles that the customer agreed to */
  yes?: Count;
}

/** Question is one thing that is asked in a visit; the page draws its forms from them. */
export interface Question {
  name: string;
  /** text, choice, money, moment, or a kind of quantity */
  kind: string;
  /** that are offered to be typed; 0 where nothing is typed */
  letters?: Letters;
  /** several lines may be typed */
  lines?: boolean;
  words?: string[];
  /** a word's word id is family + word */
  family?: string;
}

/** TodayInput are the visits of a day, to be sorted by what is most pressing. */
export interface TodayInput {
  visits: Visited[];
  /** day and time on the phone's clock, "2026-11-30T16:20" */
  now: string;
}

/** Visited is a visit with the timers of its job. */
export interface Visited {
  /** of its job */
  id?: string | null;
  facts?: Fact[] | null;
  /**
   * Adding: the last of the facts is about to be written, and may be refused. What stands already
   * never is.
   */
  adding?: boolean | null;
  /** metric, if it is empty */
  system?: System | null;
  /**
   * Total of the job's bill, else of its estimate, in minor units of Currency; nothing is known
   * while Currency is empty.
   */
  total?: MinorUnits | null;
  currency?: string | null;
  /** steps of the job are done */
  started?: boolean | null;
  /** the work is done */
  finished?: boolean | null;
  /** when each ends, in the form of a fact's time */
  timers?: string[] | null;
}

/** Today are the visits, the most pressing first. */
export interface Today {
  visits?: TodayLine[];
  /**
   * Next is the id of the visit whose timer runs out first, and Until when; empty while none
   * counts.
   */
  next?: string;
  /**
   * Next is the id of the visit whose timer runs out first, and Until when; empty while none
   * counts.
   */
  until?: string;
}

/** TodayLine is what the list shows of a visit. */
export interface TodayLine {
  id: string;
  stage: Progress;
  /** "2026-11-30T17:00" */
  promised?: string;
  /** that is over, and the bike still here */
  late?: boolean;
  unanswered?: Count;
  over?: Money;
  /** when its next timer runs out */
  until?: string;
  /** time */
  handed?: string;
}

/** WrenchInput is the book of torque wrenches. */
export interface WrenchInput {
  facts?: Fact[] | null;
  /**
   * Adding: the last of the facts is about to be written, and may be refused. What stands already
   * never is.
   */
  adding?: boolean | null;
  system?: System | null;
  today?: string | null;
  /** Torques are those of a job, as printed: each wrench says whether it serves for one of them. */
  torques?: string[] | null;
}

/** WrenchBook is the book of torque wrenches as it stands. */
export interface WrenchBook {
  wrenches?: KeptWrench[];
  findings?: Finding[];
}

/**
 * KeptWrench is a torque wrench with its checks and what they say of the jobs that it was used for.
 */
export interface KeptWrench {
  id: string;
  name?: string;
  /** in the person's units */
  scale?: string[];
  /** as typed */
  drive?: string;
  /** as typed, for a form */
  signs?: { [name: string]: string };
  /** word id: whether it may be relied on */
  state: string;
  /** the state says that it may not */
  warns?: boolean;
  /**
   * Days since the last check that was decided, and the day by which the next is due; empty where
   * there was none.
   */
  checked?: string;
  days?: Count;
  due?: string;
  /** jobs since then */
  uses?: Count;
  gone?: boolean;
  /** for one of the torques asked about */
  serves?: boolean;
  checks?: WrenchCheck[];
  /** ids of all that it was used for */
  jobs?: string[];
  /** the earliest first */
  doubted?: DoubtedWork[];
}

/** WrenchCheck is one check. */
export interface WrenchCheck {
  /** of the fact */
  id: string;
  day: string;
  /** word id */
  verdict?: string;
  figures?: ShownFigure[];
  /** who made it, where it was somebody else */
  by?: string;
}

/** DoubtedWork is a job that a wrench was used for which was wrong then, or may have been. */
export interface DoubtedWork {
  job: string;
  day: string;
  /** word id */
  why: string;
  /** day of the check that found it wrong */
  found?: string;
}

/** What `oil-suits` takes. */
export interface OilSuitsInput {
  system?: System | null;
  grades?: string | null;
  marks?: string | null;
  service?: string | null;
  clutch?: string | null;
  bottleGrade?: string | null;
  bottleMark?: string | null;
  bottleService?: string | null;
  conserving?: boolean | null;
  coldest?: string | null;
  hottest?: string | null;
  chart?: string | null;
  purpose?: string | null;
  add?: string | null;
  due?: string | null;
}

/** What `oil-suits` answers. */
export interface OilSuitsAnswer {
  verdict?: string;
  figures?: ShownFigure[];
  grades?: string[];
  notes?: Finding[];
}

/** What `bottles` takes. */
export interface BottlesInput {
  system?: System | null;
  need?: string | null;
  bottles?: BottlesInputBottles[] | null;
}

/** One of `bottles` of BottlesInput. */
export interface BottlesInputBottles {
  id?: string | null;
  size?: string | null;
  left?: string | null;
  opened?: boolean | null;
  price?: string | null;
}

/** What `bottles` answers. */
export interface BottlesAnswer {
  verdict?: string;
  pours?: BottlesAnswerPours[];
  shelf?: BottlesAnswerShelf[];
  opened?: Count;
  left?: Litres;
  missing?: Litres;
  figures?: ShownFigure[];
  cost?: MajorUnits;
  notes?: Finding[];
}

/** One of `pours` of BottlesAnswer. */
export interface BottlesAnswerPours {
  id?: string;
  place?: Count;
  verdict?: string;
  pour?: Litres;
  pourTexts?: string[];
  left?: Litres;
  leftTexts?: string[];
  notes?: Finding[];
}

/** One of `shelf` of BottlesAnswer. */
export interface BottlesAnswerShelf {
  id?: string;
  size?: string;
  left?: string;
  opened?: boolean;
  price?: string;
  notes?: Finding[];
}

/** What `cool` takes. */
export interface CoolInput {
  system?: System | null;
  first?: string | null;
  second?: string | null;
  between?: string | null;
  air?: string | null;
  target?: string | null;
  surface?: string | null;
}

/** What `cool` answers. */
export interface CoolAnswer {
  assumed?: ShownFigure[];
  verdict?: string;
  figures?: ShownFigure[];
  times?: Minutes[];
  low?: Celsius[];
  high?: Celsius[];
  touch?: ShownFigure[];
  warmth?: string;
  xTicks?: Minutes[];
  xTexts?: string[];
  yTicks?: Celsius[];
  yTexts?: string[];
  notes?: Finding[];
}

/** What `run-out` takes. */
export interface RunOutInput {
  system?: System | null;
  volume?: string | null;
  hole?: string | null;
  temperature?: string | null;
  less?: string | null;
  minutes?: string | null;
  head?: string | null;
  height?: string | null;
  walls?: string | null;
  at40?: string | null;
  at100?: string | null;
}

/** What `run-out` answers. */
export interface RunOutAnswer {
  assumed?: ShownFigure[];
  viscosity?: Viscosity;
  times?: Minutes[];
  left?: Millilitres[];
  warmer?: Millilitres[];
  figures?: ShownFigure[];
  warmth?: string;
  xTicks?: Minutes[];
  xTexts?: string[];
  yTicks?: Millilitres[];
  yTexts?: string[];
  notes?: Finding[];
}

/** What `leak` takes. */
export interface LeakInput {
  system?: System | null;
  tyre?: string | null;
  lamp?: string | null;
  side?: string | null;
  way?: string | null;
  taps?: string | null;
  drops?: string | null;
  caught?: string | null;
  time?: string | null;
  every?: string | null;
  stretch?: string | null;
  engine?: string | null;
  share?: string | null;
  band?: string | null;
  oil?: string | null;
  hour?: string | null;
  edge?: string | null;
}

/** What `leak` answers. */
export interface LeakAnswer {
  verdict?: string;
  assumed?: ShownFigure[];
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `debris` takes. */
export interface DebrisInput {
  system?: System | null;
  found?: string | null;
  depth?: string | null;
  size?: string | null;
  amount?: string | null;
  colour?: string | null;
  magnet?: string | null;
  oil?: string | null;
  noise?: string | null;
  lamp?: boolean | null;
  more?: boolean | null;
  again?: boolean | null;
  firstService?: boolean | null;
}

/** What `debris` answers. */
export interface DebrisAnswer {
  verdict?: string;
  actions?: string[];
  notes?: Finding[];
}

/** What `torque-check` takes. */
export interface TorqueCheckInput {
  system?: System | null;
  what?: string | null;
  thread?: string | null;
  torque?: string | null;
  seal?: string | null;
  seat?: string | null;
  class?: string | null;
  lubrication?: string | null;
  length?: string | null;
  inner?: string | null;
  outer?: string | null;
}

/** What `torque-check` answers. */
export interface TorqueCheckAnswer {
  verdict?: string;
  texts?: string[];
  base?: NewtonMetres;
  meant?: string;
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `torque-guess` takes. */
export interface TorqueGuessInput {
  system?: System | null;
  what?: string | null;
  thread?: string | null;
  seal?: string | null;
  seat?: string | null;
  class?: string | null;
}

/** What `torque-guess` answers. */
export interface TorqueGuessAnswer {
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `wrench` answers. */
export interface WrenchAnswer {
  wrenches?: WrenchAnswerWrenches[];
  take?: string;
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** One of `wrenches` of WrenchAnswer. */
export interface WrenchAnswerWrenches {
  id?: string;
  verdict?: string;
  unit?: string;
  low?: InUnit;
  high?: InUnit;
  step?: InUnit;
  mark?: InUnit;
  usable?: InUnit;
  usableAt?: Share;
  markAt?: Share;
  setting?: string;
  gets?: ShownFigure[];
  beside?: WrenchAnswerWrenchesBeside[];
  notes?: Finding[];
}

/** One of `beside` of WrenchAnswerWrenches. */
export interface WrenchAnswerWrenchesBeside {
  setting?: string;
  gets?: ShownFigure[];
  notes?: Finding[];
}

/** What `o-ring` takes. */
export interface ORingInput {
  system?: System | null;
  inside?: string | null;
  section?: string | null;
  outside?: string | null;
  used?: boolean | null;
  accuracy?: string | null;
  groove?: string | null;
  depth?: string | null;
}

/** What `o-ring` answers. */
export interface ORingAnswer {
  rings?: ORingAnswerRings[];
  verdict?: string;
  notes?: Finding[];
}

/** One of `rings` of ORingAnswer. */
export interface ORingAnswerRings {
  id?: string;
  series?: string;
  verdict?: string;
  texts?: string[];
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `wrench-check` takes. */
export interface WrenchCheckInput {
  system?: System | null;
  mass?: string | null;
  lever?: string | null;
  own?: string | null;
  centre?: string | null;
  high?: string | null;
  readings?: WrenchCheckInputReadings[] | null;
  tool?: string | null;
  graduation?: string | null;
  massOff?: string | null;
  leverOff?: string | null;
}

/** One of `readings` of WrenchCheckInput. */
export interface WrenchCheckInputReadings {
  reading?: string | null;
}

/** What `wrench-check` answers. */
export interface WrenchCheckAnswer {
  assumed?: ShownFigure[];
  verdict?: string;
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `turn` takes. */
export interface TurnInput {
  system?: System | null;
  thread?: string | null;
  turn?: string | null;
}

/** What `turn` answers. */
export interface TurnAnswer {
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `first-fill` takes. */
export interface FirstFillInput {
  system?: System | null;
  volume?: string | null;
  filter?: string | null;
  layout?: string | null;
  mount?: string | null;
  cooler?: boolean | null;
  tankOnly?: boolean | null;
}

/** What `first-fill` answers. */
export interface FirstFillAnswer {
  prefill?: string;
  read?: string;
  before?: ShownFigure[];
  after?: ShownFigure[];
  notes?: Finding[];
}

/** What `level` takes. */
export interface LevelInput {
  system?: System | null;
  gauge?: string | null;
  band?: string | null;
  share?: string | null;
  above?: string | null;
  covered?: string | null;
  marks?: string | null;
  glass?: string | null;
  slant?: string | null;
  lean?: string | null;
  offset?: string | null;
  temperature?: string | null;
  meantAt?: string | null;
  volume?: string | null;
}

/** What `level` answers. */
export interface LevelAnswer {
  assumed?: ShownFigure[];
  figures?: ShownFigure[];
  verdict?: string;
  share?: Share;
  corrected?: Share;
  change?: Litres;
  gauge?: string;
  line?: Share;
  lowMark?: Share;
  highMark?: Share;
  aimLow?: Share;
  aimHigh?: Share;
  covered?: Share;
  notes?: Finding[];
}

/** What `oil-curve` takes. */
export interface OilCurveInput {
  system?: System | null;
  grade?: string | null;
  first?: string | null;
  firstAt?: string | null;
  second?: string | null;
  secondAt?: string | null;
  index?: string | null;
  at?: string | null;
  want?: string | null;
  pour?: string | null;
}

/** What `oil-curve` answers. */
export interface OilCurveAnswer {
  figures?: ShownFigure[];
  assumed?: ShownFigure[];
  grades?: string[];
  temps?: Celsius[];
  low?: Viscosity[];
  high?: Viscosity[];
  xTicks?: Celsius[];
  xTexts?: string[];
  yTicks?: Viscosity[];
  yTexts?: string[];
  notes?: Finding[];
}

/** What `oil-mix` takes. */
export interface OilMixInput {
  system?: System | null;
  firstVolume?: string | null;
  firstGrade?: string | null;
  firstViscosity?: string | null;
  secondVolume?: string | null;
  secondGrade?: string | null;
  secondViscosity?: string | null;
  temperature?: string | null;
  want?: string | null;
}

/** What `oil-mix` answers. */
export interface OilMixAnswer {
  figures?: ShownFigure[];
  grades?: string[];
  notes?: Finding[];
}

/** What `fuel` takes. */
export interface FuelInput {
  system?: System | null;
  volume?: string | null;
  rise?: string | null;
  out?: string | null;
  before?: string | null;
  now?: string | null;
  band?: string | null;
  beforeAt?: string | null;
  nowAt?: string | null;
  grade?: string | null;
  fresh?: string | null;
  measured?: string | null;
}

/** What `fuel` answers. */
export interface FuelAnswer {
  figures?: ShownFigure[];
  assumed?: ShownFigure[];
  grades?: string[];
  verdict?: string;
  notes?: Finding[];
}

/** What `oil-pressure` takes. */
export interface OilPressureInput {
  system?: System | null;
  pressure?: string | null;
  temperature?: string | null;
  speed?: string | null;
  least?: string | null;
  most?: string | null;
  meantAt?: string | null;
  meantSpeed?: string | null;
  fullScale?: string | null;
  class?: string | null;
  graduation?: string | null;
}

/** What `oil-pressure` answers. */
export interface OilPressureAnswer {
  assumed?: ShownFigure[];
  verdict?: string;
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `oil-volume` takes. */
export interface OilVolumeInput {
  system?: System | null;
  volume?: string | null;
  from?: string | null;
  mass?: string | null;
  to?: string | null;
  density?: string | null;
  densityAt?: string | null;
}

/** What `oil-volume` answers. */
export interface OilVolumeAnswer {
  assumed?: ShownFigure[];
  figures?: ShownFigure[];
  notes?: Finding[];
}

/** What `convert` takes. */
export interface ConvertInput {
  system?: System | null;
  text?: string | null;
}

/** What `convert` answers. */
export interface ConvertAnswer {
  kind?: string;
  base?: InBase;
  to?: InBase;
  texts?: string[];
  notes?: Finding[];
}

/** What `bill` takes. */
export interface BillInput {
  system?: System | null;
  what?: string | null;
  number?: string | null;
  seller?: string | null;
  customer?: string | null;
  remark?: string | null;
  currency?: string | null;
  prices?: string | null;
  tax?: string | null;
  rounding?: string | null;
  cash?: string | null;
  discount?: string | null;
  estimate?: string | null;
  lines?: BillInputLines[] | null;
}

/** One of `lines` of BillInput. */
export interface BillInputLines {
  kind?: string | null;
  text?: string | null;
  count?: string | null;
  price?: string | null;
  discount?: string | null;
  tax?: string | null;
  of?: string | null;
}

/** What `bill` answers. */
export interface BillAnswer {
  currency?: string;
  prices?: string;
  digits?: Count;
  sum?: MinorUnits;
  discount?: MinorUnits;
  net?: MinorUnits;
  tax?: MinorUnits;
  rounding?: MinorUnits;
  total?: MinorUnits;
  lines?: BillAnswerLines[];
  taxes?: BillAnswerTaxes[];
  estimate?: MinorUnits;
  more?: MinorUnits;
  less?: MinorUnits;
  notes?: Finding[];
}

/** One of `lines` of BillAnswer. */
export interface BillAnswerLines {
  unit?: string;
  count?: string;
  rate?: string;
  price?: MinorUnits;
  discount?: MinorUnits;
  amount?: MinorUnits;
  notes?: Finding[];
}

/** One of `taxes` of BillAnswer. */
export interface BillAnswerTaxes {
  rate?: string;
  base?: MinorUnits;
  tax?: MinorUnits;
  notes?: Finding[];
}

/** What `gauge` takes. */
export interface GaugeInput {
  system?: System | null;
  edge?: string | null;
  ratio?: string | null;
  now?: string | null;
  zoom?: string | null;
}

/** What `gauge` answers. */
export interface GaugeAnswer {
  verdict?: string;
  trusted?: boolean;
  scale?: PixelsPerMillimetre;
  edge?: Pixels;
  low?: Pixels;
  high?: Pixels;
  ruler?: Pixels[];
  marks?: GaugeAnswerMarks[];
  notes?: Finding[];
}

/** One of `marks` of GaugeAnswer. */
export interface GaugeAnswerMarks {
  across?: Pixels;
  text?: string;
  size?: string;
  notes?: Finding[];
}
