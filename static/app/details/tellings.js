import { html, nothing } from 'lit-html';
import { section } from '../ui/section.js';
import { own } from '../site/own.js';
import { t } from '../words/catalogue.js';

const ofBike = ['called', 'plate', 'frame', 'words'];
const ofOwner = ['owner', 'reach'];

/** The words by which a bike is told from others, and whose it is. */
export const tellings = (entries) => html`
  ${section(
    'details.told',
    ofBike.map((what) => field(entries, what)),
  )}
  ${
    entries.telling.withOwner
      ? section(
          'details.owner',
          html`<p>${t('details.owner.how')}</p>
            ${ofOwner.map((what) => field(entries, what))}`,
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
