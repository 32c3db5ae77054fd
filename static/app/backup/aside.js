import { bounds, tooDeep } from './bounds.js';
import { canonical } from './merge.js';

/** @import { Aside } from '../store/records.d.ts' */
/** @import { Finding } from '../core/core.d.ts' */

/**
 * What is kept of a line that can't be read. Its text is the same whatever the order of
 * its members, so that it is kept once.
 *
 * @param {{ kind: string, text: string, why: Finding, from: string }} line
 * @returns {Aside}
 */
export function asideOf({ kind, text: line, why, from }) {
  const text = settled(line);
  return { key: `${kind} ${text}`, kind, text, why: [why], from, time: new Date().toISOString() };
}

/** @param {string} line */
function settled(line) {
  if (tooDeep(line)) return line;
  try {
    const text = canonical(JSON.parse(line));
    return text.length > bounds.line ? line : text;
  } catch {
    return line;
  }
}
