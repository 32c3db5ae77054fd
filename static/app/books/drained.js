import { survey } from '../store/survey.js';
import * as store from '../store/store.js';
import * as whole from '../store/whole.js';

/** @import { Case } from '../store/survey.js' */

const most = 50; // finished jobs that are looked at, the newest

/**
 * What the last jobs drained, for the operation `old-oil`, and the lines of those jobs by
 * their ids. Of a job that can't be worked out nothing is known.
 */
export async function drainedLately() {
  const done = (await store.log()).filter(({ summary }) => summary.finished).slice(0, most);
  const ids = done.map(({ id }) => id);
  const [records, events, beside] = await Promise.all([
    whole.recordsOf('jobs', ids),
    whole.eventsOf(ids),
    whole.besideOf(ids),
  ]);
  /** @type {Case[]} */
  const cases = records.flatMap((record, n) =>
    record ? [{ record, events: events[n] ?? [], beside: beside[n] ?? [] }] : [],
  );
  const answers = await survey(cases, { rows: true });
  const jobs = cases.flatMap(({ record }, n) =>
    (answers[n]?.row?.oils ?? []).flatMap(({ circuit, role, waste, out }) =>
      out && waste ? [{ job: record.id, circuit, role, waste, out }] : [],
    ),
  );
  return { jobs, lines: new Map(done.map((line) => [line.id, line])) };
}
