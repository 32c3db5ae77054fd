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
 * That of a browser that lets the server compute, while the server can't be reached.
 *
 * @type {{ findings: Finding[] }}
 */
export const unreachable = Object.freeze({
  findings: [{ code: 'server-unreachable', where: '/', grade: 'refuse', values: {} }],
});

/**
 * Whether nothing computed an answer.
 *
 * @param {Partial<Answer<any>>} answer
 */
export const isUnanswered = ({ findings: [first] = [] }) =>
  [unavailable, unreachable].some(({ findings: [refused] }) => refused?.code === first?.code);

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
