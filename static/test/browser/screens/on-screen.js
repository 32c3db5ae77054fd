// What the ways to the screens have in common.
import { goTo, plant, stored } from '../job-page.js';
import { plantPicture } from '../photos-page.js';

/** A way that is gone on another phone than the one in use. */
export const on = (phone, way) => Object.assign((page) => way(page), { phone });

/** Opens all that opens on the screen, but for what opens over it from a bar. */
export const openAll = (page) =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details'))
      if (!details.parentElement?.matches('[data-bar]')) details.open = true;
  });

/** To a step of a job, all of it opened. */
export const step =
  (id, job = 'open-job') =>
  async (page) => {
    await goTo(page, `#/job/${job}/step/${id}`);
    await openAll(page);
  };

/** Puts the event of a photo into the open job; with its picture, unless that was deleted. */
export async function plantPhoto(page, id = 'photo', deleted = false) {
  const time = '2026-11-24T09:10:00.000Z';
  const event = { id, time, kind: 'photo', step: 'look-oil', what: 'pan' };
  const job = (await stored(page, 'jobs')).find((record) => record.id === 'open-job');
  await plant(page, job, [event]);
  if (!deleted) await plantPicture(page, { job: job.id, id, what: event.what });
  await goTo(page, '#/record'); // a job that is on the screen doesn't read its events again
}
