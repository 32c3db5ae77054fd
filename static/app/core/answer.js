/** @import { Answer, Finding } from './core.d.ts' */

/**
 * The answer when the core can't be had, in the form of a refusal.
 *
 * @type {{ findings: Finding[] }}
 */
export const unavailable = Object.freeze({
  findings: [{ code: 'core-unavailable', where: '/', grade: 'refuse', values: {} }],
});

/**
 * Reads an answer of the core; null if it has not the shape of one.
 *
 * @param {string | undefined} output
 * @returns {Answer<any> | null}
 */
export function readAnswer(output) {
  let answer;
  try {
    answer = JSON.parse(output ?? '');
  } catch {
    return null;
  }
  const right = answer && 'ok' in answer !== Array.isArray(answer.findings);
  return right ? answer : null;
}
