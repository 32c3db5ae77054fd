// What must hold of a phone whatever comes in: what was here is here, and opens.
import assert from 'node:assert/strict';
import { canonical } from '../../app/backup/merge.js';
import { call } from '../../app/core/client.js';
import { Job } from '../../app/store/job.js';
import { held } from './phone.js';

/** How a phone stands: what it holds, and what the core makes of each of its jobs by itself. */
export async function standing() {
  const all = await held();
  const states = new Map();
  for (const [id, job] of all.jobs) states.set(id, await stateOf(all, id, job));
  return { held: all, states };
}

const eventsOf = ({ events }, id) => [...events.values()].filter(({ job }) => job === id);

/** States by what they follow from: most jobs are as they were before. */
const known = new Map();

async function stateOf(all, id, { card, bench, steps, started }) {
  const events = eventsOf(all, id).map(({ job: _, ...event }) => event);
  const input = JSON.stringify({ card, bench, steps, started, events });
  if (!known.has(input)) known.set(input, (await call('replay', input)).ok);
  return known.get(input);
}

/** Jobs that opened, by what the store holds of them. */
const opening = new Set();

/** Asserts that every job of a phone opens on the screen. */
async function allOpen(all, what) {
  for (const [id, record] of all.jobs) {
    const others = [...all.beside.values()].filter(({ job }) => job === id);
    const content = JSON.stringify([record, eventsOf(all, id), others]);
    if (opening.has(content)) continue;
    const job = await Job.open(id);
    const why = JSON.stringify(job?.findings)?.slice(0, 500);
    assert.ok(job?.state && job.plan, `${what}\njob ${id} does not open: ${why}`);
    opening.add(content);
  }
}

/** The lists of which nothing that is here is ever replaced or taken away. */
const lasting = ['jobs', 'events', 'beside', 'photos', 'cards', 'settings'];

/** What of a record must stay; the rest follows from it. */
const content = {
  jobs: ({ steps: _, ...job }) => job, // one of an older version gets the steps that it began with
  cards: ({ card, pinned = false }) => ({ card, pinned }),
};

/** Where two records differ first, in few words; '' where they don't. */
function difference(list, record, now) {
  const [was, is] = [record, now].map((r) => canonical((content[list] ?? ((all) => all))(r)));
  if (was === is) return '';
  let at = 0;
  while (was[at] === is[at]) at++;
  const about = (text) => text.slice(Math.max(0, at - 60), at + 60);
  return `${about(was)}\nis now ${about(is)}`;
}

/** Asserts that all that was here is here unchanged, and that all jobs open. */
export async function unharmed(before, what) {
  const after = await standing();
  for (const list of lasting)
    for (const [key, record] of before.held[list]) {
      const now = after.held[list].get(key);
      assert.ok(now !== undefined, `${what}\ntook away ${key} of ${list}`);
      const changed = difference(list, record, now);
      assert.equal(changed, '', `${what}\nchanged ${key} of ${list}: ${changed}`);
    }
  for (const [id, state] of before.states) goesOnFrom(id, state, before.held, after, what);
  await allOpen(after.held, what);
  return after;
}

/** What a state shows, each thing a text; of a problem that is told twice the last counts. */
export const shown = (state) =>
  ['notes', 'readings', 'photos', 'done', 'problems', 'looks'].flatMap((name) =>
    (state[name] ?? []).map(
      (thing) => `${name} ${name === 'problems' ? thing.what : (thing.id ?? canonical(thing))}`,
    ),
  );

/** Asserts that the state of a job is what it was, but for what was added. */
function goesOnFrom(id, state, before, after, what) {
  const now = after.states.get(id);
  assert.ok(now, `${what}\nthe core can't work out job ${id}`);
  const added = eventsOf(after.held, id).filter(
    ({ id: event }) => !before.events.has(JSON.stringify([id, event])),
  );
  // A job that was begun before the steps were kept learns them from a phone that knows.
  const learnt = !before.jobs.get(id).steps && after.held.jobs.get(id).steps;
  if (!added.length && !learnt)
    return assert.deepEqual(now, state, `${what}\nchanged the state of ${id}`);
  // What takes back, or says which counts, may do so from another phone too.
  if (added.some(({ kind }) => kind === 'undo' || kind === 'choose')) return undefined;
  const there = new Set(shown(now));
  const gone = shown(state).filter((thing) => !there.has(thing));
  return assert.deepEqual(gone, [], `${what}\nis not shown any more in ${id}`);
}
