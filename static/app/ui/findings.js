import { html, nothing } from 'lit-html';
import { own } from '../site/own.js';
import { hasWord, t } from '../words/catalogue.js';

/** @import { Finding, Grade, Warn } from '../core/core.d.ts' */
/** @import { Values } from '../words/catalogue.js' */

/**
 * A caution, with its signal word: NOTICE is about things, the others about people. What
 * happens otherwise follows; of one that was said whole before it opens from the sentence.
 *
 * @param {Warn} warn
 */
export function warning({ signal, word = '', short }) {
  const alert =
    signal === 'NOTICE' ? nothing : html`<span class="alert" aria-hidden="true">!</span>`;
  const sentence = html`<span class="sentence"
    ><strong>${alert}${t(`signal.${signal}`)}</strong> ${t(word)}</span
  >`;
  const then = hasWord(`${word}.more`) ? t(`${word}.more`) : '';
  return short && then
    ? html`<details class="warn" data-signal=${signal}>
        <summary>${sentence}</summary>
        <p class="then">${then}</p>
      </details>`
    : html`<div class="warn" data-signal=${signal}>
        <p>${sentence} <span class="then">${then}</span></p>
      </div>`;
}

/**
 * What a check found: what is wrong, and what to do about it.
 *
 * @param {{ code: string, grade?: Grade, values?: Values }} found
 */
export function finding({ code, grade, values = {} }) {
  const doing = `finding.${code}.do`;
  return html`<p class="finding" data-grade=${grade}>
    ${t(`finding.${code}`, values)} ${hasWord(doing) ? t(doing, values) : nothing}
  </p>`;
}

/** Codes of findings that are said once for several, and the value, a word, in which they differ. */
const differIn = new Map([['finished-without', 'step']]);

/**
 * Findings of one code that differ in one thing only: said once, with a list of what they
 * are about.
 *
 * @param {Finding[]} list
 */
function together([first, ...others]) {
  const { code, grade } = first;
  const value = differIn.get(code) ?? '';
  return html`<div class="finding" data-grade=${grade}>
    <p>${t(`finding.${code}.several`)}</p>
    <ul>
      ${[first, ...others].map(
        ({ values = {} }) => html`<li>${t(String(own(values, value)).slice(1), values)}</li>`,
      )}
    </ul>
    <p>${t(`finding.${code}.do`)}</p>
  </div>`;
}

/**
 * Findings in their order; those that are said together, which stand beside each other, in
 * a list of their own.
 *
 * @param {Finding[]} list
 */
export function runs(list) {
  /** @type {Finding[][]} */
  const all = [];
  for (const one of list) {
    const last = all.at(-1);
    if (last?.[0].code === one.code && differIn.has(one.code)) last.push(one);
    else all.push([one]);
  }
  return all;
}

/**
 * Several findings; nothing when there are none.
 *
 * @param {Finding[] | undefined} list
 */
export const findings = (list) =>
  list?.length
    ? html`<div class="findings">
        ${runs(list).map((run) => (run.length > 1 ? together(run) : finding(run[0])))}
      </div>`
    : nothing;
