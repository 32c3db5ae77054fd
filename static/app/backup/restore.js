import { draftRecord } from '../cards/record.js';
import { call, core } from '../core/client.js';
import { checkTexts } from '../cards/pack/check.js';
import * as store from '../store/store.js';
import * as whole from '../store/whole.js';
import { announce } from '../store/windows.js';
import { fromBase64, toBase64 } from './base64.js';
import { merged, same } from './merge.js';
import { Backup } from './read.js';
import { own } from '../site/own.js';

const together = { setting: 50, card: 100, job: 50, photo: 10 };

const keys = {
  setting: ({ key }) => key,
  card: ({ key }) => key,
  job: ({ id }) => id,
  event: ({ job, id }) => `${job},${id}`,
  photo: ({ job, id }) => `${job},${id}`,
};

/**
 * Reads and checks all of a file, and what of it is not here yet: {backup, added}.
 * Nothing is changed. Rejects with a Fault.
 */
export async function readBackup(file) {
  const here = await whole.keysHere();
  const added = { settings: 0, cards: 0, jobs: 0, events: 0, photos: 0 };
  const backup = await Backup.open(file, (kind, record) => {
    if (!own(here, `${kind}s`)?.has(own(keys, kind)?.(record))) added[`${kind}s`]++;
  });
  return { backup, added };
}

/**
 * Puts together what is here and what a backup holds. What was put in stays when
 * it breaks off, and doing it again does the rest. `progress` is called with how many
 * records are done.
 *
 * @param {Backup} backup
 * @param {(count: number) => void} progress
 */
export async function restore(backup, progress = () => {}) {
  let count = 0;
  let batch = [];
  let of;
  const flush = async () => {
    if (batch.length) await own(take, of)?.(batch);
    batch = [];
    progress(count);
  };
  for await (const [kind, record] of backup.records()) {
    count++;
    if (kind === 'event') {
      batch.at(-1).events.push(record);
      continue;
    }
    if (kind !== of || batch.length >= (own(together, of) ?? 0)) await flush();
    of = kind;
    if (kind !== 'end') batch.push(kind === 'job' ? { job: record, events: [] } : record);
  }
  if (!(await store.setting('backup'))) await store.saveSetting('backup', { time: backup.made });
  announce();
}

/** The summary of a job made of its events anew; an empty one when the core can't. */
async function summaryFrom({ card, bench }, events) {
  const { ok } = await call('replay', { card, bench, events });
  return ok?.summary ?? {};
}

// How a batch of each kind is taken in.
const take = {
  async setting(batch) {
    for (const { key, value } of batch)
      if ((await store.setting(key)) === undefined) await store.saveSetting(key, value);
  },

  async card(batch) {
    const here = await whole.recordsOf('cards', batch.map(keys.card));
    const fresh = batch.filter((card, n) => {
      const { key, card: content, changed, pinned } = here[n] ?? {};
      const mine = here[n] && { key, card: content, changed, pinned };
      return !same(merged('card', mine, card), mine);
    });
    const checked = await checkTexts(fresh.map(({ card }) => JSON.stringify(card)));
    // What a list shows of a card is made anew: a draft's name is all there is to show.
    const records = fresh.map(async (card, n) => {
      const { key, changed, pinned = false } = card;
      const { text, bike } = checked[n];
      if (text) return { key, card: card.card, text, bike, changed, pinned };
      return { ...(await draftRecord(key, card.card, { pinned })), changed };
    });
    if (fresh.length) await store.putCards(await Promise.all(records));
  },

  async job(batch) {
    const ids = batch.map(({ job }) => job.id);
    const [jobs, events] = [await whole.recordsOf('jobs', ids), await whole.eventsOf(ids)];
    /** @type {{ jobs: any[], events: any[] }} */
    const puts = { jobs: [], events: [] };
    for (const [n, { job, events: incoming }] of batch.entries()) {
      const all = new Map(events[n].map((event) => [event.id, event]));
      const fresh = incoming.filter((event) => {
        const mine = all.get(event.id);
        const kept = merged('event', mine, event);
        all.set(event.id, kept);
        return !same(kept, mine);
      });
      const kept = merged('job', jobs[n], job);
      if (!fresh.length && same(kept, jobs[n])) continue;
      const list = [...all.values()].map(({ job: _, ...event }) => event);
      puts.jobs.push({ ...kept, summary: await summaryFrom(kept, list) });
      puts.events.push(...fresh);
    }
    if (core.state === 'failed') throw new Error('no core to check cards');
    await whole.putAll(puts);
  },

  async photo(batch) {
    const here = await whole.recordsOf(
      'photos',
      batch.map(({ job, id }) => [job, id]),
    );
    const photos = [];
    for (const [n, photo] of batch.entries()) {
      const { job, id, what } = here[n] ?? {};
      const mine = here[n] && { job, id, what, data: await toBase64(here[n].blob) };
      const kept = merged('photo', mine, photo);
      if (same(kept, mine)) continue;
      const blob = fromBase64(kept.data);
      photos.push({ job: kept.job, id: kept.id, what: kept.what, blob, bytes: blob.size });
    }
    await whole.putAll({ photos });
  },
};
