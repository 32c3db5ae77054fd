import { html } from 'lit-html';
import { addressWith } from './address-with.js';
import { t } from '../words/catalogue.js';

/** @import { Help, Use } from '../core/core.d.ts' */

/**
 * A link to the calculation that answers what is raised, with what is known of it.
 * @param {Help} help
 */
export const helpLink = ({ op, given = {} }) =>
  html`<a href=${addressWith(['bench', op], { ...given, back: 'yes' })}>${t(`calc.${op}`)}</a>`;

/**
 * What became of an oil since its last change.
 * @param {Use} since
 */
export const sinceLast = (since) =>
  t(since.rate ? 'job.since' : 'job.since.rose', {
    ...since,
    came: since.came?.[0],
    use: `@${since.use}`,
  });
