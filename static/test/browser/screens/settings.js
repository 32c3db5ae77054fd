// The settings, backups, and erasing everything.
import { chooseText } from '../choose-file.js';
import { goTo } from '../job-page.js';
import { field, tap, tapText, type, untilSeen } from '../person.js';
import { sampleBackup, sampleCard, words } from '../words.js';
import { unreadBackup } from '../../hostile-backup.js';
import { on, openAll, plantPhoto } from './on-screen.js';
import { codesOf } from '../../../app/cards/qr/codes.js';

const newer = '{"format":"tidysump-backup","version":4,"made":"2030-01-01T00:00:00.000Z"}\n';

const unread = await unreadBackup(sampleCard('tessaly-corda-570'), 40);

/** Chooses a text as a backup to be restored. */
const restoring = (text, said) => async (page) => {
  await goTo(page, '#/keep');
  await chooseText(page, '#backup-file', 'backup.txt', text);
  await untilSeen(page, said);
};

const bikeCodes = await codesOf(sampleBackup, 'bike');
const damaged = await codesOf('{}\n', 'bike');

/** Pastes the codes of a bike. */
const reading = (codes, said) => async (page) => {
  await goTo(page, '#/cards/read');
  const area = await field(page, words('qr.paste'));
  await area.evaluate((element, value) => (element.value = value), codes.join('\n'));
  await tap(page, words('qr.paste.read'));
  await untilSeen(page, said);
};

export const settings = {
  settings: (page) => goTo(page, '#/settings'),
  'settings without a store': on('no store', (page) => goTo(page, '#/settings')),
  'settings on an Apple phone, with all ways to the home screen': on(
    'apple phone',
    async (page) => {
      await goTo(page, '#/settings');
      await tapText(page, words('home.others'));
      await untilSeen(page, words('home.dock'));
    },
  ),
};

export const keep = {
  backup: async (page) => {
    await goTo(page, '#/keep');
    await tap(page, words('keep.make'));
    await untilSeen(page, words('keep.save'));
  },
  'backup, nothing to keep': on('new', async (page) => {
    await goTo(page, '#/keep');
    await untilSeen(page, words('room.none'));
  }),
  'backup, in a browser that erases after seven days': on('apple phone', async (page) => {
    await goTo(page, '#/keep');
    await untilSeen(page, words('storage.seven-days'));
  }),
  'backup, photos to be erased': async (page) => {
    await plantPhoto(page);
    await goTo(page, '#/keep');
    await tapText(page, words('room.erase'));
    await untilSeen(page, words('room.sure'));
  },
  'bike as QR codes': on('several bikes', async (page) => {
    await goTo(page, '#/keep/show/bertha');
    await untilSeen(page, words('give.codes.without'));
    await openAll(page);
  }),
  'bike from QR codes, to be restored': reading(bikeCodes, words('restore.rule')),
  'bike from QR codes, damaged ones': reading(damaged, words('restore.codes-damaged')),
  'backup to be restored': restoring(sampleBackup, words('restore.rule')),
  'backup restored before': on('restored', restoring(sampleBackup, words('restore.nothing-new'))),
  'backup with what can not be read': restoring(unread, words('restore.aside', { count: 40 })),
  'backup, something kept aside': on('restored', async (page) => {
    await goTo(page, '#/keep');
    await untilSeen(page, words('aside.what', { count: 1 }));
  }),
  'backup that is damaged': on(
    'new',
    restoring(sampleBackup.slice(0, -200), words('restore.damaged')),
  ),
  'backup of a newer version': on('new', restoring(newer, words('restore.newer'))),
  'erase persons': on('works for others', async (page) => {
    await goTo(page, '#/keep/persons');
    await untilSeen(page, words('persons.gone'));
  }),
  'erase everything': (page) => goTo(page, '#/keep/erase'),
  'erase everything, the word typed': async (page) => {
    await goTo(page, '#/keep/erase');
    await type(page, words('erase.label', { word: words('erase.word') }), words('erase.word'));
  },
};
