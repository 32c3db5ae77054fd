import { stored } from './job-page.js';
import { pictures } from './photos-page.js';

/** All that the page's store holds, as text. */
export async function held(page) {
  const all = { photos: await pictures(page) };
  for (const name of ['jobs', 'events', 'cards', 'lines']) all[name] = await stored(page, name);
  // What came in with a job lies together; it is the same record.
  for (const { job, events } of await stored(page, 'bundles'))
    for (const event of events) all.events.push({ ...event, job });
  return all;
}
