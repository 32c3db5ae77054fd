// Every screen in every state, as pictures and live: `node test/stories.js [text]`
// makes those whose name holds the text, serves them, and goes on until it is ended.
import { mkdir, rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { launchChromium, startServer } from './browser/launch.js';
import { startStoriesHost } from './stories/host.js';
import { makeStories } from './stories/make.js';

const port = 8082;
const folder = fileURLToPath(new URL('../../build/stories', import.meta.url));
const [text = ''] = process.argv.slice(2);

await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
const endings = [];
const after = (end) => endings.push(end);
for (const signal of ['SIGINT', 'SIGTERM'])
  process.once(signal, async () => {
    for (const end of endings.reverse()) await end();
    process.exit();
  });
const site = await startServer({ after });
const host = await startStoriesHost(site.url, folder, port);
after(host.stop);
console.log(`${host.url}stories/gallery.html`);

const browser = await launchChromium();
after(() => browser.close());
const failed = (name, error) => console.error(`${name}: ${error.message}`);
const stories = await makeStories((name) => name.includes(text), browser, host.url, folder, failed);
await browser.close();
const still = stories.filter(({ live }) => !live).map(({ name }) => name);
console.log(`${stories.length} stories; as pictures only: ${still.join(', ') || 'none'}`);
