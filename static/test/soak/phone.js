// A phone that is killed: a browser with a profile of its own, and a host that serves
// one of two editions of the site.
import { exportEditions } from '../browser/editions.js';
import { startFolderHost } from '../browser/folder-host.js';
import { launchChromium, temporaryFolder } from '../browser/launch.js';
import { untilState } from '../browser/page.js';
import { killBrowser } from '../browser/restart.js';

/** A host with two editions, now and next, of which it serves one. */
export async function startHost(t) {
  const [now, next] = await exportEditions(t);
  const host = await startFolderHost(t, now);
  return Object.assign(host, {
    /** Has the host serve the edition that a page is not of. */
    deployTo: async (page) => {
      const edition = await page.evaluate(() => globalThis.edition);
      host.folder = edition ? now : next;
    },
  });
}

/** A phone with a page of the host's site. */
export class Phone {
  #profile;

  /** A phone that nobody has used. */
  static async fresh(t, host) {
    const phone = new Phone();
    phone.host = host;
    phone.#profile = await temporaryFolder(t);
    await phone.start();
    t.after(() => phone.end());
    await phone.open();
    await untilState(phone.page, 'ready');
    return phone;
  }

  /** Starts the browser. */
  async start() {
    this.browser = await launchChromium(this.#profile);
  }

  /** Opens the app in a window of its own, at an address in it. */
  async open(address = '') {
    const page = await this.browser.newPage();
    await page.setViewport({ width: 360, height: 740 });
    this.page = page;
    await page.goto(this.host.url + address);
    await page.waitForSelector('h1');
  }

  /** Ends it, however it stands. */
  async end() {
    if (this.browser.connected) await killBrowser(this.browser);
  }
}
