// How the log grows: opened, searched, and its longest job replayed, with up to
// 10,000 jobs and 300,000 events in the store, on as many as 3,000 bikes, each told of.
import { keystrokes } from './bench-search.js';
import { goTo } from './browser/job-page.js';
import { launchChromium, startServer } from './browser/launch.js';
import { untilState } from './browser/page.js';
import { sampleCard, words } from './browser/words.js';
import { median } from './median.js';

const counts = [100, 1_000, 10_000];
const slowdown = 4;
const typed = ['corda 2.5', '12340', 'no such note'];
const long = 3_000; // events of the longest job
const mostBikes = 3_000;
const bikeTold = 'a[href^="#/bike/bike-"]';

/** [{count, list, open, key, worst, replay}] in ms, at a quarter of this CPU. */
export async function logTimes() {
  const endings = [];
  const server = await startServer({ after: (end) => endings.push(end) });
  const browser = await launchChromium();
  const rows = [];
  try {
    const page = await browser.newPage();
    page.setDefaultTimeout(120_000);
    await page.setViewport({ width: 360, height: 740 });
    await page.goto(server.url);
    await untilState(page, 'ready');
    const devtools = await page.createCDPSession();
    const card = sampleCard('tessaly-corda-570');
    const { ok } = await page.evaluate((input) => globalThis.tidysump.core.call('plan', input), {
      card,
    });
    const steps = ok.steps.map(({ id }) => id);
    let before = 0;
    for (const count of counts) {
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
      const many = { from: before, to: count, long, mostBikes };
      await page.evaluate(plant, { card, steps, ...many });
      before = count;
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
      rows.push({ count, ...(await times(page)) });
    }
    return rows;
  } finally {
    await browser.close();
    for (const end of endings) await end();
  }
}

async function times(page) {
  const opened = [];
  const listed = [];
  for (let run = 0; run < 3; run++) {
    await goTo(page, '#/settings');
    listed.push(await shown(page, '#/bikes', bikeTold));
    opened.push(await shown(page, '#/record', '.jobs a'));
  }
  const keys = await keystrokes(page, words('log.search'), typed);
  const replayed = [];
  for (let run = 0; run < 3; run++) {
    await goTo(page, '#/bikes');
    replayed.push(await shown(page, '#/record/job-0', 'article.remark'));
  }
  return {
    list: median(listed),
    open: median(opened),
    key: median(keys),
    worst: Math.max(...keys),
    replay: median(replayed),
  };
}

/** How long it takes from an address to what stands there. */
const shown = (page, address, selector) =>
  page.evaluate(
    (hash, what) =>
      new Promise((resolve) => {
        const start = performance.now();
        location.hash = hash;
        const look = () =>
          document.querySelector(what)
            ? resolve(performance.now() - start)
            : requestAnimationFrame(look);
        look();
      }),
    address,
    selector,
  );

/** Runs in the page: jobs of 30 events, the first of `long`, each of a day of its own. */
async function plant({ card, steps, from, to, long: most, mostBikes: bikes }) {
  const opening = indexedDB.open('tidysump');
  const db = await new Promise((resolve, reject) => {
    opening.onsuccess = () => resolve(opening.result);
    opening.onerror = () => reject(opening.error);
  });
  const together = 500;
  for (let first = from; first < to; first += together) {
    await new Promise((resolve, reject) => {
      const tx = db.transaction(['jobs', 'log', 'events', 'facts', 'bikes'], 'readwrite');
      tx.oncomplete = resolve;
      tx.onabort = () => reject(tx.error);
      for (let n = first; n < Math.min(first + together, to); n++) {
        const started = new Date(Date.UTC(2000, 0, 1 + n)).toISOString();
        const id = `job-${n}`;
        const name = `${card.make} ${card.model}`;
        const bike = `bike-${n % bikes}`;
        if (n < bikes) {
          const told = { called: `Number ${n}`, plate: `AB ${n}`, owner: `Owner ${n % 700}` };
          tx.objectStore('bikes').put({ id: bike, card: card.id, ...told, changed: started });
          const fact = { book: 'bike', of: bike, time: started };
          Object.entries({ card: card.id, ...told }).forEach(([what, value], seq) =>
            tx.objectStore('facts').put({
              ...fact,
              id: `${what}-${n}`,
              seq: seq + 1,
              ...(seq ? { kind: 'told', what, value } : { kind: 'follows', value }),
            }),
          );
        }
        const oils = [{ role: 'role.engine', poured: '2.5 L', grade: '10W-40' }];
        const odometer = `${12_000 + n} km`;
        const said = `Noted that day, number ${n}: dark, no glitter.`;
        const summary = { done: 29, steps: 38, finished: started, notes: 1, said, odometer, oils };
        tx.objectStore('jobs').put({
          id,
          card,
          name,
          started,
          bench: { system: 'metric' },
          bike,
          summary,
        });
        tx.objectStore('log').put({ id, bike, name, started, summary });
        const events = n === 0 ? most : 30;
        for (let e = 0; e < events; e++) {
          const time = new Date(Date.parse(started) + 1000 * e).toISOString();
          const event = {
            id: `event-${e}`,
            time,
            job: id,
            kind: 'done',
            step: steps[e % steps.length],
          };
          if (e % 30 === 29) Object.assign(event, { kind: 'note', text: said });
          tx.objectStore('events').put(event);
        }
      }
    });
  }
  db.close();
}
