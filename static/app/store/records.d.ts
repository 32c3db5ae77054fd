// What lies in the phone's store.
import type { DBSchema, IDBPDatabase } from 'idb';
import type { Bench, Card, Event, Summary } from '../core/core.d.ts';

/** A job as it was begun: what it is planned from, and what lists show of it. */
export interface JobRecord {
  id: string;
  name: string;
  /** time */
  started: string;
  card: Card;
  bench: Bench;
  summary?: Partial<Summary>;
}

/** What lists show of a job: see lineOf. */
export interface LogLine {
  id: string;
  /** id of its card */
  bike: string;
  name: string;
  /** time */
  started: string;
  summary: Partial<Summary>;
}

/** An event with the id of its job. */
export interface KeptEvent extends Event {
  id: string;
  job: string;
}

/** A picture of a job: its id is that of the event that says it was taken. */
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
  log: { key: string; value: LogLine; indexes: { bike: string } };
}

export type Database = IDBPDatabase<Schema>;
