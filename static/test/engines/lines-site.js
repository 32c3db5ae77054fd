// The lines of the walk about the site as such: the visit, offline, an update, a dead
// battery, two windows.
import assert from 'node:assert/strict';
import { comes, comesTo } from '../browser/comes-to.js';
import { heading } from '../browser/person.js';
import { words } from '../browser/words.js';
import { contrast, overWide } from './on-screen.js';
import { everyEvent, noteDown, openFirstStep, tapDone } from './job-taps.js';
import { samples } from './samples.js';

const leastContrast = 4.5; // WCAG 2.2, text of any size

export const visit = {
  id: 'first visit',
  async run({ engine, page, host }) {
    await engine.open(host.url);
    await engine.untilSeen(words('bikes.title'));
    assert.equal(await heading(page), words('bikes.title'));
    for (const { make, model } of samples) await engine.untilSeen(`${make} ${model}`);
    assert.equal(await engine.evaluate(() => innerWidth), 360);
    await comesTo(() => engine.evaluate(overWide), 0, 'px wider than the screen');
  },
};

export const kept = {
  id: 'all kept for offline use',
  async run(phone) {
    await phone.untilOffline('ready');
    const { have, want, version } = await phone.offline();
    assert.ok(want > 20, `${want} parts`);
    assert.equal(have, want);
    phone.left.version = version;
  },
};

export const offlineStart = {
  id: 'start with the server stopped',
  async run(phone) {
    const { engine } = phone;
    await phone.loseNetwork();
    await phone.reload();
    await engine.untilSeen(words('bikes.title'));
    await phone.untilOffline('ready');
    assert.ok(await phone.computes(), 'the core answers');
    assert.equal((await phone.offline()).version, phone.left.version);
  },
};

export const colours = {
  id: 'light and dark',
  async run(phone) {
    const { engine } = phone;
    await phone.goTo('#/settings');
    for (const [theme, dark] of [
      ['dark', true],
      ['light', false],
      ['auto', false],
    ]) {
      await phone.tap(words(`settings.theme.${theme}`), 'radio');
      await engine.until((want) => document.documentElement.dataset.theme === want, theme);
      for (const address of ['#/settings', '#/bikes', '#/bench/level']) {
        await phone.goTo(address);
        const found = await comes(
          () => engine.evaluate(contrast),
          (now) => now.dark === dark && now.least >= leastContrast,
        );
        assert.equal(found.dark, dark, `${theme} at ${address}`);
        assert.ok(
          found.least >= leastContrast,
          `${theme} at ${address}: ${found.least} of ${found.of}`,
        );
      }
      await phone.goTo('#/settings');
    }
  },
};

export const update = {
  id: 'update to the next edition',
  async run(phone) {
    const { engine, host, editions, left } = phone;
    const before = await everyEvent(phone);
    assert.ok(before.length > 0, 'there is something to lose');
    host.folder = editions.next;
    await host.start();
    await phone.goTo(`#/job/${left.job}`);
    await engine.evaluate(() => globalThis.tidysump.offline.check());
    await phone.untilOffline('waiting');
    assert.ok(!(await engine.seen()).includes(words('update.waiting')), 'never during a job');
    await phone.goTo('#/bikes');
    await phone.tap(words('update.take'), 'button');
    await engine.until(() => globalThis.edition === 'next');
    await phone.untilOffline('ready');
    assert.notEqual((await phone.offline()).version, left.version);
    await comesTo(() => everyEvent(phone), before);
    left.version = (await phone.offline()).version;
    await phone.loseNetwork();
    await phone.reload();
    await engine.until(() => globalThis.edition === 'next');
    assert.ok(await phone.computes(), 'the core of the next edition answers');
  },
};

export const resume = {
  id: 'killed, and on where it was',
  async run(phone) {
    const step = await openFirstStep(phone);
    await noteDown(phone, 'The last word before the battery died.');
    const before = await everyEvent(phone);
    await phone.dieAndComeBack();
    const { engine, host, left } = phone;
    await engine.open(`${host.url}?from=icon`);
    await engine.untilSeen(words('bikes.title'));
    await comesTo(() => everyEvent(phone), before);
    assert.equal((await phone.offline()).version, left.version);
    await engine.tap(`a[href="#/job/${left.job}"]`);
    await engine.until((id) => document.getElementById(`note-${id}`) !== null, step);
    await tapDone(phone);
    await engine.until((id) => document.getElementById(`note-${id}`) === null, step);
    const since = async () =>
      (await everyEvent(phone))
        .filter(({ id }) => !before.some((event) => event.id === id))
        .map((event) => [event.kind, event.step]);
    await comesTo(since, [['done', step]]);
  },
};

export const twoWindows = {
  id: 'two windows on one job',
  async run(phone) {
    const { engine, host, left } = phone;
    const step = await openFirstStep(phone);
    const text = 'Written in the second window.';
    await engine.windows.open(`${host.url}#/job/${left.job}/step/${step}`);
    await noteDown(phone, text);
    await engine.windows.switch(0);
    await engine.untilSeen(`✎ ${text}`);
    const notes = async () => (await everyEvent(phone)).filter((event) => event.text === text);
    await comesTo(async () => (await notes()).length, 1);
  },
};
