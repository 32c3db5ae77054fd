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
  const browser = await launchChromium(); // first: what can't be started must leave nothing running
  const server = await startServer({ after: (end) => endings.push(end) });
  const page = await browser.newPage();
  await page.evaluateOnNewDocument(voices);
  await page.goto(server.url);
  await untilState(page, 'ready');
  const { steps } = await planOf(page, sampleCard('tessaly-corda-650'));
  for (const [job, events] of sampleJobs(steps)) await plant(page, job, events);
  for (const [job, events] of dueJobs('ondrake-quarto-900')) await plant(page, job, events);
  await page.reload();
  const end = async () => {
    await browser.close();
    for (const ending of endings) await ending();
  };
  return { page, end };
}
