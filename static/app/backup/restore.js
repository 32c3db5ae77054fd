import { Intake } from './intake.js';
import { Backup } from './read.js';
import { freshBikes } from '../store/bikes.js';
import { announce } from '../store/windows.js';

/** @import { Tally } from './tally.js' */

/**
 * A file that was read and checked, and what it holds beside what is here.
 *
 * @typedef {object} Review
 * @property {Backup} backup
 * @property {Tally} tally
 * @property {Intake['known']} known what the core said of the jobs
 * @property {Set<string>} scattered
 *
 * @typedef {{ signal?: AbortSignal, progress?: (share: number) => void }} How `progress` is called with how much of the file is done, of 1
 */

/**
 * Reads and checks all of a file, and finds what of it is not here yet. Nothing is changed.
 * Rejects with a Fault, or with an AbortError when it is stopped.
 *
 * @param {Blob} file
 * @param {How} [how]
 * @returns {Promise<Review>}
 */
export async function readBackup(file, how = {}) {
  const backup = await Backup.open(file, how.signal);
  const first = await pass({ backup, keep: false }, how);
  const { size } = first.scattered;
  let intake = first;
  // A job whose lines stand in several places is one job all the same.
  if (size) intake = await pass({ backup, keep: false, scattered: first.scattered }, how);
  const { tally, known, scattered } = intake;
  return { backup, tally, known, scattered };
}

/**
 * Puts together what is here and what a backup holds. What was put in stays when it
 * breaks off, and doing it again does the rest.
 *
 * @param {Review} review
 * @param {How} [how]
 */
export async function restore(review, how = {}) {
  try {
    return (await pass({ ...review, keep: true }, how)).tally;
  } finally {
    await freshBikes().catch(() => {}); // it is made at the next start
    announce();
  }
}

/** Tries once more what lies aside; resolves to whether it can be read now. */
export async function retryAside() {
  const intake = new Intake({ made: '', keep: true });
  await intake.open();
  await intake.end();
  await freshBikes();
  announce();
}

/**
 * @param {{ backup: Backup, keep: boolean, known?: Intake['known'], scattered?: Set<string> }} what
 * @param {How} how
 */
async function pass({ backup, keep, known, scattered }, { signal, progress = () => {} }) {
  const intake = new Intake({ made: backup.made, keep, signal, known, scattered });
  const see = (bytes) => progress(backup.size ? bytes / backup.size : 1);
  try {
    await intake.open();
    for await (const records of backup.records({ signal, see })) await intake.add(records);
    await intake.end();
  } catch (error) {
    await intake.stop();
    throw error;
  }
  return intake;
}
