import { call } from '../core/client.js';
import { money } from '../words/money.js';

/**
 * What a job cost by its bill, else by its estimate: {what, total}, the total as it
 * is read; undefined where neither was written or the core can't add it up.
 */
export async function costsOf({ record, state }) {
  const papers = state.papers ?? [];
  const last = (kind) => papers.findLast(({ what }) => what === kind);
  const paper = last('bill') ?? last('estimate');
  if (!paper) return undefined;
  try {
    const { system } = record.bench;
    const { ok } = await call('bill', { ...JSON.parse(paper.text), system });
    return ok && { what: paper.what, total: money(ok.total, ok) };
  } catch {
    return undefined; // another program wrote it
  }
}
