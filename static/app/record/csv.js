import { call } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { settings } from '../store/settings.js';
import { own } from '../site/own.js';
import { bikeRows } from '../store/store.js';
import { survey } from '../store/survey.js';
import * as whole from '../store/whole.js';
import { t, verbatim } from '../words/catalogue.js';
import { shortened } from '../words/cut.js';
import { today } from '../words/dates.js';

/** @import { RowOil, Summary, SurveyedAnswer } from '../core/core.d.ts' */
/** @import { KeptEvent, LogLine } from '../store/records.d.ts' */
/** @import { Case } from '../store/survey.js' */

// The columns of the table, with what the core takes their cells for. Those of what is told of
// bikes follow the second.
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
/** What is told of bikes, of which there is a column where it is told of any. */
const ofBikes = /** @type {const} */ ([
  ['csv.called', 'called'],
  ['csv.plate', 'plate'],
]);
const together = 100; // jobs read and worked out at a time
const bytesOfLetter = 4; // at most, in UTF-8

/**
 * A job as a row; without one of the core's, where the job can't be worked out.
 *
 * @param {{ name: string, started: string, summary?: Partial<Summary> }} job
 * @param {SurveyedAnswer} [answer]
 * @param {string[]} [told] of its bike
 */
export function row({ name, started, summary: before = {} }, answer = {}, told = []) {
  const { summary = before, row: made = {} } = answer;
  const { oils = [], odometer, done, findings = [], notes = [] } = made;
  const first = /** @type {Partial<RowOil>} */ (oils[0] ?? {});
  const most = Math.floor((limits.text ?? 0) / bytesOfLetter);
  return [
    dayOf(started),
    name,
    ...told,
    [`record.${summary.phase ?? 'open'}`, ...(summary.home ? ['log.home'] : [])]
      .map((word) => t(word))
      .join(', '),
    odometer ?? '',
    oils.map(({ role, poured }) => `${t(role)}: ${poured ?? t('not-told')}`).join('\n'),
    first.in ?? '',
    first.out ?? '',
    first.level ? t(first.level) : '',
    done ?? '',
    findings.map(({ code, values }) => t(`finding.${code}`, values)).join('\n'),
    notes.map((note) => verbatim(note)).join('\n'),
  ].map((cell) => shortened(String(cell), most, t('csv.cut')));
}

/** The phone's own day of a time; the time as it is told where it is none. */
function dayOf(time) {
  const date = new Date(time);
  return Number.isNaN(date.getTime()) ? time : today(date);
}

/**
 * All jobs as a table, a file.
 *
 * @param {LogLine[]} jobs
 * @param {{ comma: boolean, plates: boolean }} how
 * @param {(done: number) => void} progress is called with how many are done
 */
export async function table(jobs, { comma, plates }, progress) {
  await loadLimits();
  const bikes = new Map((await bikeRows()).map((bike) => [bike.id, bike]));
  const given = ofBikes.filter(
    ([, member]) =>
      (plates || member !== 'plate') && [...bikes.values()].some((bike) => own(bike, member)),
  );
  const of = new Map(jobs.map(({ id, bike }) => [id, bikes.get(bike)]));
  const told = (/** @type {string} */ id) =>
    given.map(([, member]) => own(of.get(id) ?? {}, member) ?? '');
  const all = [...columns.slice(0, 2), ...given.map(([word]) => [word]), ...columns.slice(2)];
  const parts = ['\ufeff']; // says to spreadsheets that it is UTF-8
  const { system } = settings;
  const write = async (rows) => {
    const kinds = all.map(([, kind = 'text']) => kind);
    const { ok } = await call('csv', { system, comma, kinds, cells: rows.flat() });
    if (ok?.text) return parts.push(ok.text);
    if (rows.length < 2) throw new Error('no table');
    const half = rows.length >> 1; // so much text that a call can't hold it
    await write(rows.slice(0, half));
    return write(rows.slice(half));
  };
  // Two batches are under way: the store reads while the core works.
  const work = async (from) => {
    const cases = await casesOf(jobs.slice(from, from + together));
    return { cases, answers: await survey(cases, { rows: true, system }) };
  };
  const ahead = [work(0), work(together)];
  let rows = [all.map(([name = '']) => t(name))];
  for (let from = 0; from < jobs.length; from += together) {
    ahead.at(-1)?.catch(() => {}); // it is heard of when its turn comes
    const { cases = [], answers = [] } = (await ahead.shift()) ?? {};
    ahead.push(work(from + 2 * together));
    rows.push(...cases.map((each, n) => row(each.record, answers[n], told(each.record.id))));
    await write(rows);
    rows = [];
    progress(Math.min(from + together, jobs.length));
  }
  if (rows.length) await write(rows);
  return new File(parts, `tidysump-${today()}.csv`, { type: 'text/csv' });
}

/**
 * Jobs with all that is kept of them; those that are gone are left out.
 *
 * @param {{ id: string }[]} jobs
 * @returns {Promise<Case[]>}
 */
async function casesOf(jobs) {
  const ids = jobs.map(({ id }) => id);
  const [records, events, beside] = await Promise.all([
    whole.recordsOf('jobs', ids),
    whole.eventsOf(ids),
    whole.besideOf(ids),
  ]);
  return records.flatMap((record, n) =>
    record ? [{ record, events: (events[n] ?? []).map(without), beside: beside[n] ?? [] }] : [],
  );
}

/** @type {(event: KeptEvent) => any} */
const without = ({ job: _, ...event }) => event;
