// What lies in the phone's store.
import type { DBSchema, IDBPDatabase } from 'idb';
import type { Bench, Bike, Book, Card, Event, FactKind, Finding, Summary } from '../core/core.d.ts';

/** A job as it was begun: what it is planned from, and what lists show of it. */
export interface JobRecord {
  id: string;
  name: string;
  /** time */
  started: string;
  card: Card;
  bench: Bench;
  /** id of its bike; without it, that of the card, whose id is also that of the bike that it implies */
  bike?: string;
  /** the card without the figures of the bike's own, where some lie over it */
  raw?: Card;
  /** ids of the steps of the plan that it began with, in order; one of before version 4 may lack them */
  steps?: string[];
  summary?: Partial<Summary>;
}

/** What lists show of a job: see lineOf. */
export interface LogLine {
  id: string;
  /** id of its bike: in the store that which it was begun on, in what is read that whose it is (see whose.js) */
  bike: string;
  /** make and model; in what is read, what its bike is called */
  name: string;
  /** make and model, in what is read */
  model?: string;
  /** time */
  started: string;
  summary: Partial<Summary>;
  /** its record has the steps that it began with */
  planned?: boolean;
}

/** An event with the id of its job. */
export interface KeptEvent extends Event {
  id: string;
  job: string;
}

/** Events of a job that came in as a whole; written once, with the job, and never changed. */
export interface Bundle {
  job: string;
  events: (Event & { id: string })[];
}

/**
 * Another content under an id that is here, which is never replaced: `text` is its
 * canonical JSON; of another record of the job itself the id is ''. Of a fact, `job` is its
 * book and subject: see besideFacts.
 */
export interface Beside {
  job: string;
  kind: 'event' | 'job' | 'fact';
  id: string;
  text: string;
}

/** What came in and can't be read; it is tried again. */
export interface Aside {
  /** its kind and its text */
  key: string;
  kind: string;
  /** canonical JSON, or the line as it stood in the file */
  text: string;
  why: Finding[];
  /** when the file was made that it came from; time */
  from: string;
  /** when it came in; time */
  time: string;
}

/** How many events of a job were in a file that this phone handed out. */
export interface Saved {
  /** id of the job */
  id: string;
  events: number;
  /** when the file was made; time */
  made: string;
}

/**
 * What was told of a subject that is no job: written once and never changed, taken back by
 * another. What is true of the subject follows from all of its facts, in the core.
 */
export interface Fact {
  book: Book;
  /** the subject: id of a bike, of the job of a visit, of a can, an item or a wrench */
  of: string;
  id: string;
  kind: FactKind;
  /** time */
  time: string;
  /** day on this phone */
  day: string;
  /** its place: one more than the highest that was known here of its subject */
  seq: number;
  what?: string;
  value?: string;
  text?: string;
  job?: string;
  signs?: { [name: string]: string };
}

/** What is told of a bike, as the core makes it of the bike's facts: lists need no core. */
export interface BikeRow extends Partial<Bike> {
  id: string;
  /** time of its newest fact */
  changed?: string;
  /** its facts have changed since: whichever change that was */
  stale?: string;
}

/** What stands in a field and is not kept yet: its key is the scope and the field. */
export interface Draft {
  key: string;
  value: any;
  /** time */
  time: string;
}

/**
 * A picture of a job: its id is that of the event that says it was taken; or one of a fact,
 * whose subject stands in the place of the job.
 */
export interface Picture {
  job: string;
  id: string;
  what: string;
  blob: Blob;
  bytes: number;
}

/** A person's own card: `text` is its canonical form, `bike` the line of it in lists. */
export interface CardRecord extends CardLine {
  card: Card;
  text: string;
}

/** What lists show of a person's own card. */
export interface CardLine {
  key: string;
  bike: any;
  /** time */
  changed: string;
  pinned?: boolean;
}

export interface Schema extends DBSchema {
  jobs: { key: string; value: JobRecord };
  events: { key: [job: string, id: string]; value: KeptEvent };
  settings: { key: string; value: any };
  cards: { key: string; value: CardRecord };
  lines: { key: string; value: CardLine };
  photos: { key: [job: string, id: string]; value: Picture };
  bundles: { key: string; value: Bundle };
  beside: { key: [job: string, kind: string, id: string, text: string]; value: Beside };
  aside: { key: string; value: Aside };
  saved: { key: string; value: Saved };
  drafts: { key: string; value: Draft };
  log: { key: string; value: LogLine; indexes: { bike: string } };
  facts: { key: [book: string, of: string, id: string]; value: Fact };
  bikes: { key: string; value: BikeRow };
}

export type Database = IDBPDatabase<Schema>;
