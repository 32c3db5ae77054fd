// Which events are waited for.
import { eventsByName } from './members.js';

/** An event that is waited for, on whatever it is. */
export function checkEvent(report, name, place) {
  const list = eventsByName.get(name);
  if (!list) return report.odd(`event: ${name}`, place);
  if (list.every(({ way }) => report.lacks(way)))
    for (const { way } of list) report.use(way, place);
  return undefined;
}
