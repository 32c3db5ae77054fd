// Cards that travel, and the editor of cards.
import { ownCard, packOf, paste, recordWith, tick } from '../cards-page.js';
import { goTo, plantIn } from '../job-page.js';
import { chooseFrom, field, leave, tap, tapText, untilSeen, write } from '../person.js';
import { sampleCard, words } from '../words.js';
import { on, openAll } from './on-screen.js';

const gappy = sampleCard('hallowmoor-drover-1360');

/** Begins a card and writes into its entries. */
const newCard = (entries) => async (page) => {
  await goTo(page, '#/edit');
  await tapText(page, words('layout.wet-sump'));
  await page.waitForSelector('[name="/make"]');
  await openAll(page);
  for (const [name, text] of entries) await write(page, `[name="${name}"]`, `${text}\n`);
};

/** Pastes texts of codes. */
const codes = (text, said) => async (page) => {
  await goTo(page, '#/cards/read');
  const area = await field(page, words('qr.paste'));
  await area.evaluate((element, value) => {
    element.value = value;
    element.dispatchEvent(new Event('change', { bubbles: true }));
  }, text);
  await tap(page, words('qr.paste.read'));
  await untilSeen(page, said);
};

export const cards = {
  cards: async (page) => {
    await goTo(page, '#/cards');
    await tick(page, gappy.model);
    await openAll(page);
  },
  'cards, two versions of one': on('crowded', async (page) => {
    await goTo(page, '#/cards');
    await untilSeen(page, words('cards.versions'));
    await openAll(page);
  }),
  'cards, one to be deleted': on('crowded', async (page) => {
    await goTo(page, '#/cards');
    await tapText(page, words('cards.delete'));
    await untilSeen(page, words('cards.keep'));
  }),
  'cards of a pack': async (page) => {
    const [one, other] = [ownCard('one', 'One'), ownCard('other', 'Other')];
    await paste(page, packOf(one, { ...other, layout: 'hovercraft' }, gappy, other));
    await untilSeen(page, words('pack.nothing-yet'));
  },
  'cards, a changed one': on('crowded', async (page) => {
    const changed = ownCard('herd-7', 'Herd 107', (card) => (card.yearFrom = 2001));
    await paste(page, packOf(changed));
    await untilSeen(page, words('pack.changed.why'));
  }),
  'cards, a damaged text': async (page) => {
    await paste(page, packOf(gappy).slice(0, 500));
    await untilSeen(page, words('pack.broken'));
  },
  'cards as QR codes': async (page) => {
    await goTo(page, `#/cards/show/${gappy.id}`);
    await openAll(page);
  },
  'cards from QR codes': (page) => goTo(page, '#/cards/read'),
  'cards from QR codes, a foreign one': codes('WIFI:T:WPA;S:garage;;', words('qr.not-ours')),
};

/** To the editor of a card of which some stands in the words of a manual. */
async function quoted(page) {
  const volume = { at: 'engine/oilOnly', says: '3.6 L' };
  const device = { at: 'engine/level/device', says: 'stick-pushed' };
  const quotes = [
    {
      words: 'Change: 3.6 L (3.8 US qt), with filter 3.8 L',
      source: 'book',
      page: '44',
      of: [volume],
    },
    { words: 'push the dipstick home', source: 'book', page: '45', of: [device] },
    { words: 'Change: 3.5 L', source: 'book', of: [{ ...volume, says: '3.5 L' }] }, // says so no more
  ];
  const card = { ...gappy, id: 'quoted', quotes };
  await plantIn(page, 'cards', recordWith('quoted', card));
  await goTo(page, '#/edit/quoted');
  await page.waitForSelector('[name="/make"]');
}

export const edit = {
  'editor: a new card': async (page) => {
    await goTo(page, '#/edit');
    await untilSeen(page, words('edit.layout'));
    await openAll(page);
  },
  'editor: five figures first': async (page) => {
    await goTo(page, '#/edit');
    await tapText(page, words('layout.flat-twin'));
    await untilSeen(page, words('edit.first'));
  },
  'editor: a card with doubts': async (page) => {
    await newCard([
      ['/bolts/0/thread', 'M12x1.5'],
      ['/bolts/0/torque', '177 Nm'],
    ])(page);
    await untilSeen(page, words('finding.torque-unit.do'));
    await openAll(page);
  },
  'editor: what can’t be read': async (page) => {
    await newCard([['/circuits/0/withFilter', '1.4 parsecs']])(page);
    await untilSeen(page, words('finding.unknown-unit', { text: 'parsecs' }));
  },
  'editor: what is in front of what, and an empty note': async (page) => {
    await newCard([])(page);
    await tapText(page, `+ ${words('purpose.panel')}`);
    await tapText(page, `+ ${words('edit.note-at')}`);
    await page.waitForSelector('[name="/notesAt/0/text"]');
    await leave(page);
    await chooseFrom(page, '[name="/bolts/3/behind"]', 'drain-plug');
    await chooseFrom(page, '[name="/bolts/0/behind"]', 'panel');
    await untilSeen(page, words('finding.behind-circle'));
  },
  'editor: rows of the manual’s chart': async (page) => {
    await newCard([])(page);
    for (const [row, grade] of ['10W-40', '20W-50'].entries()) {
      await tapText(page, `+ ${words('edit.chart-row')}`);
      await write(page, `[name="/chart/${row}/grade"]`, `${grade}\n`);
    }
    await write(page, '[name="/chart/0/to"]', '30 °C\n');
    await untilSeen(page, words('finding.chart-no-air', { grade: 'SAE 20W-50' }));
  },
  'editor: words of the manual': async (page) => {
    await quoted(page);
    await openAll(page);
    await page.waitForSelector('.quoted');
  },
  'editor: no such card': (page) => goTo(page, '#/edit/none'),
};
