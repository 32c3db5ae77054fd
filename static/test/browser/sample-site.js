import { dueJobs } from './due-jobs.js';
import { plant, planOf } from './job-page.js';
import { launchChromium, startServer } from './launch.js';
import { untilState } from './page.js';
import { sampleJobs } from './sample-jobs.js';
import { voices } from './voices.js';
import { sampleCard } from './words.js';

/** A page of the site with the sample jobs in its store, and what ends it all: {page, end}. */
export async function openSampleSite() {
  const endings = [];
  const end = async () => {
    for (const ending of endings.reverse()) await ending();
  };
  try {
    return { page: await open((ending) => endings.push(ending)), end };
  } catch (error) {
    await end();
    throw error;
  }
}

/** Opens the page; `after` is given what ends each thing that was started. */
async function open(after) {
  const server = await startServer({ after });
  const browser = await launchChromium();
  after(() => browser.close());
  const page = await browser.newPage();
  await page.evaluateOnNewDocument(voices);
  await page.goto(server.url);
  await untilState(page, 'ready');
  const { steps } = await planOf(page, sampleCard('tessaly-corda-650'));
  for (const [job, events] of sampleJobs(steps)) await plant(page, job, events);
  for (const [job, events] of dueJobs('ondrake-quarto-900')) await plant(page, job, events);
  await page.reload();
  return page;
}
