import { launchChromium } from '../browser/launch.js';
import { watch } from '../browser/watch.js';
import { PuppeteerEngine } from './puppeteer-engine.js';

class Chromium extends PuppeteerEngine {
  #heard = [];

  async watch(page) {
    this.#heard.push(await watch(page));
    const devtools = await page.createCDPSession();
    await devtools.send('Browser.setDownloadBehavior', {
      behavior: 'allow',
      downloadPath: this.downloads,
    });
  }

  async heard() {
    return this.#heard.flat();
  }
}

/** Starts a Chromium without a window. */
export async function startChromium({ profile, downloads, size }) {
  const browser = await launchChromium(profile);
  const engine = new Chromium('chromium', browser, { downloads, size });
  engine.version = (await browser.version()).replace(/^.*\//, '');
  await engine.openWindow();
  return engine;
}
