// Cuts a pack's text into the texts of its cards, unread: the core reads each, and
// finds what a parser of the page would pass over, such as a name that stands twice.

/** The most that is taken in at once. */
export const mostBytes = 50_000_000;
export const mostCards = 10_000;

const format = 'tidysump-cards';
const version = 1;
const closing = new Map([
  ['{', '}'],
  ['[', ']'],
]);
const telling = /["{}[\],]/g; // all that decides where something ends

/** The texts in a pack, or the text of a single card: {texts}, or {fault}, a word id. */
export function cardTexts(source) {
  const text = source.replace(/^\ufeff/, '').trim();
  if (!text) return { fault: 'pack.empty' };
  if (text[0] !== '{') return { fault: 'pack.not-one' };
  const cut = cutUp(text);
  if (cut.fault || cut.texts === undefined) return cut.fault ? cut : { texts: [text] };
  const [from, to] = cut.list;
  const fault = faultOf(text.slice(0, from) + text.slice(to), cut.names);
  return fault ? { fault } : { texts: cut.texts };
}

/** What is wrong with the pack round its cards; undefined for nothing. */
function faultOf(envelope, names) {
  let pack;
  try {
    pack = JSON.parse(envelope);
  } catch {
    return 'pack.broken';
  }
  if (pack.format !== format || new Set(names).size < names.length) return 'pack.not-one';
  return pack.version === version ? undefined : 'pack.version';
}

/**
 * Finds the list "cards" of the outermost object: {texts, list, names}, without
 * texts when there is none; {fault} where brackets do not match. It calls nothing
 * within itself: no depth of brackets is too much for it.
 */
function cutUp(text) {
  const open = []; // what will close the brackets that are open
  const names = []; // of the outermost object
  let texts;
  let list;
  let start = -1; // of the card's text under way
  telling.lastIndex = 0;
  for (let found; (found = telling.exec(text));) {
    const { index: at, 0: mark } = found;
    if (mark === '"') {
      const end = endOfString(text, at);
      if (end < 0) return { fault: 'pack.broken' };
      telling.lastIndex = end + 1;
      if (open.length === 1 && /^\s*:/.test(text.slice(end + 1, end + 20)))
        names.push(text.slice(at + 1, end));
    } else if (closing.has(mark)) {
      if (open.length === 1 && names.at(-1) === 'cards' && mark === '[' && !texts) {
        [texts, list, start] = [[], [at + 1], at + 1];
      }
      open.push(closing.get(mark));
    } else {
      const inList = start >= 0 && open.length === 2;
      if (inList) {
        const card = text.slice(start, at).trim();
        if (card || mark === ',' || texts.length) texts.push(card);
        if (texts.length > mostCards) return { fault: 'pack.too-many' };
        start = at + 1;
      }
      if (mark === ',') continue;
      if (open.pop() !== mark) return { fault: 'pack.broken' };
      if (inList) [list[1], start] = [at, -1];
      if (!open.length && at < text.length - 1) return { fault: 'pack.broken' };
    }
  }
  return open.length ? { fault: 'pack.broken' } : { texts, list, names };
}

/** Where the string that begins at `at` ends; -1 for nowhere. */
function endOfString(text, at) {
  for (let end = text.indexOf('"', at + 1); end >= 0; end = text.indexOf('"', end + 1)) {
    let slashes = 0;
    while (text[end - 1 - slashes] === '\\') slashes++;
    if (slashes % 2 === 0) return end;
  }
  return -1;
}

/** The text of a pack of these cards, each in its canonical form. */
export const packText = (texts) =>
  `{"format":"${format}","version":${version},"cards":[${texts.join(',')}]}`;
