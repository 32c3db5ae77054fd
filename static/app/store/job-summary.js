import { call } from '../core/client.js';

const most = 400; // letters of a job's notes that a search looks at

/** What the lists of jobs show and find of a state without asking the core again. */
export function summaryOf(state, card) {
  const { next, done = [], steps, finished, waiting, notes = [], looks, verdict, photos } = state;
  const odometer = state.readings?.findLast(({ what }) => what === 'odometer');
  const grade = (id) => card.circuits?.find((c) => c.id === id)?.oil?.grades?.[0];
  return {
    next,
    done: done.length,
    steps,
    finished,
    waiting,
    notes: notes.length,
    said: notes
      .map(({ text }) => text)
      .join(' ')
      .slice(0, most),
    odometer: odometer?.texts[0],
    oils: (state.oils ?? [])
      .filter(({ poured }) => poured)
      .map(({ role, poured, circuit }) => ({ role, poured: poured[0], grade: grade(circuit) })),
    verdict: looks && verdict,
    photos: photos?.length,
  };
}

/** The summary of a job made of its events anew; an empty one when the core can't. */
export async function summaryFrom({ card, bench }, events) {
  const { ok } = await call('replay', { card, bench, events });
  return ok ? summaryOf(ok, card) : {};
}
