import { html, nothing } from 'lit-html';
import { compared } from '../store/over-card.js';
import { foldedChanges } from '../ui/changes-table.js';
import { findings } from '../ui/findings.js';
import { t } from '../words/catalogue.js';

/** @import { Change, Finding } from '../core/core.d.ts' */
/** @import { JobRecord } from '../store/records.d.ts' */
/** @import { WorkedOut } from '../plain/open.js' */

/** What a job was begun with besides its card: its summary follows from that, and earlier versions kept no steps. */
const besides = (
  /** @type {Partial<JobRecord>} */ { summary: _, steps: __, card: ___, raw: ____, ...record },
) => JSON.stringify(record);

/** @param {string} text */
function read(text) {
  try {
    return Object(JSON.parse(text));
  } catch {
    return undefined; // it is kept as it came
  }
}

/**
 * What the job was begun with by other files: where their card differs from the one that
 * is here, why that can't be told, and whether anything else differs. The job goes by what
 * is here.
 *
 * @param {WorkedOut} job
 */
export const otherRecordsOf = ({ record, beside = [] }) =>
  Promise.all(
    beside
      .filter(({ kind }) => kind === 'job')
      .map(async ({ text }) => {
        const other = read(text);
        if (!other) return { changes: [], found: [], besides: true };
        const { changes, findings: found } = await compared(record.card, Object(other.card));
        return { changes, found, besides: besides(record) !== besides(other) };
      }),
  );

/** @param {{ changes: Change[], found: Finding[], besides: boolean }[]} list */
export const otherRecords = (list) =>
  html`<p>${t('other-record.how')}</p>
    ${list.map(
      ({ changes, found, besides }) =>
        html`${foldedChanges(changes, ['differs.here', 'differs.there'])} ${findings(found)}
        ${besides ? html`<p>${t('other-record.else')}</p>` : nothing}`,
    )}`;
