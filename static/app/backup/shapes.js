import { fits } from '../store/settings-shapes.js';

// What each kind of record must have, for the page to work with it. What the core has
// to say of it comes after that.

const isText = (value) => typeof value === 'string';
const isTime = (value) =>
  isText(value) && /^\d{4}-\d\d-\d\dT/.test(value) && !Number.isNaN(Date.parse(value));
const isBase64 = (text) => text.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(text);
const isObject = (value) => value !== null && typeof value === 'object' && !Array.isArray(value);
const isList = (value) => Array.isArray(value) && value.every(isObject);

const checks = {
  text: isText,
  id: (value) => isText(value) && value !== '',
  time: isTime,
  object: isObject,
  list: isList,
  base64: (value) => isText(value) && isBase64(value),
  texts: (value) => value === undefined || (Array.isArray(value) && value.every(isText)),
  maybeId: (value) => value === undefined || (isText(value) && value !== ''),
  maybeText: (value) => value === undefined || isText(value),
  maybeNumber: (value) => value === undefined || typeof value === 'number',
  textMap: (value) =>
    value === undefined || (isObject(value) && Object.values(value).every(isText)),
  yes: (value) => value === undefined || typeof value === 'boolean',
};

/** By kind of record: its members, each with what it has to be. */
const shapes = new Map(
  Object.entries({
    setting: { key: 'id' },
    card: { key: 'id', card: 'object', changed: 'text', pinned: 'yes' },
    job: {
      id: 'id',
      name: 'text',
      started: 'time',
      bike: 'maybeId',
      card: 'object',
      bench: 'object',
      steps: 'texts',
    },
    event: { job: 'id', id: 'id' },
    bundle: { job: 'id', events: 'list' },
    fact: {
      book: 'id',
      of: 'id',
      id: 'id',
      kind: 'id',
      time: 'time',
      day: 'maybeText',
      seq: 'maybeNumber',
      what: 'maybeText',
      value: 'maybeText',
      text: 'maybeText',
      job: 'maybeText',
      signs: 'textMap',
    },
    photo: { job: 'id', id: 'id', what: 'text', data: 'base64' },
    beside: { job: 'id', kind: 'text', id: 'text', text: 'text' },
    aside: { kind: 'text', text: 'text' },
  }),
);

/**
 * A finding about a record that came in.
 *
 * @param {string} code
 * @param {{ [name: string]: string }} [values]
 * @returns {import('../core/core.d.ts').Finding}
 */
export const refused = (code, values = {}) => ({ code, where: '/', grade: 'refuse', values });

/**
 * Why the page can't work with a record; nothing when it can.
 *
 * @param {string} kind
 * @param {any} value
 */
export function misshapen(kind, value) {
  const shape = shapes.get(kind);
  if (!shape) return refused('unknown-record', { text: kind });
  if (!isObject(value)) return refused('record-form', { member: kind });
  for (const [member, check] of Object.entries(shape)) {
    // eslint-disable-next-line tidysump/own-lookup
    const given = Object.hasOwn(value, member) ? value[member] : undefined;
    // eslint-disable-next-line tidysump/own-lookup
    if (!checks[check](given)) return refused('record-form', { member });
  }
  if (kind === 'card' && !isText(value.card.id)) return refused('record-form', { member: 'id' });
  if (kind === 'setting' && !fits(value.key, value.value))
    return refused('record-form', { member: 'value' });
  return undefined;
}
