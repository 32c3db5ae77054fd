import { when } from '../words/dates.js';
import { hasWord, t } from '../words/catalogue.js';
import { short } from '../ui/lists.js';
import { tried } from './read.js';

/** @import { Aside } from '../store/records.d.ts' */
/** @import { Unread } from './tally.js' */

const isText = (value) => typeof value === 'string' && value !== '';

/**
 * What a record is called, and of when it is, as far as it can be said.
 *
 * @param {string} kind
 * @param {any} value
 * @param {{ name: string }} [of] the job that it is of
 * @returns {{ name?: string, time?: string }}
 */
export function named(kind, value, of) {
  const names = new Map([
    ['job', [value?.name, value?.started]],
    ['event', [of?.name, value?.time]],
    ['card', [[value?.card?.make, value?.card?.model].filter(isText).join(' '), value?.changed]],
    ['fact', [undefined, value?.time]],
    ['setting', [value?.key]],
  ]);
  const [name, time] = names.get(kind) ?? [];
  return { ...(isText(name) && { name }), ...(isText(time) && { time }) };
}

/**
 * What lies aside, told as what can't be read of a file.
 *
 * @param {Aside} row
 * @returns {Unread}
 */
export const toldOf = (row) => ({
  kind: row.kind,
  ...named(row.kind, tried(row).value),
  why: row.why[0] ?? { code: 'record-not-json', where: '/', grade: 'refuse' },
});

/**
 * The sentence that says of a record that it can't be read, and why.
 *
 * @param {Unread} unread
 */
export function sentenceOf({ kind, name, time, why }) {
  const form = name && time ? 'both' : name ? 'named' : time ? 'dated' : 'bare';
  const code = `finding.${why.code}`;
  return t(`unread.${form}`, {
    what: t(hasWord(`unread.${kind}`) ? `unread.${kind}` : 'unread.line'),
    name: short(name),
    date: short(when(time ?? '')),
    why: hasWord(code) ? t(code, why.values) : t('finding.record-not-json'),
  });
}
