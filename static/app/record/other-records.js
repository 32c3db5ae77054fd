import { html, nothing } from 'lit-html';
import { differences } from '../cards/differences.js';
import { unlikeTable } from '../cards/unlike-table.js';
import { t } from '../words/catalogue.js';

/** @import { JobRecord } from '../store/records.d.ts' */
/** @import { WorkedOut } from '../plain/open.js' */

/** What a job was begun with: its summary follows from that, and earlier versions kept no steps. */
const begun = (/** @type {Partial<JobRecord>} */ { summary: _, steps: __, ...record }) => record;

/** @param {string} text */
function read(text) {
  try {
    return begun(Object(JSON.parse(text)));
  } catch {
    return undefined; // it is kept as it came
  }
}

/**
 * What the job was begun with by other files: another card, another bench. The job goes
 * by what is here.
 *
 * @param {WorkedOut} job
 */
export const otherRecords = ({ record, beside }) =>
  html`<p>${t('other-record.how')}</p>
    ${beside
      .filter(({ kind }) => kind === 'job')
      .map(({ text }) => read(text))
      .map((other) => (other ? unlikeTable(differences(begun(record), other)) : nothing))}`;

/** How many there are. */
export const otherRecordsOf = (/** @type {WorkedOut} */ { beside = [] }) =>
  beside.filter(({ kind }) => kind === 'job').length;
