import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { mark, textsOf } from '../ui/figure.js';
import { own } from '../site/own.js';

/** What is in a circuit now, and how its level is read. */
export function oilLine({ circuit, role, today, need }, { record, state }) {
  const { poured, drained, level } = state.oils?.find((o) => o.circuit === circuit) ?? {};
  if (!today && !poured && !level)
    return html`<p><strong>${t(role)}:</strong> ${t('paper.oil.kept')}</p>`;
  const { level: gauge = {} } = record.card.circuits.find(({ id }) => id === circuit);
  const facts = [
    today ? '' : t('paper.oil.kept'),
    poured && t(today ? 'paper.oil.poured' : 'paper.oil.topped-up', { value: poured[0] }),
    drained && t('paper.oil.out', { value: drained[0] }),
    level && t('paper.oil.level', { value: t(level) }),
  ].filter(Boolean);
  const known = (family, word) => (word ? t(`${family}.${word}`) : t('not-known'));
  return html`<p>
      <strong>${t(role)}:</strong> ${facts.join(' · ') || t('paper.not-written')}.
      ${t('paper.oil.asked', { value: textsOf(need)[0] ?? t('not-known') })}
    </p>
    <p>
      ${t('paper.level', {
        state: known('state', gauge.state),
        stance: known('stance', gauge.stance),
        device: known('device', gauge.device),
        where: gauge.where || t('not-known'),
      })}
    </p>`;
}

/** Fastener by fastener: what was used, else what the card says. */
export function closed({ plan, state }) {
  const used = (id) =>
    state.readings?.find((r) => r.stands && r.what === 'torque' && r.of === id)?.texts[0];
  const tight = (bolt) => {
    const card = own(bolt, bolt.by);
    const values = { used: used(bolt.id), value: card.texts && `${card.texts[0]} ${mark(card)}` };
    if (!values.value) return text(values.used ?? '@not-known');
    return t(values.used ? 'paper.used' : 'paper.as-card', values);
  };
  return html`<table>
    <tr>
      ${['paper.place', 'plan.thread', 'paper.tight', 'paper.seal'].map((w) => html`<th scope="col">${t(w)}</th>`)}
    </tr>
    ${plan.bolts
      .filter(({ today }) => today)
      .map(
        (b) =>
          html`<tr>
            <td>${t(b.purpose)}${b.place ? `: ${text(b.place)}` : nothing}</td>
            <td>${text(b.thread ?? '–')}</td>
            <td>${tight(b)}</td>
            <td>
              ${b.seal ? [t(b.seal), text(b.sealSize ?? '')].filter(Boolean).join(', ') : '–'}
            </td>
          </tr>`,
      )}
  </table>`;
}
