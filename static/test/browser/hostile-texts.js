// Texts that mean harm, and a job that is full of them.
import { sampleJobs } from './sample-jobs.js';

// Markup, a script, marks that turn the direction of writing round, and a word
// that no line can hold.
export const markup =
  '<img src="/x" onerror="globalThis.ran = 1"><script>globalThis.ran = 1</script>';
/** What would be said in other words, were it taken for the id of a word. */
export const wordId = '@role.engine';
const turned = '\u202eturned round';
const endless = 'x'.repeat(10_000);
const hostile = `${markup} ${turned} ${endless}`;

/** A job whose every free text is hostile, open at the step of the drain plug: [job, events]. */
export function hostileJob() {
  const [[job, events]] = sampleJobs([]);
  const bad = structuredClone(job.card);
  Object.assign(bad, { make: markup, model: endless, notes: [hostile] });
  bad.bolts.find((bolt) => bolt.id === 'drain').place = hostile;
  bad.sources[0].title = hostile;
  const time = '2026-11-24T10:00:00.000Z';
  const at = { id: 'torque', time, kind: 'reading', step: 'tighten-drain' };
  return [
    { ...job, id: 'hostile-job', name: hostile, card: bad },
    [
      ...events,
      { ...at, what: 'torque', of: 'drain', value: '29 Nm' },
      { id: 'note', time, kind: 'note', step: 'tighten-drain', text: hostile },
      { id: 'word', time, kind: 'note', step: 'tighten-drain', text: wordId },
    ],
  ];
}
