import { t } from '../words/catalogue.js';
import { when } from '../words/dates.js';

/**
 * What there is to say of a card of one's own only: which of two versions it is, whether it
 * is finished.
 *
 * @param {{ bike: any, twin?: boolean, changed?: string }} row
 */
export const ownFacts = ({ bike, twin, changed }) =>
  [
    twin && t('bikes.version', { date: when(changed ?? '') }),
    bike.unfinished && t('bikes.unfinished'),
  ].filter(Boolean);
