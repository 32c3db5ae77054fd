import { call } from './core/client.js';

/** What the lists of jobs show of a state without asking the core again. */
export function summaryOf({ next, done = [], steps, finished, waiting, notes = [] }) {
  return { next, done: done.length, steps, finished, waiting, notes: notes.length };
}

/** The summary of a job made of its events anew; an empty one when the core can't. */
export async function summaryFrom({ card, bench }, events) {
  const { ok } = await call('replay', { card, bench, events });
  return ok ? summaryOf(ok) : {};
}
