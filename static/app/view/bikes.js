import { html, nothing } from 'lit-html';
import { file } from '../data.js';
import { address } from '../router.js';
import * as store from '../store.js';
import { t, text } from '../words.js';

/** The first screen: the open jobs, then the bikes. It needs no core. */
export async function bikes(_, app) {
  const { bikes: list = [] } = await file('bikes.json');
  const screen = {
    name: 'bikes',
    tab: 'bikes',
    title: t('nav.bikes'),
    draw: () => draw(list, screen.open),
  };
  // The bikes don't wait for the store.
  store
    .jobs()
    .then((jobs) => {
      screen.open = jobs.filter((job) => !job.summary.finished);
      app.redraw();
    })
    .catch(() => app.fail('store.failed'));
  return screen;
}

function draw(list, open = []) {
  return html`
    <header class="brand">
      <p class="name">${t('app.name')}</p>
      <p>${t('app.tagline')}</p>
    </header>
    ${open.length ? openJobs(open) : nothing}
    <h1 tabindex="-1">${t('bikes.title')}</h1>
    ${
      list.length
        ? html`<ul class="bikes">
            ${list.map(bike)}
          </ul>`
        : html`<p>${t('bikes.none')}</p>`
    }
  `;
}

function openJobs(open) {
  return html`<section class="open-jobs" aria-label=${t('bikes.open-jobs')}>
    ${open.map(
      ({ id, name, summary }) =>
        html`<a class="resume" href=${address('job', id)}>
          <strong>${t('bikes.resume')}: ${name}</strong>
          ${
            summary.steps
              ? html`<span
                  >${t('bikes.progress', { done: summary.done, steps: summary.steps })}</span
                >`
              : nothing
          }
        </a>`,
    )}
  </section>`;
}

function bike({ id, name, years, layout, invented, oils = [], gaps }) {
  const [oil] = oils;
  const missing = gaps
    ? html`<span class="gaps"
        >? ${t(gaps === 1 ? 'bikes.gap' : 'bikes.gaps', { count: gaps })}</span
      >`
    : nothing;
  return html`<li>
    <a href=${address('bike', id)}>
      <span class="who">
        <strong>${name}</strong>
        <span>${years} ${t(layout)}</span>
        ${invented ? html`<span>${t('example')}</span>` : nothing} ${missing}
      </span>
      <span class="oil">
        <span class="value">${text(oil?.due?.texts?.[0] ?? '@not-known')}</span>
        <span>${oil?.grades?.[0]}</span>
      </span>
    </a>
  </li>`;
}
