import { openJob } from '../store/kept-job.js';
import * as store from '../store/store.js';

const most = 30; // open jobs whose lists are looked at

/**
 * What the open jobs want of the shelf, for the operation `shelf`: the newest first.
 */
export async function openWants() {
  const open = (await store.log()).filter(({ summary }) => (summary.phase ?? 'open') === 'open');
  const wants = [];
  for (const { id, name } of open.slice(0, most)) {
    const { record } = await openJob(id);
    if (record) wants.push({ id, name, card: record.card, bench: record.bench });
  }
  return wants;
}

/**
 * What a job that the core has worked out wants: of its oils what was poured.
 *
 * @param {import('../plain/open.js').WorkedOut} job
 */
export const wantOf = ({ record, state }) => ({
  id: record.id,
  name: record.name,
  card: record.card,
  bench: record.bench,
  poured: (state.oils ?? []).flatMap((oil) =>
    oil.in ? [{ circuit: oil.circuit, in: oil.in }] : [],
  ),
});
