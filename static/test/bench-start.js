// How long the page takes from its address to something a person can use.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { untilState } from './browser/page.js';
import { launchChromium, startServer } from './browser/launch.js';
import { median } from './median.js';

const runs = 7;
const slowdown = 4;

/**
 * [{name, bikes, core}] in ms: until the bikes are on the screen and can be
 * tapped, and until the core is ready. The slowdown holds for the page only: the
 * browser does not slow down workers, so the core's own start is at full speed.
 */
export async function startTimes() {
  const first = [];
  const again = [];
  for (let run = 0; run < runs; run++) {
    const profile = await mkdtemp(join(tmpdir(), 'tidysump-'));
    const endings = [];
    try {
      const server = await startServer({ after: (end) => endings.push(end) });
      first.push(await start(profile, server.url));
      await Promise.all(endings.map((end) => end()));
      again.push(await start(profile, server.url));
    } finally {
      for (const end of endings) await end();
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  }
  return [
    { name: 'first visit, empty profile', ...middle(first) },
    { name: 'installed, the server gone', ...middle(again) },
  ];
}

const middle = (times) => ({
  bikes: median(times.map(({ bikes }) => bikes)),
  core: median(times.map(({ core }) => core)),
});

async function start(profile, url) {
  const browser = await launchChromium(profile);
  try {
    const page = await browser.newPage();
    const devtools = await page.createCDPSession();
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
    await page.evaluateOnNewDocument(watchStart);
    await page.goto(url);
    const times = await page.waitForFunction(() => globalThis.started);
    await untilState(page, 'ready');
    return await times.jsonValue();
  } finally {
    await browser.close();
  }
}

/** Runs in the page before anything else: looks at every frame what is there. */
function watchStart() {
  const times = {};
  const look = () => {
    const now = performance.now();
    const bike = document.querySelector('main li a');
    if (bike && bike.getBoundingClientRect().height > 0) times.bikes ??= now;
    if (globalThis.tidysump?.core.state === 'ready') times.core ??= now;
    if (times.bikes && times.core) globalThis.started = times;
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}
