// What the JSON API takes and gives, for the page's scripts. Made of its OpenAPI document: `python -m tools.page_types`.
// Answers hold every field; a request may leave out what has a default or may be null.

/** Typed ABC, to be looked at. */
export interface AbcText {
  text: string;
  width: number;
}

/** Typed ABC as it is read: its systems as far as it can be read, and what is wrong with it. */
export interface AbcView {
  systems: SystemView[];
  problem: Problem | null;
  warnings: string[];
}

/** A note that a figure adds: its number in the figure, its written pitch, and its element in the SVG. */
export interface AddedNote {
  note: number;
  written: string;
  element: string;
}

/** One thing to practise: what was measured, and what to do. */
export interface AdviceView {
  subject: string;
  title: string;
  finding: string;
  practice: string;
  bars: number[];
  technique: string;
}

/** A figure that could stand at a place; `worth` is what the whole arrangement would be worth with it. */
export interface AlternativeView {
  id: string;
  name: string;
  family: string;
  reason: string;
  level: number;
  difficulty: number;
  worth: number;
  stands: boolean;
  svg: string;
}

/** An arrangement as the page shows it. `other` holds the figures of the version beside it. */
export interface ArrangementView {
  id: number;
  tune_id: number;
  title: string;
  composer: string;
  key: string;
  step: StepView;
  setting: SettingView;
  kept_share: number;
  bar_numbers: number[];
  figures: FigureView[];
  other: FigureView[];
  other_seed: number | null;
  left_out: number;
  systems: SystemView[];
  notes: string[];
}

/** When a bar begins and ends, in seconds, and its index in the arrangement. */
export interface BarTime {
  start: number;
  end: number;
  bar: number;
}

/** The number of a new arrangement. */
export interface Copied {
  id: number;
}

/** A decision about a figure. `other` is the figure that replaces it; `note` counts from 0 over the figure's grace notes and then its notes. */
export interface Decision {
  /** The step that was looked at; the answer is 409 when there is a newer one. */
  at: number;
  kind: "keep" | "release" | "leave-out" | "replace" | "raise" | "lower";
  figure: string;
  other: string | null;
  note: number | null;
}

/** An example as it will be printed, plain over ornamented. */
export interface ExampleView {
  number: number;
  technique: string;
  name: string;
  family: string;
  first_bar: number;
  last_bar: number;
  reason: string;
  svgs: string[];
}

/** An ornament: asked and done, asked and missed, or added by the player; `other` is the nearest other reading. */
export interface FigureResult {
  bar: number;
  beat: number;
  where: string;
  technique: string;
  name: string;
  label: string;
  family: string;
  status: "done" | "missed" | "added";
  onset_ticks: number;
  passage: number;
  confidence: number;
  other: string;
}

/** A figure of the arrangement. `where` is its place in words, `elements` are the ids of its notes in the SVG, `difficulty` goes from 0 to 1. */
export interface FigureView {
  id: string;
  number: number;
  technique: string;
  name: string;
  label: string;
  family: string;
  bar: number;
  beat: number;
  where: string;
  reason: string;
  text: string;
  how: string;
  level: number;
  difficulty: number;
  is_kept: boolean;
  elements: string[];
  added: AddedNote[];
}

/** One thing that happened, in one sentence; `kind` is one of `listening.happening.Kind`, `bars` are those it touches, `onset_sec` is where it is first heard in the recording, `amount` how much, in `unit`. */
export interface HappeningView {
  kind: string;
  words: string;
  bars: number[];
  onset_sec: number | null;
  count: number;
  amount: number | null;
  unit: string;
  confidence: number;
}

/** What there is to hear at a tempo: lines (one at a time) and band parts, each a sound of the same length by its key under ``/api/sounds``. The count-in ends at `starts_at` seconds, the music at `ends_at`. */
export interface HearingView {
  tempo: number;
  feel: string;
  starts_at: number;
  ends_at: number;
  bars: BarTime[];
  lines: LineTime[];
  band: Record<string, string>;
  remark: string;
}

/** A step of a job: `done` of `total`. */
export interface JobStep {
  name: string;
  done: number;
  total: number;
}

/** A job as it stands. `about` says what it is for, `result` is what it made, `file` where its file can be fetched (empty where there is none). */
export interface JobView {
  id: string;
  kind: string;
  title: string;
  about: string;
  state: "waiting" | "running" | "done" | "failed" | "cancelled";
  steps: JobStep[];
  problem: string;
  result: Record<string, unknown> | null;
  file: string;
}

/** Whose take it is; None for nobody in particular. */
export interface Keeping {
  student: number | null;
}

