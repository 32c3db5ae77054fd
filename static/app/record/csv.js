import { call } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { settings } from '../store/settings.js';
import * as store from '../store/store.js';
import { t, text } from '../words/catalogue.js';
import { shortened } from '../words/cut.js';
import { today } from '../words/dates.js';

/** @import { Balance, State, Summary } from '../core/core.d.ts' */
/** @import { JobRecord } from '../store/records.d.ts' */

// The columns of the table, with what the core takes their cells for.
const columns = [
  ['csv.date', 'text'],
  ['csv.bike', 'text'],
  ['csv.state', 'text'],
  ['csv.odometer', 'distance'],
  ['csv.oil', 'text'],
  ['csv.poured', 'volume'],
  ['csv.drained', 'volume'],
  ['csv.level', 'text'],
  ['csv.steps', 'number'],
  ['csv.findings', 'text'],
  ['csv.notes', 'text'],
];
const together = 200; // rows written at a time
const bytesOfLetter = 4; // at most, in UTF-8

/**
 * A job as a row; `state` is its replay, undefined when it can't be made.
 *
 * @param {{ name: string, started: string, summary?: Partial<Summary> }} job
 * @param {Partial<State>} state
 */
export function row({ name, started, summary = {} }, state = {}) {
  const { oils = [], odometer, done, findings = [], notes = [] } = state;
  /** @type {Partial<Balance>[]} */
  const [first = {}] = oils;
  const { phase } = state.summary ?? summary;
  const most = Math.floor((limits.text ?? 0) / bytesOfLetter);
  return [
    started.slice(0, 10),
    name,
    t(`record.${phase}`),
    odometer ?? '',
    oils.map(({ role, poured }) => `${t(role)}: ${poured?.[0] ?? t('not-known')}`).join('\n'),
    first.in ?? '',
    first.out ?? '',
    first.level ? t(first.level) : '',
    done?.length ?? '',
    findings.map(({ code, values }) => t(`finding.${code}`, values)).join('\n'),
    notes.map((note) => text(note.text)).join('\n'),
  ].map((cell) => shortened(String(cell), most, t('csv.cut')));
}

/** All jobs as a table, a file. `progress` is called with how many are done. */
export async function table(jobs, comma, progress) {
  await loadLimits();
  let written = '\ufeff'; // says to spreadsheets that it is UTF-8
  let rows = [columns.map(([name]) => t(name))];
  const flush = async () => {
    const kinds = columns.map(([, kind]) => kind);
    const { system } = settings;
    const { ok } = await call('csv', { system, comma, kinds, cells: rows.flat() });
    if (!ok) throw new Error('no table');
    written += ok.text;
    rows = [];
  };
  for (const [n, job] of jobs.entries()) {
    const { id } = job;
    const { card, bench } = /** @type {JobRecord} */ (await store.job(id)); // it is listed
    const { ok } = await call('replay', { card, bench, events: await store.events(id) });
    rows.push(row(job, ok));
    if (rows.length >= together) await flush();
    if (n % 20 === 19) progress(n + 1);
  }
  await flush();
  return new File([written], `tidysump-${today()}.csv`, { type: 'text/csv' });
}
