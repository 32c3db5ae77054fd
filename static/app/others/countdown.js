// What a timer's end says by the phone's clock. Only the page can know: the
// core has no clock.

const second = 1000; // ms
const minute = 60 * second;
const hour = 60 * minute;
const day = 24 * hour;

/** Milliseconds until a timer ends; negative when it has. */
export const left = ({ until }, now = Date.now()) => (Date.parse(until) || 0) - now;

/** Time left as on a clock: "4:59", "1:02:00". The second that has begun counts. */
export function digits(ms) {
  const all = Math.ceil(Math.max(ms, 0) / second);
  const parts = [Math.floor(all / 60) % 60, all % 60].map((n) => String(n).padStart(2, '0'));
  const hours = Math.floor(all / 3600);
  return hours ? `${hours}:${parts.join(':')}` : parts.join(':').replace(/^0/, '');
}

/**
 * How long ago something was: a word of the catalogue and its count.
 *
 * @param {number} ms
 * @returns {[word: string, count: number]}
 */
export function ago(ms) {
  if (ms < minute) return ['timer.ago.seconds', Math.floor(ms / second)];
  if (ms < hour) return ['timer.ago.minutes', Math.floor(ms / minute)];
  if (ms < 2 * day) return ['timer.ago.hours', Math.floor(ms / hour)];
  return ['timer.ago.days', Math.floor(ms / day)];
}

/**
 * How long the page can wait before a timer must be looked at again: to the next
 * full second while somebody looks, else to the next end.
 */
export function nextCheck(timers, seen, now = Date.now()) {
  const waits = timers.map((timer) => {
    const ms = left(timer, now);
    if (ms <= 0) return seen && ms > -minute ? second : minute;
    return seen ? ms % second || second : ms;
  });
  return Math.min(...waits, minute);
}
