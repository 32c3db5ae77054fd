// What a tap or a key costs on slow phones: from the finger or the key going down to the
// next picture, and to the picture that shows what it did. The slowdown holds for the page
// only: the browser does not slow down workers, so the core answers at full speed.
import { fill } from './bench-search.js';
import { goTo, openStep, planOf, startJob, tapDone } from './browser/job-page.js';
import { launchChromium, startServer } from './browser/launch.js';
import { polling, untilState } from './browser/page.js';
import { field, tapText } from './browser/person.js';
import { sampleCard, words } from './browser/words.js';
import { median } from './median.js';

const slowdowns = [1, 4, 6];
const runs = 10; // of each at each slowdown, in turns
const card = sampleCard('tessaly-corda-570');
const bike = `${card.make} ${card.model}`;

/**
 * [{name, painted, shown, event}] in ms: of each slowdown {median, worst, ratio}, the ratio
 * to the median at no slowdown; `painted` to the next picture, `shown` to what it did,
 * `event` as the browser times it for INP (Event Timing, W3C: in steps of 8 ms, with the
 * time it takes to be shown; what is under 16 ms counts as 16).
 */
export async function tapTimes() {
  const endings = [];
  const server = await startServer({ after: (end) => endings.push(end) });
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    page.setDefaultTimeout(120_000);
    await page.setViewport({ width: 360, height: 740 });
    await page.goto(server.url);
    await untilState(page, 'ready');
    const devtools = await page.createCDPSession();
    const slow = (rate) => devtools.send('Emulation.setCPUThrottlingRate', { rate });
    const rows = [];
    for (const { name, looked, prepare, before, act } of acts) {
      await slow(1);
      await prepare?.(page);
      const times = slowdowns.map(() => []);
      for (let run = 0; run < runs; run++)
        for (const [n, rate] of slowdowns.entries()) {
          await before?.(page);
          await slow(rate);
          await page.evaluate(noteNext, looked);
          await act(page, run);
          const noted = await page.waitForFunction(() => globalThis.noted, { polling });
          const event = await page.evaluate(longestEvent);
          times[n].push({ ...(await noted.jsonValue()), event });
          await slow(1);
        }
      rows.push({
        name,
        ...Object.fromEntries(
          ['painted', 'shown', 'event'].map((kind) => [kind, told(times, kind)]),
        ),
      });
    }
    return rows;
  } finally {
    await browser.close();
    for (const end of endings) await end();
  }
}

/** Of each slowdown the median and the worst of one kind of time, and the ratio to the first. */
function told(times, kind) {
  const all = times.map((list) => list.map((noted) => noted[kind]));
  const [first] = all.map(median);
  return all.map((list) => ({
    median: median(list),
    worst: Math.max(...list),
    ratio: median(list) / first,
  }));
}

/**
 * Runs in the page: notes of the next tap or key when it began, when the picture after
 * it stood, and when one stood in which what is looked at reads otherwise.
 */
function noteNext(looked) {
  const reads = () => {
    const element = document.querySelector(looked);
    return element?.value ?? element?.textContent;
  };
  // The end of a frame: what was drawn in it stands on the screen.
  const afterFrame = (then) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = then;
    requestAnimationFrame(() => port2.postMessage(0));
  };
  const before = reads();
  const times = {};
  globalThis.noted = undefined;
  const began = ({ type, timeStamp }) => {
    times.began ??= timeStamp;
    const acts = type === 'keydown' ? 'input' : 'click'; // by what the page is told
    addEventListener(acts, () => afterFrame(painted), { capture: true, once: true });
  };
  const painted = () => {
    const now = performance.now();
    times.painted ??= now - times.began;
    if (reads() === before) return afterFrame(painted);
    globalThis.noted = { painted: times.painted, shown: now - times.began };
  };
  globalThis.durations = [16];
  globalThis.events = new PerformanceObserver((list) => {
    for (const { interactionId, duration } of list.getEntries())
      if (interactionId) globalThis.durations.push(duration);
  });
  globalThis.events.observe({ type: 'event', durationThreshold: 16 });
  const down = new AbortController();
  for (const type of ['pointerdown', 'keydown'])
    addEventListener(
      type,
      (event) => {
        down.abort();
        began(event);
      },
      { capture: true, signal: down.signal },
    );
}

/** Runs in the page: how long the longest event of the act took, once two more pictures stood. */
async function longestEvent() {
  // An event is timed once its picture is on the screen, and told a task later.
  for (let picture = 0; picture < 3; picture++) await new Promise(requestAnimationFrame);
  globalThis.events.disconnect();
  return Math.max(...globalThis.durations);
}

/** Presses a letter, or takes it back. */
async function press(page, label, key) {
  const input = await field(page, label);
  await input.focus();
  await page.keyboard.press(key);
}

/** Opens a step of the job that has something to tick. */
async function openTally(page) {
  const { steps } = await planOf(page, card);
  await openStep(page, steps.findLast(({ tally }) => tally).id);
}

// What is done, in this order; `looked` is what reads otherwise after it.
const acts = [
  {
    name: 'opening a plan',
    looked: 'h1',
    before: (page) => goTo(page, '#/bikes'),
    act: (page) => tapText(page, bike),
  },
  {
    name: 'Done in a job',
    looked: 'h1',
    prepare: async (page) => {
      await goTo(page, '#/bikes');
      await startJob(page, bike);
    },
    act: (page) => tapDone(page),
  },
  {
    name: 'a tick of a tally',
    looked: '.tally [role="status"]',
    prepare: openTally,
    act: async (page) => {
      const box = await page.waitForSelector('.tally label');
      await box.evaluate((element) => element.scrollIntoView({ block: 'center' }));
      await box.click();
    },
  },
  {
    name: 'a letter of a note',
    looked: 'textarea[id^="note"]',
    prepare: (page) => tapText(page, words('job.note')),
    act: (page) => press(page, words('job.note'), 'e'),
  },
  {
    name: 'a letter in the search among 10,000 bikes',
    looked: 'main',
    prepare: async (page) => {
      await goTo(page, '#/bikes');
      await fill(page);
      await page.reload();
      await page.waitForSelector('.own');
    },
    act: (page, run) => press(page, words('bikes.search'), run % 2 ? 'Backspace' : '7'),
  },
];
