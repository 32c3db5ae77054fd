// Holds what was found against the list of exceptions.
import { goTest, pageTest } from '../which.js';
import { inPart } from './support.js';

const covers = (pattern, key) =>
  pattern.endsWith('.*')
    ? key === pattern.slice(0, -2) || key.startsWith(pattern.slice(0, -1))
    : key === pattern;

// Where these are not known a whole script or program can't be read, whatever is asked first.
const fatal = /^(javascript\.(?!builtins\.(?!RegExp\.))|webassembly\.(?!api\.))/;
const isFatal = ({ key, missing }) =>
  fatal.test(key) && Object.values(missing).some((version) => !version.includes(inPart));

const since = (missing) =>
  Object.entries(missing)
    .map(([browser, version]) => `${browser} ${version}`)
    .join(', ');

/**
 * What must be mended, as sentences: what is newer than promised and not excepted, or
 * keeps all that it stands in from being read, what
 * is not known and not listed, exceptions that nothing needs or whose test is not there.
 * `known` says what of the unknown is well known, by its name; `files` are the project's
 * test files, {path, text}.
 */
export function faults(report, exceptions, known, files) {
  const found = [...report.found.values()];
  const excepted = (one) =>
    exceptions.some(
      ({ keys, before }) => keys.some((key) => covers(key, one.key)) && (!before || one.before),
    );
  const unknown = [...report.unknown.values()];
  return [
    ...report.wrong,
    ...found
      .filter((one) => isFatal(one) || !excepted(one))
      .map(({ key, missing, places }) => `${key} is newer than promised (${since(missing)}): ${places.slice(0, 3).join('; ')}`), // prettier-ignore
    ...unknown
      .filter(({ key }) => !Object.hasOwn(known, key))
      .map(({ key, places }) => `not in the data: ${key}: ${places[0]}`),
    ...Object.keys(known)
      .filter((key) => !report.unknown.has(key))
      .map((key) => `${key} is listed as not in the data, and not in use`),
    ...exceptions.flatMap(({ keys }) =>
      keys
        .filter((key) => !found.some((one) => covers(key, one.key)))
        .map((key) => `${key} is excepted, and nothing needs it`),
    ),
    ...exceptions.flatMap(({ keys, why, test, before }) => [
      ...(why ? [] : [`${keys[0]} is excepted without a reason`]),
      ...(before ? [] : lacking(test, files).map((what) => `${keys[0]}: ${what}`)),
    ]),
  ];
}

/** Why a named test is none, as a list of at most one sentence. */
function lacking(test, files) {
  try {
    if (!test) return ['no test shows what is there in its absence'];
    const go = files.filter(({ path }) => path.endsWith('_test.go'));
    if (goTest(test, go)) return [];
    const { file, name } = pageTest(test, files.map(({ path }) => path)); // prettier-ignore
    const { text } = files.find(({ path }) => path === file);
    return name && ["'", '`', '"'].some((quote) => text.includes(quote + name))
      ? []
      : [`${file} has no test "${name}"`];
  } catch (error) {
    return [error.message];
  }
}
