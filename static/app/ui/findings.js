import { html, nothing } from 'lit-html';
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

/**
 * Several findings; nothing when there are none.
 *
 * @param {Finding[] | undefined} list
 */
export const findings = (list) =>
  list?.length ? html`<div class="findings">${list.map(finding)}</div>` : nothing;
