// The tables of README.md (short) and DEVELOPERS.md (whole), made of what the walk saw.
import { walk } from './walk.js';

/** Name of an engine -> how it is called, what it stands for, and how much of its version says which it is. */
const titles = {
  chromium: { title: 'Chromium', stands: 'Chrome on Android', digits: 1 },
  firefox: { title: 'Firefox', stands: 'Firefox on Android', digits: 1 },
  webkit: { title: 'WebKitGTK', stands: 'Safari of iOS 26', digits: 2 },
  'webkit-old': { title: 'WPE WebKit', stands: 'Safari of iOS 16.0', digits: 2 },
};

const versionOf = (name, version) => version.split('.').slice(0, titles[name].digits).join('.');

/** What became of a line, in a cell; one that the engine doesn't walk has a dash. */
function cellOf(line) {
  if (!line) return '–';
  const { outcome, seen, because } = line;
  return [outcome, seen && `: "${seen}"`, because && `, ${because}`].filter(Boolean).join('');
}

/** The rows of the whole table: a line of the walk each, a column for each engine that was seen. */
function wholeRows(seen) {
  const engines = Object.keys(titles).filter((name) => name in seen);
  return [
    ['', ...engines.map((name) => `${titles[name].title} ${versionOf(name, seen[name].version)}`)],
    ['stands for', ...engines.map((name) => titles[name].stands)],
    ...walk.map(({ id }) => [id, ...engines.map((name) => cellOf(seen[name].lines[id]))]),
  ];
}

/** The rows of the short table: an engine each. */
function shortRows(seen) {
  const row = ([name, { version, lines }]) => {
    const all = Object.entries(lines);
    const those = (outcome) => all.filter(([, line]) => line.outcome === outcome);
    const named = (outcome) =>
      those(outcome)
        .map(([id]) => id)
        .join('; ') || '–';
    return [
      `${titles[name].title} ${versionOf(name, version)}`,
      titles[name].stands,
      `${those('works').length} of ${all.length}`,
      named('falls back'),
      named('missing'),
    ];
  };
  return [
    ['engine', 'stands for', 'works', 'falls back', 'missing'],
    ...Object.keys(titles)
      .filter((name) => name in seen)
      .map((name) => row([name, seen[name]])),
  ];
}

/** File of the repository -> the rows of its table. */
export const tables = { 'README.md': shortRows, 'DEVELOPERS.md': wholeRows };

const begin = '<!-- make engines-table -->\n';
const end = '<!-- end of the table -->';

/** What stands before, in and after the table of a text. */
function parts(text) {
  const [before, rest, ...more] = text.split(begin);
  const [table, after] = rest?.split(end) ?? [];
  if (after === undefined || more.length) throw new Error(`There is no one table after ${begin}`);
  return { before, table, after };
}

const cell = (text) => text.replaceAll('|', '\\|').replace(/\s+/g, ' ');

/** A text with these rows for its table. */
export function withTable(text, [head, ...rows]) {
  const { before, after } = parts(text);
  const line = (cells) => `| ${cells.map(cell).join(' | ')} |\n`.replaceAll('|  |', '| |');
  const table = [line(head), line(head.map(() => '---')), ...rows.map(line)].join('');
  return `${before}${begin}\n${table}\n${end}${after}`;
}

/** The rows of the table that stands in a text. */
export const rowsIn = (text) =>
  parts(text)
    .table.split('\n')
    .filter((line) => line.startsWith('|'))
    .filter((_, n) => n !== 1)
    .map((line) =>
      line
        .slice(1, -1)
        .split(/(?<!\\)\|/)
        .map((one) => one.trim().replaceAll('\\|', '|')),
    );

const unversioned = (text) => text.replace(/ \d+(\.\d+)*$/, '');
const nameOf = (text) =>
  Object.keys(titles).find((name) => titles[name].title === unversioned(text));

/**
 * The cells of a table by engine, without versions, which change with the machine:
 * {engine: {heading: cell}}.
 */
export function byEngine([head, ...rows]) {
  if (nameOf(head[1])) {
    const columns = head
      .slice(1)
      .map((title, n) => [
        nameOf(title),
        Object.fromEntries(rows.map((row) => [row[0], row[n + 1]])),
      ]);
    return Object.fromEntries(columns);
  }
  const ofRow = ([title, ...cells]) => [
    nameOf(title),
    Object.fromEntries(cells.map((text, n) => [head[n + 1], text])),
  ];
  return Object.fromEntries(rows.map(ofRow));
}
