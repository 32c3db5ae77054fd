import { html, nothing } from 'lit-html';
import { t } from '../words/catalogue.js';

/**
 * Says of a field that what stands in it is not entered: '' says nothing, 'pending'
 * that it is not even written down, 'written' that it is.
 *
 * @typedef {'' | 'pending' | 'written'} Standing
 *
 * @param {Standing} standing
 * @param {unknown} [more] what can be done about it
 */
export const draftMark = (standing, more = nothing) =>
  standing
    ? html`<p class="draft"><span aria-hidden="true">✎</span> ${t(`draft.${standing}`)} ${more}</p>`
    : nothing;
