// What is left in plain letters in a pseudo-language: all of it must be what no
// translator is given.
import { readdirSync } from 'node:fs';
import { defaultLanguage } from '../catalogue.js';
import { stored } from './job-page.js';
import { sampleCard } from './words.js';

// Members of cards, jobs and events in which people write what they like.
const free = ['make', 'model', 'title', 'where', 'place', 'notes', 'order', 'method', 'ownNumber'];
const also = ['name', 'text', 'value'];

const samples = readdirSync(new URL('../../../specs/cards', import.meta.url)).map((file) =>
  sampleCard(file.replace('.json', '')),
);

function* freeTexts(value, name) {
  if (typeof value === 'string') {
    if ([...free, ...also].includes(name)) yield value;
  } else if (value)
    for (const [key, part] of Object.entries(value))
      yield* freeTexts(part, Array.isArray(value) ? name : key);
}

// What the ways to the screens type into fields, and what their files say that nobody knows.
const typed =
  'wheel,polish-tank,polish,Clear as water,Plainford One,Plainford Other,hovercraft,stick-in,parsecs,four,ERU,short,long,Orrinshaw Pike,Orrinshaw,Pike 300,Plainford Heron,Plainford,Heron 320,Heron 520,25 Nm,60 mm adapter,scale 10 to 60 Nm,grip 300 mm,quickly'.split(
    ',',
  );

const symbols = [
  /(?<=\d ?)(in|min|bar)(?!\p{L})|^(in|min|bar)$/gu, // units that are words in English too
  /\b(US|imp) (qt|pt|gal|fl oz)\b|\b(m[Lm]|k[gmN]|mi|lb|psi|[mkM]Pa|daN|lbf·(ft|in))\b|\bkgf([·/]c?m)?/g,
  /\b(SAE )?\d+W-\d+|\bSAE (grade )?\d+|\b(API )?(S[A-P]|GL-\d)\b|\b(JASO )?M[AB]\d?\b|\bUN[CF]\b|\bAS568-\d+/g, // of oils, screws, threads and O-rings
  /^(card|circuits)( › \w+)+$/g, // where cards differ, by the members of their format
  /"(format|version|make|model|layout|text)"|(?<=: )(array|text)(?=\.\]$)|^text: ?$/g, // members that are wrong, and their types
  /(?<=\d )[A-Z]{3}\b/g, // of money (ISO 4217)
  /(turned round )?x{20,}/g, // a hostile text, cut
  /\btidysump-[\w-]+\.jsonl\.gz\b|\b[0-9a-f]{12}\b/g, // a file's name, a version
];

/** The names of months and of the halves of a day, as the browser writes them. */
const calendarWords = (tag) =>
  [...Array(12).keys()].flatMap((month) =>
    ['long', 'short'].flatMap((style) =>
      new Intl.DateTimeFormat(tag, { month: style, hour: 'numeric', hour12: true })
        .formatToParts(new Date(2026, month, 1, 2 * month))
        .filter(({ type }) => ['month', 'dayPeriod'].includes(type))
        .map(({ value }) => value),
    ),
  );

const marks = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
const plain = (text) => text.replace(marks, '').replace(/\s+/g, ' ').trim();

/** All texts that the phone's store and the sample cards hold. */
async function written(page) {
  const lists = ['jobs', 'events', 'cards', 'facts'].map((list) =>
    stored(page, list).catch(() => []),
  );
  const records = [...samples, ...(await Promise.all(lists))];
  const texts = new Set(records.flatMap((record) => [...freeTexts(record)]).map(plain));
  // A figure alone hides no word, but could stand in a longer one: a version, a number.
  return [...texts].filter((text) => /\p{L}/u.test(text));
}

/** Those of a page's texts, in a pseudo-language, that have words in plain letters, with these. */
export async function untranslated(page, texts, { tag }) {
  const known = [...(await written(page)), ...typed, defaultLanguage.name, ...calendarWords(tag)];
  known.sort((a, b) => b.length - a.length); // a place or a name may be a part of another
  return texts.map(plain).flatMap((text) => {
    const unknown = known.reduce((rest, name) => rest.replaceAll(name, ''), text);
    const words = symbols
      .reduce((rest, pattern) => rest.replace(pattern, ''), unknown)
      .match(/[A-Za-z][A-Za-z'-]+/g);
    return words ? [`${words.join(' ')}: ${text}`] : [];
  });
}
