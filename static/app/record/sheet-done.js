import { html, nothing } from 'lit-html';
import { t, text } from '../words/catalogue.js';
import { mark, textsOf } from '../ui/figure.js';
import { own } from '../site/own.js';

/** What is in a circuit now, and how its level is read. */
export function oilLine({ circuit, role, today, need }, { record, state }) {
  const { poured, drained, level } = state.oils?.find((o) => o.circuit === circuit) ?? {};
  if (!today && !poured && !level)
    return html`<p><strong>${t(role)}:</strong> ${t('paper.oil.kept')}</p>`;
  const { level: gauge } = record.card.circuits.find(({ id }) => id === circuit);
  const facts = [
    today ? '' : t('paper.oil.kept'),
    poured && t(today ? 'paper.oil.poured' : 'paper.oil.topped-up', { value: poured[0] }),
    drained && t('paper.oil.out', { value: drained[0] }),
    level && t('paper.oil.level', { value: t(level) }),
  ].filter(Boolean);
  const [asked] = textsOf(need);
  return html`<p>
      <strong>${t(role)}:</strong> ${facts.join(' · ') || t('paper.not-written')}.
      ${asked ? t('paper.oil.asked', { value: asked }) : t('paper.oil.not-asked')}
    </p>
    ${level || poured ? howToRead(gauge ?? {}) : nothing}`;
}

/**
 * How the level of an oil is read, as far as the card knows.
 *
 * @param {{ state?: string, stance?: string, device?: string, where?: string }} gauge
 */
function howToRead({ state, stance, device, where }) {
  const known = [
    state && t('paper.level.state', { state: `@state.${state}` }),
    stance && t('paper.level.stance', { stance: `@stance.${stance}` }),
    (device || where) &&
      t('paper.level.on', {
        gauge: [device && t(`device.${device}`), where].filter(Boolean).join(', '),
      }),
  ].filter(Boolean);
  return known.length ? html`<p>${t('paper.level')} ${known.join(' ')}</p>` : nothing;
}

/** What was read in the job, but for torques, which stand with what was tightened. */
export function readings({ readings: list = [] }) {
  const shown = list.filter(({ stands, what }) => stands && what !== 'torque');
  return shown.length
    ? html`<table>
        <tr>
          ${['paper.read', 'paper.value', 'paper.card'].map((w) => html`<th scope="col">${t(w)}</th>`)}
        </tr>
        ${shown.map(
          ({ what, name, texts, card }) =>
            html`<tr>
              <td>${t(`ask.${what}`)}${name ? html`, ${text(name)}` : nothing}</td>
              <td>${texts.map(text).join(' · ')}</td>
              <td>${card ? text(card[0]) : '–'}</td>
            </tr>`,
        )}
      </table>`
    : nothing;
}

/** Fastener by fastener: what was used, else what the card says. */
export function closed({ plan, state }) {
  const used = (id) =>
    state.readings?.find((r) => r.stands && r.what === 'torque' && r.of === id)?.texts[0];
  const tight = (bolt) => {
    const card = own(bolt, bolt.by);
    const values = { used: used(bolt.id), value: card.texts && `${card.texts[0]} ${mark(card)}` };
    // What is closed by hand or by feel has no figure to know.
    if (!values.value) return text(values.used ?? (bolt.listed ? '@not-known' : '–'));
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
