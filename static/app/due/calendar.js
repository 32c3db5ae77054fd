import { call } from '../core/client.js';
import { t } from '../words/catalogue.js';
import { whenDue, windowOf } from './sentences.js';

/** The due oils of a bike as a calendar file. */
export async function calendarFile(id, bike, { oils }) {
  const due = oils.filter(({ remind }) => remind);
  const { ok } = await call('calendar', {
    maker: t('app.name'),
    stamp: new Date().toISOString(),
    entries: due.map((oil) => ({
      uid: `${id}-${oil.circuit}@tidysump`,
      day: oil.remind,
      summary: t('due.event', { bike, oil: t(oil.role) }),
      description: t('due.event.why', { when: whenDue(oil), window: windowOf(oil) }).trim(),
    })),
  });
  if (!ok?.text) throw new Error('no calendar');
  return new File([ok.text], `${id}-oil.ics`, { type: 'text/calendar' });
}