/** A player who gets no part, and why. */
export interface LeftOut {
  player: string;
  reason: string;
}

/** Another plan; the answer is 409 when the lesson is past revision `at`. */
export interface LessonChange {
  at: number;
  plan: Plan;
}

/** A lesson on the shelf. */
export interface LessonView {
  id: number;
  arrangement: number;
  tune: string;
  title: string;
  plan: Plan;
  revision: number;
  changed_at: string;
}

/** A printed note: its element in the SVG, when it begins (ticks, 1680 a quarter note), and its staff place above written C0. */
export interface LineNote {
  element: string;
  onset_ticks: number;
  step: number;
}

/** When the notes of a line sound: onset and end in seconds, and the element in the SVG. */
export interface LineTime {
  name: string;
  sound: string;
  notes: [number, number, string][];
}

/** One line of an arrangement, engraved alone; `ends_ticks` is where each bar ends. */
export interface LineView {
  systems: SystemView[];
  bar_numbers: number[];
  ends_ticks: number[];
  notes: LineNote[];
}

/** A student's name. */
export interface Name {
  name: string;
}

/** What a copy of an arrangement is to be called. */
export interface NewCopy {
  name: string;
}

/** A lesson to be made on an arrangement, or to be looked at beforehand. */
export interface NewLesson {
  arrangement: number;
  plan: Plan;
}

/** What there is to choose among for a lesson. */
export interface OfferView {
  title: string;
  composer: string;
  level: number;
  phrases: PhraseView[];
  techniques: TechniqueOffer[];
}

/** The teacher's words: on the lesson by name (title, subtitle, composer, student, studio, notes, rights), and on techniques by id and field (name, label, text, how, when, fault, cure). */
export interface OwnWords {
  words: Record<string, string>;
  techniques: Record<string, Record<string, string>>;
}

/** A phrase of the arrangement, engraved alone in one or more systems; `returns` when its idea was heard before. */
export interface PhraseView {
  number: number;
  first_bar: number;
  last_bar: number;
  returns: boolean;
  figures: number;
  svgs: string[];
}

/** What a lesson holds. Techniques null: those of the arrangement; phrases (numbers from 0) null: all; level null: the arrangement's. */
export interface Plan {
  techniques: string[] | null;
  phrases: number[] | null;
  level: number | null;
  language: string;
  note_names: "english" | "german" | "solfege" | null;
  paper: "a4" | "letter";
  players: string[];
  sections: string[];
  audio: "mp3" | "flac" | "wav";
  overrides: OwnWords;
}

/** The examples that a plan leads to, and the players who get no part. `problem` says why there is nothing. */
export interface PreviewView {
  examples: ExampleView[];
  left_out: LeftOut[];
  problem: string;
}

/** What is wrong, in words; for ABC, where (line and column from 1) and how many characters are meant. */
export interface Problem {
  problem: string;
  line: number | null;
  column: number | null;
  length: number;
}

/** What a take says. `headline` is its first sentence, the one thing that matters most; `key_words` tell how far it lies from the tune's pitch, empty where it does not. */
export interface Report {
  headline: string;
  praise: string;
  happenings: HappeningView[];
  advice: AdviceView[];
  remarks: string[];
  key_words: string;
  likeness: number;
  tuning_cents: number;
  level_db: number;
  level_range_db: number;
  notes: number;
  right: number;
  figures: FigureResult[];
  slips: SlipView[];
  by_note: Tendency[];
  by_register: Tendency[];
  timing: TimingView;
  passages: TraceNote[][];
}

/** How many tunes an archive has added, and how many of its tunes stood on the shelf already; where the page was to ask first, and some did, nothing was added. */
export interface RestoredView {
  tunes: number;
  doubles: number;
}

/** For whom and how the tune is arranged; the tempo in beats a minute. */
export interface SettingChange {
  /** The step that was looked at; the answer is 409 when there is a newer one. */
  at: number;
  player: string;
  level: number;
  idiom: "jazz" | "blues" | "folk" | "irish";
  feel: "straight" | "swing";
  tempo: number;
  only: string[];
  without: string[];
  seed: number;
  /** Figures as a share of what is usual */
  density: number;
}

/** The setting in force; the tempo in beats a minute, `beat` is the beat's length in quarter notes. */
export interface SettingView {
  player: string;
  level: number;
  idiom: string;
  feel: string;
  tempo: number;
  beat: number;
  only: string[];
  without: string[];
  seed: number;
  density: number;
}

