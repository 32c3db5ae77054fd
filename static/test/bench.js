// Prints what the program costs: how much slower the core is as WebAssembly than
// natively, what the page weighs, how long a phone takes to start it. Compare
// the ratios; the times are this machine's.
import { calculationCosts } from './bench-calculations.js';
import { coreCosts, kiloCosts, pageCosts, surveyCosts } from './bench-core.js';
import { logTimes } from './bench-log.js';
import { restoreTimes } from './bench-restore.js';
import { searchTimes } from './bench-search.js';
import { firstAnswer, serverRates, slowPhones } from './bench-server.js';
import { sizes } from './bench-size.js';
import { startTimes } from './bench-start.js';
import { tapTimes } from './bench-taps.js';

/** Prints rows as a table, numbers to the right. */
function table(title, head, rows) {
  const lines = [head, ...rows].map((row) => row.map(String));
  const widths = head.map((_, i) => Math.max(...lines.map((row) => row[i].length)));
  console.log(`\n${title}`);
  for (const row of lines) {
    const cells = row.map((cell, i) =>
      i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]),
    );
    console.log(`  ${cells.join('  ')}`);
  }
}

const core = await coreCosts();
table(
  'The plans of all sample cards, median',
  ['', 'µs', 'of native'],
  core.map(({ name, micros }) => [name, micros.toFixed(0), (micros / core[0].micros).toFixed(1)]),
);

const survey = await surveyCosts();
table(
  'A job of 30 events among 200 in one call, median',
  ['', 'µs', 'of native'],
  survey.map(({ name, micros }) => [
    name,
    micros.toFixed(0),
    (micros / survey[0].micros).toFixed(1),
  ]),
);

const page = await pageCosts();
table(
  "100 kB of manuals' pages read, median",
  ['', 'ms', 'of native'],
  page.map(({ name, micros }) => [
    name,
    (micros / 1000).toFixed(1),
    (micros / page[0].micros).toFixed(1),
  ]),
);

const kilos = await kiloCosts();
table(
  'A kB of a text read natively, median',
  ['', 'µs', 'of the first'],
  kilos.map(({ name, micros }) => [name, micros.toFixed(0), (micros / kilos[0].micros).toFixed(2)]),
);

const calculations = await calculationCosts();
table(
  'Calculations, median in µs',
  ['', 'native', 'WebAssembly in Node', 'of native'],
  calculations.map(({ name, native, wasm }) => [
    name,
    native.toFixed(0),
    wasm.toFixed(0),
    (wasm / native).toFixed(1),
  ]),
);

const files = await sizes();
table(
  'Bytes of the site; * is loaded by every first visit',
  ['', 'raw', 'gzip', 'brotli', 'brotli of raw'],
  files.map(({ name, raw, gzip, brotli }) => [name, raw, gzip, brotli, (brotli / raw).toFixed(2)]),
);

const starts = await startTimes();
table(
  'From the address to …, page at a quarter of this CPU, median in ms',
  ['', 'bikes to tap', 'core ready', 'bikes of first visit'],
  starts.map(({ name, bikes, core: ready }) => [
    name,
    bikes.toFixed(0),
    ready.toFixed(0),
    (bikes / starts[0].bikes).toFixed(2),
  ]),
);

const goodPaint = 200; // ms

const taps = await tapTimes();
const costs = (times) =>
  times.flatMap(({ median, worst, ratio }, n) => [
    median.toFixed(0),
    worst.toFixed(0),
    ...(n === 0 ? [] : [ratio.toFixed(1)]),
  ]);
table(
  'From the finger or key going down to the next picture, and to the one with what it did, ms',
  ['', 'median', 'worst', 'at 1/4', 'worst', 'of full', 'at 1/6', 'worst', 'of full'],
  taps.flatMap(({ name, painted, shown }) => [
    [name, ...costs(painted)],
    ['  what it did', ...costs(shown)],
  ]),
);
table(
  'Interaction to next paint, as the browser times it, ms; 200 and less at 1/6 is good (web.dev/inp)',
  ['', 'median', 'worst', 'at 1/4', 'worst', 'of full', 'at 1/6', 'worst', 'of full', 'good'],
  taps.map(({ name, event }) => [
    name,
    ...costs(event),
    event.at(-1).median <= goodPaint ? 'yes' : 'NO',
  ]),
);

const searches = await searchTimes();
table(
  'Among 10,000 own cards, page at a quarter of this CPU, ms',
  ['', 'median', 'worst'],
  searches.map(({ name, median, worst }) => [name, median.toFixed(0), worst.toFixed(0)]),
);

const logs = await logTimes();
table(
  'Bikes and log, page at a quarter of this CPU, ms; the longest job has 3,000 events',
  ['jobs', 'bikes', 'of fewest', 'opened', 'of fewest', 'a keystroke', 'worst', 'longest job'],
  logs.map(({ count, list, open, key, worst, replay }) => [
    count,
    list.toFixed(0),
    (list / logs[0].list).toFixed(1),
    open.toFixed(0),
    (open / logs[0].open).toFixed(1),
    key.toFixed(0),
    worst.toFixed(0),
    replay.toFixed(0),
  ]),
);

const restores = await restoreTimes();
table(
  'A large backup, at no slowdown; the longest ms in which the screen stood still',
  ['', 'seconds', 'of plain', 'longest'],
  restores.map(({ name, seconds, ratio, longest }) => [
    name,
    seconds.toFixed(1),
    ratio === '' ? '' : ratio.toFixed(1),
    longest.toFixed(0),
  ]),
);

console.log(`\nThe server's first answer after its start: ${(await firstAnswer()).toFixed(0)} ms`);

table(
  'The server beside nginx, same files, median of turns; p99 in ms, CPU in µs a request, memory in MB',
  ['', 'cores', 'requests/s', 'of nginx', 'p99', 'nginx', 'CPU', 'nginx', 'memory', 'nginx'],
  (await serverRates()).map(({ cores, what, tidysump: own, nginx }) => [
    what,
    cores,
    own.rate.toFixed(0),
    (own.rate / nginx.rate).toFixed(2),
    own.p99.toFixed(1),
    nginx.p99.toFixed(1),
    own.cost.toFixed(0),
    nginx.cost.toFixed(0),
    own.memory.toFixed(0),
    nginx.memory.toFixed(0),
  ]),
);

table(
  '1,000 slow phones load the core at once from one core, a fast one the first page',
  ['', 'got it whole', 'the last after s', 'memory, MB', 'p99 of the fast one, ms'],
  (await slowPhones()).map(({ name, whole, last, memory, p99 }) => [
    name,
    whole,
    last.toFixed(0),
    memory.toFixed(0),
    p99.toFixed(1),
  ]),
);
