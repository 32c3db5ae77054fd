import { html, nothing } from 'lit-html';
import { limits } from '../core/limits.js';
import { section } from '../ui/section.js';
import { own } from '../site/own.js';
import { t } from '../words/catalogue.js';

/** The words by which a bike is told from others, and whose it is. */
export const tellings = (entries) => html`
  ${section(
    'details.told',
    (limits.told ?? []).map((what) => field(entries, what)),
  )}
  ${
    entries.telling.withOwner
      ? section(
          'details.owner',
          html`<p>${t('details.owner.how')}</p>
            ${(limits.whose ?? []).map((what) => field(entries, what))}`,
        )
      : nothing
  }
`;

const field = (entries, what) =>
  entries.told(what, `details.tell.${what}`, own(entries.telling.row, what) ?? '', (value) => ({
    kind: 'told',
    what,
    value,
  }));
