import { costsOf } from '../bill/costs.js';
import { call } from '../core/client.js';
import { limits, loadLimits } from '../core/limits.js';
import { factsOf } from '../store/facts.js';
import { settings } from '../store/settings.js';

/** @import { VisitAnswer } from '../core/core.d.ts' */

/**
 * What the core makes of the facts of a job's visit, and of how far the job is.
 *
 * @returns {(facts: any[], adding?: boolean) => Promise<any>}
 */
export function asking({ state }, costs) {
  const { minor: total, currency } = costs ?? {};
  const { system } = settings;
  const started = Boolean(state.done?.length);
  const finished = Boolean(state.finished);
  return (facts, adding = false) =>
    call('visit', { facts, adding, system, total, currency, started, finished });
}

/** Reports whether a fact tells of a person. */
const personal = ({ book, kind, what = '' }) =>
  limits.personal?.some((p) => p.book === book && p.kind === kind && (!p.what || p.what === what));

/**
 * Where the visit of a job stands; undefined where there is none. Without `persons` it is
 * as if nothing had been told of one.
 *
 * @returns {Promise<VisitAnswer | undefined>}
 */
export async function visitOf(job, persons = true) {
  await loadLimits();
  const all = await factsOf('visit', job.record.id);
  if (!all.length) return undefined;
  const facts = persons ? all : all.filter((fact) => !personal(fact));
  return (await asking(job, await costsOf(job))(facts)).ok;
}
