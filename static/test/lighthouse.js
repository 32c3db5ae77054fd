// Measures the built page with Lighthouse as on a phone: prints each category's
// score and what costs points, and writes build/lighthouse.html.
import { writeFile } from 'node:fs/promises';
import lighthouse from 'lighthouse';
import { launchChromium, startServer } from './browser/launch.js';

const endings = [];
const server = await startServer({ after: (fn) => endings.push(fn) });
const browser = await launchChromium();
try {
  const options = { output: 'html', logLevel: 'error' };
  const { lhr, report } = await lighthouse(server.url, options, undefined, await browser.newPage());
  await writeFile(new URL('../../build/lighthouse.html', import.meta.url), report);
  for (const { title, score, auditRefs } of Object.values(lhr.categories)) {
    console.log(`${title}: ${Math.round(score * 100)}`);
    for (const { id, weight } of auditRefs) {
      const { title: audit, score: part, displayValue = '' } = lhr.audits[id];
      if (weight > 0 && part !== null && part < 1) console.log(`  ${audit} ${displayValue}`);
    }
  }
} finally {
  await browser.close();
  for (const end of endings) await end();
}
