import { answered, arm, armed, ringFor } from '../phone/bell.js';
import { left, nextCheck } from './countdown.js';

const soon = 60_000; // ms before the end, when it is announced
const late = 60_000; // ms after which nothing rings any more: it is only said

const seen = () => document.visibilityState === 'visible';

/**
 * Watches the timers of all jobs of this phone, whichever screen is shown. A timer is an event with an end: nothing is lost with this page.
 */
class Alarm {
  #jobs = new Map(); // id of the job -> {timers, listener}
  #announced = new Set(); // what was announced: ids of timers, and `${id} soon`
  #pending;

  /**
   * Watches these timers of a job from now on. The listener hears by
   * tick() that time has passed, by soon(timer) and over(timer) what to say.
   */
  follow(job, timers, listener) {
    const before = this.#jobs.get(job)?.timers ?? [];
    const gone = before.filter((b) => !timers.some(({ id }) => id === b.id));
    for (const { id } of gone) if (this.#announced.has(id)) answered(id);
    if (timers.length) this.#jobs.set(job, { timers, listener });
    else this.#jobs.delete(job); // its listener holds its whole screen
    for (const timer of timers) if (left(timer) <= soon) this.#announced.add(`${timer.id} soon`);
    this.check();
  }

  /** Looks at the clock, rings what has ended, and looks again when it must. */
  check() {
    clearTimeout(this.#pending);
    const all = [...this.#jobs.values()];
    const timers = all.flatMap((job) => job.timers);
    if (timers.length === 0) return;
    for (const job of all) for (const timer of job.timers) this.#announce(timer, job.listener);
    for (const { timers: own, listener } of all) if (own.length) listener.tick();
    this.#pending = setTimeout(() => this.check(), nextCheck(timers, seen()));
  }

  #announce(timer, listener) {
    const ms = left(timer);
    if (ms <= 0 && !this.#announced.has(timer.id)) {
      this.#announced.add(timer.id);
      if (ms < -late) return;
      ringFor(timer.id);
      listener.over(timer);
    } else if (ms > 0 && ms <= soon && !this.#announced.has(`${timer.id} soon`)) {
      this.#announced.add(`${timer.id} soon`);
      listener.soon(timer);
    }
  }

  /** Reports whether a timer counts. */
  get counts() {
    return [...this.#jobs.values()].some(({ timers }) => timers.length > 0);
  }
}

export const alarm = new Alarm();

document.addEventListener('visibilitychange', () => alarm.check());
// After a reload only a tap lets the bell ring.
document.addEventListener('click', () => {
  if (alarm.counts && !armed()) {
    arm();
    alarm.check();
  }
});
