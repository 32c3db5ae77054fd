import { call } from '../core/client.js';
import { t } from '../words/catalogue.js';
import { whenDue, windowOf } from './sentences.js';

/** The due oils of a bike as a calendar file. */
export async function calendarFile(id, bike, { oils }) {
  const due = oils.filter(({ remind }) => remind);
  const { ok } = await call('calendar', {
    maker: t('app.name'),
    stamp: new Date().toISOString(),
    uids: due.map(({ circuit }) => `${id}-${circuit}@tidysump`),
    days: due.map(({ remind }) => remind),
    summaries: due.map(({ role }) => t('due.event', { bike, oil: t(role) })),
    descriptions: due.map((oil) =>
      t('due.event.why', { when: whenDue(oil), window: windowOf(oil) }).trim(),
    ),
  });
  return new File([ok.text], `${id}-oil.ics`, { type: 'text/calendar' });
}
