// What goes with the address of a screen: by name, as texts, and never as JSON, so that an
// address can be read and passed on.
import { address } from './address.js';

/**
 * The address of a screen with what goes with it: "#/trouble/spill?tyre=yes&hand=oil". Of
 * a list each stands by itself; what is empty does not stand there.
 *
 * @param {string[]} parts
 * @param {Record<string, string | boolean | string[] | null | undefined>} values
 */
export function addressWith(parts, values) {
  const pairs = Object.entries(values).flatMap(([name, value]) =>
    [value].flat().flatMap((one) => (one || one === false ? [[name, String(one)]] : [])),
  );
  const rest = new URLSearchParams(pairs).toString();
  return `${address(...parts)}${rest && `?${rest}`}`;
}

/**
 * What goes with an address, from the last of its parts: by name all that stands there.
 * Addresses of earlier versions carry it as JSON.
 *
 * @param {string} [part]
 * @returns {Map<string, string[]>}
 */
export function withAddress(part = '') {
  const pairs = part.startsWith('?') ? [...new URLSearchParams(part)] : earlier(part);
  /** @type {Map<string, string[]>} */
  const all = new Map();
  for (const [name, value] of pairs) all.set(name, [...(all.get(name) ?? []), value]);
  return all;
}

/**
 * @param {string} part
 * @returns {string[][]}
 */
function earlier(part) {
  try {
    return Object.entries(Object(JSON.parse(part))).flatMap(pairs);
  } catch {
    return [];
  }
}

/**
 * A member of what was JSON: of a list each by itself, of an object its members.
 *
 * @param {[string, any]} member
 * @returns {string[][]}
 */
const pairs = ([name, value]) =>
  typeof value !== 'object' || value === null
    ? [[name, String(value ?? '')]]
    : Array.isArray(value)
      ? value.map((one) => [name, String(one)])
      : Object.entries(value).flatMap(pairs);
