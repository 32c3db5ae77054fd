import { call } from '../core/client.js';
import { t } from '../words/catalogue.js';
import { whenDue, windowOf } from './sentences.js';

const letters = 60; // of a bike's name in that of a file

/** The name of a calendar file: the bike's, without what no file may be called, and the first day in it. */
export const calendarName = (bike, days) => {
  const name = bike.replace(/[\p{C}\p{Z}/\\:*?"<>|]+/gu, ' ').replace(/^[ .]+|[ .]+$/g, '');
  const short = [...name].slice(0, letters).join('').trim();
  return `${[short, [...days].sort()[0]].filter(Boolean).join(' ')}.ics`;
};

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
  const days = due.map(({ remind }) => remind);
  return new File([ok.text], calendarName(bike, days), { type: 'text/calendar' });
}
