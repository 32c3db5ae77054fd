import puppeteer from 'puppeteer-core';
import { patience } from '../browser/patience.js';
import { PuppeteerEngine } from './puppeteer-engine.js';
import { programOf } from './programs.js';

class Firefox extends PuppeteerEngine {
  async watch(page) {
    page.on('console', (message) => {
      if (['error', 'warn'].includes(message.type()))
        this.complaints.push(`${message.text()} ${message.location().url ?? ''}`);
    });
    page.on('pageerror', (error) => this.complaints.push(String(error)));
    page.on('requestfailed', (request) => this.complaints.push(request.url()));
  }
}

/** Starts a Firefox without a window. */
export async function startFirefox({ profile, downloads, size }) {
  const browser = await puppeteer.launch({
    browser: 'firefox',
    protocol: 'webDriverBiDi',
    executablePath: programOf('firefox'),
    headless: true,
    timeout: patience(),
    protocolTimeout: patience(180),
    userDataDir: profile,
    extraPrefsFirefox: {
      'ui.useOverlayScrollbars': 1, // as on a phone, where they take no room
      'browser.download.folderList': 2, // the folder below
      'browser.download.dir': downloads,
    },
  });
  const engine = new Firefox('firefox', browser, { downloads, size });
  engine.version = (await browser.version()).replace(/^.*\//, '');
  await engine.openWindow();
  return engine;
}
