// The first screen with the messages that stand above any screen, and a bike's plan.
import { ownCard, recordWith } from '../cards-page.js';
import { goTo, plantIn } from '../job-page.js';
import { freshManual, giveText } from '../manual-page.js';
import { polling } from '../page.js';
import { patience } from '../patience.js';
import { choose, tap, tapText, type, untilSeen } from '../person.js';
import { pieces, sampleCard, words } from '../words.js';
import { on, openAll } from './on-screen.js';

const gappy = sampleCard('hallowmoor-drover-1360');
const card = sampleCard('tessaly-corda-570');

/** What a thing is called in the language: not the first or last name, where a pseudo-language has its brackets. */
const called = (thing) => words(`asked.names.${thing}`).split(', ')[1];

const bikesWith = (text) => async (page) => {
  await goTo(page, '#/bikes');
  await untilSeen(page, text);
};

export const bikes = {
  bikes: bikesWith(words('bikes.resume')),
  'bikes, on a new phone': on('new', bikesWith(words('bikes.title'))),
  'bikes, none found': async (page) => {
    await goTo(page, '#/bikes');
    await type(page, words('bikes.search'), 'hovercraft');
    await untilSeen(page, words('bikes.fitting', { count: 0 }));
  },
  'bikes, a figure that is asked for': async (page) => {
    await goTo(page, '#/bikes');
    await type(page, words('bikes.search'), `corda ${called('drain')}`);
    await untilSeen(page, 'M14x1.5');
  },
  'bikes, the filter': async (page) => {
    await goTo(page, '#/bikes');
    await tap(page, words('bikes.filter'));
    await untilSeen(page, words('bikes.filter.all'));
  },
  'bikes, many of one’s own': on('crowded', bikesWith('★')),
  'bikes, several of one model': on('several bikes', bikesWith('Bertha')),
  'bikes, one that was sold': on('several bikes', async (page) => {
    await bikesWith('Bertha')(page);
    await type(page, words('bikes.search'), 'EF');
    await untilSeen(page, words('bike.aside.sold'));
  }),
  'bikes, oil due': on('overdue', async (page) => {
    await goTo(page, '#/due'); // where the core works it out
    await untilSeen(page, words('due.notice'));
    await bikesWith(`● ${pieces('bikes.due.now')[0]}`)(page);
  }),
  'bikes, a page of a manual waits': on('overdue', async (page) => {
    await freshManual(page);
    await giveText(page, 'PLAINFORD HERON 320\nOil drain bolt, M12 x 1.5 ... 25 N·m');
    await bikesWith(words('bikes.pages-wait.of', { name: 'Plainford Heron 320', count: 1 }))(page);
  }),
  'bikes with hostile texts': on('hostile texts', bikesWith(words('bikes.resume'))),
  'bikes, just updated': on('just updated', bikesWith(words('changed.title'))),
  'bikes, an update waits': on('update waiting', bikesWith(words('update.waiting'))),
  'bikes without a store': on('no store', bikesWith(words('store.failed'))),
  'bikes without a core': on('no core', bikesWith(words('core.failed'))),
  'bikes, the core starts again': on('core restarting', bikesWith(words('core.restarting'))),
};

/** To the plan of one's own card of whose filter nobody said whether it is screwed on. */
async function unlooked(page) {
  const own = ownCard('own-unlooked', 'Heron', (card) => {
    const { filters, bolts } = card;
    delete card.notesAt; // they tell of a cover
    filters[0] = { id: filters[0].id, kind: 'unknown', circuit: 'engine', everyNth: 1 };
    const closed = bolts.find((bolt) => bolt.of === filters[0].id);
    const { place: _, count: __, ...known } = closed;
    bolts[bolts.indexOf(closed)] = { ...known, purpose: 'filter-or-cover' };
  });
  await plantIn(page, 'cards', recordWith('unlooked', own));
  await goTo(page, '#/bike/unlooked');
  await untilSeen(page, words('plan.start'));
}

export const bike = {
  'plan, all opened': async (page) => {
    await goTo(page, `#/bike/${gappy.id}`);
    await untilSeen(page, words('plan.start'));
    await openAll(page);
    await choose(page, words('role.gearbox'));
    await untilSeen(page, words('plan.gaps'));
    await openAll(page);
  },
  'plan, just opened': async (page) => {
    await goTo(page, `#/bike/${card.id}`);
    await untilSeen(page, words('plan.start'));
  },
  'plan, the manual’s chart in this air': async (page) => {
    await goTo(page, '#/bike/quillane-orsena-720');
    await untilSeen(page, words('plan.start'));
    await openAll(page);
    await type(page, words('plan.outside'), '-12 °C');
    await page.keyboard.press('Enter');
    const told = (unasked) => !document.body.textContent.includes(unasked);
    await page.waitForFunction(told, { polling, timeout: patience() }, words('lookup.chart'));
    await openAll(page);
  },
  'plan at the roadside, to get home': async (page) => {
    await goTo(page, `#/bike/${card.id}`);
    await untilSeen(page, words('plan.start'));
    await openAll(page);
    await choose(page, words('plan.place.roadside'));
    await untilSeen(page, words('plan.get-home'));
    await openAll(page);
  },
  'plan, oil due again': async (page) => {
    await goTo(page, '#/bike/ondrake-quarto-830');
    await untilSeen(page, words('due.title'));
    await openAll(page);
  },
  'plan of one’s own bike': on('crowded', async (page) => {
    await goTo(page, '#/bikes');
    await tapText(page, 'Herd 101');
    await untilSeen(page, words('plan.edit'));
  }),
  'plan of a bike with a figure of its own': on('several bikes', async (page) => {
    await goTo(page, '#/bike/bertha');
    await untilSeen(page, words('plan.start'));
    await openAll(page);
  }),
  'plan of a card with several bikes, a job begins': on('several bikes', async (page) => {
    await goTo(page, `#/bike/${card.id}`);
    await tap(page, words('plan.start'));
    await untilSeen(page, words('bike.which'));
  }),
  'plan of a filter that nobody looked at': async (page) => {
    await unlooked(page);
    await openAll(page);
    await untilSeen(page, words('plan.gap.choose'));
  },
  'plan without a core': on('no core', async (page) => {
    await goTo(page, `#/bike/${card.id}`);
    await untilSeen(page, words('finding.core-unavailable'));
  }),
  'plan, the job can’t begin': on('no store', async (page) => {
    await goTo(page, `#/bike/${card.id}`);
    await tap(page, words('plan.start'));
    await untilSeen(page, words('store.failed'));
  }),
  'no such bike': (page) => goTo(page, '#/bike/none'),
};
