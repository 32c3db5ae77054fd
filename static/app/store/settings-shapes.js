import { own } from '../site/own.js';

// What each setting looks like. The store may hold anything, from another version or from
// a file: what doesn't fit is as if it weren't there.

/** @typedef {(value: any) => boolean} Shape */

/** @type {(letters: number) => Shape} */
const text = (letters) => (value) => typeof value === 'string' && value.length <= letters;
/** @type {(...values: unknown[]) => Shape} */
const oneOf =
  (...values) =>
  (value) =>
    values.includes(value);
/** @type {Shape} */
const flag = (value) => typeof value === 'boolean';
/** @type {Shape} */
const time = (value) => text(40)(value) && !Number.isNaN(Date.parse(value));
/** @type {Shape} */
const isRecord = (value) => value !== null && typeof value === 'object' && !Array.isArray(value);
/** @type {(each: Shape) => Shape} */
const listOf = (each) => (value) => Array.isArray(value) && value.every(each);
/** @type {(each: Shape) => Shape} */
const recordOf = (each) => (value) => isRecord(value) && Object.values(value).every(each);
/**
 * A record in which each of these members fits.
 *
 * @type {(members: { [name: string]: Shape }) => Shape}
 */
const record = (members) => (value) =>
  isRecord(value) && Object.entries(members).every(([name, shape]) => shape(own(value, name)));
/** @type {(shape: Shape) => Shape} */
const maybe = (shape) => (value) => value === undefined || shape(value);

const typed = text(100_000); // what can be typed into a form
const at = record({ time });

/** @type {Shape} */
const moment = (value) => typeof value === 'number' && Math.abs(value) <= 8.64e15; // ms, as Date has it
/** @type {Shape} */
const billed = ({ cost, ...others }) => maybe(recordOf(typed))(cost) && recordOf(typed)(others);

/** @type {Map<string, Shape>} */
const shapes = new Map(
  Object.entries({
    system: text(20), // which there are, the core says
    theme: oneOf('auto', 'light', 'dark'),
    language: text(40),
    seenChange: text(100),
    doneBy: typed,
    gauge: record({ edge: text(40), ratio: text(40) }),
    bills: flag,
    forOthers: flag,
    books: flag,
    bill: (value) => isRecord(value) && billed(value),
    due: listOf(
      record({
        ...{ id: text(1000), name: typed, remind: text(40) },
        ...{ read: maybe(text(40)), day: maybe(text(40)), at: maybe(text(100)) },
      }),
    ),
    askedOdometer: text(40), // day
    notice: (value) => value === false || record({ told: moment })(value),
    backup: at,
    backupLater: at,
    erased: text(100),
    planned: text(100),
    garage: text(100),
    promise: record({ time, kept: flag }),
    ways: recordOf(listOf(text(1000))),
  }),
);

// What is typed into a calculation: texts, ticks, and rows of them.
/** @type {Shape} */
const field = (value) => typed(value) || flag(value);
/** @type {Shape} */
const calculation = recordOf((value) => field(value) || listOf(recordOf(field))(value));

/** Settings that are about this phone: they are in no backup, and none brings them. */
const here = new Set([
  'askedOdometer',
  'backup',
  'backupLater',
  'erased',
  'planned',
  'garage',
  'promise',
  'ways',
]);

/**
 * Reports whether a setting is about this phone alone.
 *
 * @param {string} key
 */
export const ofThisPhone = (key) => here.has(key);

/**
 * Reports whether a setting is known, and a value fits it.
 *
 * @param {string} key
 * @param {unknown} value
 */
export function fits(key, value) {
  const shape = key.startsWith('calculation/') ? calculation : shapes.get(key);
  return Boolean(shape?.(value));
}

/** The settings that there are, but for those of the calculations. */
export const known = [...shapes.keys()];
