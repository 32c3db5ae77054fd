import { call } from '../core/client.js';
import { money } from '../words/money.js';

/**
 * What a job cost by its bill, else by its estimate: {what, total, minor, currency}, the total as it
 * is read, and `minor` in units of `currency`; undefined where neither was written or the core can't add it up.
 */
export async function costsOf({ record, state }) {
  const paper = state.papers?.find(({ id }) => id === state.costs);
  if (!paper) return undefined;
  try {
    const { system } = record.bench;
    const { ok } = await call('bill', { ...JSON.parse(paper.text), system });
    return (
      ok && { what: paper.what, total: money(ok.total, ok), minor: ok.total, currency: ok.currency }
    );
  } catch {
    return undefined; // another program wrote it
  }
}
