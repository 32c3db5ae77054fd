import { hasWord, t, verbatim } from '../words/catalogue.js';
import { own } from '../site/own.js';

// What a reading says, such as "bolt.drain.torque": of a thing, `bolt.drain`, one aspect,
// `torque`. The core has the list of all (limits.whats).

/** @param {string} what */
export const aspectOf = (what) => what.slice(what.lastIndexOf('.') + 1);

/** @param {string} what */
export const thingOf = (what) => what.slice(0, Math.max(what.lastIndexOf('.'), 0));

/** How what a reading says is called: "drain plug: torque". */
export const nameOf = (what) => {
  const thing = thingOf(what);
  const aspect = `@manual.is.${aspectOf(what)}`;
  return thing ? t('manual.what', { thing: `@manual.of.${thing}`, aspect }) : t(aspect.slice(1));
};

/** The words in which the card says it, by aspect: a family of the catalogue. */
const families = {
  device: 'device.',
  state: 'state.',
  stance: 'stance.',
  drive: 'drive.',
  seal: 'seal.',
  cooling: 'cooling.',
  kind: 'edit.filter-',
};

/** What a reading says, as it is read. */
export function valueOf({ what, text }) {
  const aspect = aspectOf(what);
  const word = own(families, aspect) + text;
  if (hasWord(word)) return t(word);
  if (aspect === 'every')
    return t(text === '1' ? 'manual.every-time' : 'manual.every', { nth: text });
  return verbatim(aspect === 'years' ? text.replace('-', '–') : text);
}

/** The same where it stands beside something else: "wait 3 min". */
export function noteOf(reading) {
  const word = `manual.note.${aspectOf(reading.what)}`;
  const value = valueOf(reading);
  return hasWord(word) ? t(word, { value }) : value;
}
