// What a person does with the app, from the first visit to the end of a battery: each
// line is one capability, seen in every engine.
import { calculations, trouble } from './lines-bench.js';
import {
  awake,
  bar,
  level,
  note,
  photo,
  plan,
  reading,
  sheet,
  start,
  timer,
  undo,
} from './lines-job.js';
import { backup, codes, editor, manual, restore, room } from './lines-records.js';
import { colours, kept, offlineStart, resume, twoWindows, update, visit } from './lines-site.js';

/**
 * The lines in their order; a line may need what earlier ones left. `run(phone)` throws
 * where the capability fails, and resolves to an outcome of outcome.js where the page does
 * something else instead.
 */
export const walk = [
  visit,
  kept,
  offlineStart,
  colours,
  plan,
  start,
  awake,
  bar,
  undo,
  reading,
  note,
  photo,
  level,
  timer,
  calculations,
  trouble,
  editor,
  manual,
  sheet,
  codes,
  room,
  backup,
  restore,
  twoWindows,
  update,
  resume,
];

// WPE saves no file that a page gives away.
const neverOld = [backup, restore];

/** The lines that an engine walks. */
export const linesOf = (engine) =>
  engine === 'webkit-old' ? walk.filter((line) => !neverOld.includes(line)) : walk;