/** A wrong, left-out or added note, in words. */
export interface SlipView {
  bar: number;
  beat: number;
  where: string;
  kind: "wrong" | "left out" | "added";
  passage: number;
  words: string;
}

/** A recording has come in and is being listened to: the take's name, and the job that listens. The take is there when the job is done; when it fails, its problem says what is wrong with the recording, which is then gone. */
export interface Started {
  take: string;
  job: JobView;
}

/** Undo or redo. */
export interface StepChange {
  /** The step that was looked at; the answer is 409 when there is a newer one. */
  at: number;
}

/** Where the arrangement stands in its history, and what can be undone and redone. */
export interface StepView {
  at: number;
  undoes: string;
  redoes: string;
}

/** A student, how many takes are kept, and when the last was made (empty for none). */
export interface StudentView {
  id: number;
  name: string;
  takes: number;
  last_at: string;
}

/** One engraved system. `first` is the index (from 0) of its first bar. */
export interface SystemView {
  svg: string;
  first: number;
  bars: number;
}

/** A take in figures: the `tempo` asked for in beats and the one played in `quarters` a minute, `pitch_cents` the median distance of its notes from their pitch, `spread_ms` the standard deviation of their lateness, `done` of `asked` ornaments, `right` of `notes` melody notes. */
export interface TakeFacts {
  line: "plain" | "ornamented";
  tempo: number;
  quarters: number;
  feel: string;
  seconds: number;
  is_with_band: boolean;
  offset_sec: number;
  pitch_cents: number;
  spread_ms: number;
  done: number;
  asked: number;
  added: number;
  right: number;
  notes: number;
}

/** What was to be played, engraved, with what was played in one passage of the take; labels are those of `figures` of the report (element ``s1-l`` and the figure's number). */
export interface TakeLine {
  systems: SystemView[];
  bar_numbers: number[];
  ends_ticks: number[];
  notes: LineNote[];
  passage: number;
  trace: TraceNote[];
}

/** A take as lists show it. */
export interface TakeSummary {
  id: string;
  tune_id: number;
  tune: string;
  arrangement: number | null;
  student_id: number | null;
  student: string;
  taken_at: string;
  is_kept: boolean;
  facts: TakeFacts;
}

/** A take with its report. */
export interface TakeView {
  id: string;
  tune_id: number;
  tune: string;
  arrangement: number | null;
  student_id: number | null;
  student: string;
  taken_at: string;
  is_kept: boolean;
  facts: TakeFacts;
  report: Report;
}

/** A technique that the tune offers: how often the arrangement uses it, in which phrases it could be shown, and its usual words. */
export interface TechniqueOffer {
  id: string;
  name: string;
  family: string;
  level: number;
  used: number;
  phrases: number[];
  texts: Record<string, string>;
}

/** A median over `count` notes of one kind: cents of a note or register, or milliseconds late on a beat. */
export interface Tendency {
  name: string;
  count: number;
  value: number;
}

/** Tempo and time: drift from first to last quarter in percent, spread around the player's own beat, swing ratio, the usual grace note, and how far behind the band or click the notes on the beat came (None without one). */
export interface TimingView {
  tempo: number;
  drift_percent: number;
  spread_ms: number;
  swing_ratio: number;
  grace_ms: number | null;
  behind_band_ms: number | null;
  beats: Tendency[];
}

/** A played note over the printed line: from where to where (ticks, and seconds of the recording), its staff place above written C0, and the course of its pitch in cents against that place and the player's own tuning, evenly spaced over its length. */
export interface TraceNote {
  start_ticks: number;
  end_ticks: number;
  onset_sec: number;
  end_sec: number;
  step: number;
  kind: "right" | "wrong" | "figure" | "added";
  name: string;
  contour: number[];
}

/** Another title or other tags. */
export interface TuneChange {
  title: string | null;
  tags: string[] | null;
}

/** A tune on the shelf and its arrangements. */
export interface TuneView {
  id: number;
  title: string;
  composer: string;
  key: string;
  metre: string;
  bars: number;
  tags: string[];
  source_name: string;
  changed_at: string;
  arrangement: number | null;
  versions: VersionView[];
}

/** Typed ABC, to be brought in. */
export interface Typed {
  text: string;
  player: string;
  level: number;
  idiom: "file" | "jazz" | "blues" | "folk" | "irish";
  unfolds: boolean;
}

/** An arrangement of a tune by its number and name. */
export interface VersionView {
  id: number;
  name: string;
  changed_at: string;
}

/** What was brought in: the tunes, and what could not be. */
export interface Welcome {
  tunes: TuneView[];
  problems: Problem[];
}
