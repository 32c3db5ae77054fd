// Jobs that are not as they were written here: one that can't be worked out, and one of
// which files brought other contents.
import { sampleJobs } from './sample-jobs.js';

const [[job, events]] = sampleJobs([]);
const at = (minute) => `2026-11-24T11:0${minute}:00.000Z`;

/** A job whose card the core refuses: [job, events]. */
export const brokenJob = [
  { ...job, id: 'broken', name: 'A name of its own', card: { id: 'x', circuits: 'none' } },
  events,
];

/** A job with entries that this version doesn't know or can't read: [job, events]. */
export const oddJob = [
  { ...job, id: 'odd' },
  [
    ...events,
    { id: 'odd-1', time: at(0), kind: 'polish', text: 'until it shone' },
    { id: 'odd-2', time: at(1), kind: 'note', text: 7, step: 'lay-out' },
    { id: 'odd-3', time: at(2), kind: 'done', step: 'polish-tank' },
  ],
];

const note = events.find(({ kind }) => kind === 'note');
const card = structuredClone(job.card);
card.bolts.find(({ id }) => id === 'drain').torque.value = 99;

/** The contents that a file brought of a job: another note, and another torque in its card. */
export const besideJob = (id) => [
  {
    job: id,
    kind: 'event',
    id: note.id,
    text: JSON.stringify({ ...note, text: 'Clear as water.' }),
  },
  { job: id, kind: 'job', id: '', text: JSON.stringify({ ...job, id, card }) },
];
