import { html, nothing, svg } from 'lit-html';
import { own } from '../site/own.js';

// The oil spaces of each layout in section, ours, on 52 by 40: whose oil it is, the space,
// where it begins and where it ends below. A line without an owner holds no oil.
/** @type {{ [layout: string]: [string, string, number?, number?][] }} */
const layouts = {
  'wet-sump': [
    ['engine', 'M5 5v19l9 10h24l9-10V5', 5, 34],
    ['', 'M26 34v4'],
  ],
  'wet-sump-shaft': [
    ['engine', 'M2 5v20l6 9h15l6-9V5', 5, 34],
    ['final-drive', 'M36 18a7 7 0 1 0 14 0a7 7 0 1 0-14 0', 11, 25],
    ['', 'M29 18h7'],
  ],
  'separate-gearbox': [
    ['engine', 'M2 5v20l6 9h14l6-9V5', 5, 34],
    ['gearbox', 'M33 15h17v19H33z', 15, 34],
  ],
  'small-strainer': [
    ['engine', 'M12 7v19l6 8h16l6-8V7', 7, 34],
    ['', 'M15 25h22M20 25v5M26 25v5M32 25v5'],
  ],
  'v-twin-strainers': [
    ['engine', 'M7 21v6l7 8h24l7-8v-6', 21, 35],
    ['', 'M22 22L12 4M30 22L40 4M8 6l8-4M36 2l8 4M17 29h6M29 29h6'],
  ],
  'two-compartment': [
    ['engine', 'M3 6v20l7 8h16V6', 6, 34],
    ['gearbox', 'M49 6v20l-7 8H26V6', 6, 34],
  ],
  'dry-sump': [
    ['engine', 'M4 3h14v30H4z', 3, 33],
    ['', 'M18 28h8M26 13h23v14l-5 7H31l-5-7z'],
  ],
  'dry-sump-frame': [
    ['engine', 'M3 4h44v8H14v25H3z', 4, 37],
    ['', 'M22 19h25v15H22z'],
  ],
  'separate-oils': [
    ['engine', 'M3 4h12v31H3z', 4, 35],
    ['primary', 'M20 13h12v22H20z', 13, 35],
    ['gearbox', 'M37 20h12v15H37z', 20, 35],
  ],
  'flat-twin': [
    ['engine', 'M2 15h48v9H36l-4 12H20l-4-12H2z', 15, 36],
    ['gearbox', 'M19 3h14v8H19z', 3, 11],
    ['final-drive', 'M40 7a4 4 0 1 0 8 0a4 4 0 1 0-8 0', 3, 11],
  ],
  scooter: [
    ['engine', 'M2 18h25v10l-5 7H7l-5-7z', 18, 35],
    ['final-drive', 'M34 27a8 8 0 1 0 16 0a8 8 0 1 0-16 0', 19, 35],
    ['', 'M9 4h34a4 4 0 0 1 0 8H9a4 4 0 0 1 0-8z'],
  ],
};

/**
 * The sign of a layout: the section of its oil spaces, with as much oil in them as `fill`
 * says, from 0 to 1: one number for all, or one by whose oil it is (a card's `role`). Seen
 * only, unless it has a label.
 *
 * @param {string | undefined} layout
 * @param {{ fill?: number | { [role: string]: number }, label?: string }} [how]
 */
export function outline(layout, { fill = 0, label } = {}) {
  const parts = own(layouts, layout);
  if (!parts) return nothing;
  const share = (/** @type {string} */ role) =>
    Math.min(1, Math.max(0, typeof fill === 'number' ? fill : (own(fill, role) ?? 0)));
  return html`<svg
    class="outline"
    viewBox="0 0 52 40"
    role=${label ? 'img' : nothing}
    aria-label=${label ?? nothing}
    aria-hidden=${label ? nothing : 'true'}
  >
    ${parts.map(([role, d, top = 0, bottom = 0]) => oil(d, top, bottom, role ? share(role) : 0))}
    <path d=${parts.map(([, d]) => d).join('')} />
  </svg>`;
}

/** The space again, filled and cut off at the oil's level: an inner picture shows no more than its field. */
const oil = (
  /** @type {string} */ d,
  /** @type {number} */ top,
  /** @type {number} */ bottom,
  /** @type {number} */ share,
) => {
  const high = (bottom - top) * share;
  const y = bottom - high;
  return high
    ? svg`<svg y=${y} width="52" height=${high} viewBox="0 ${y} 52 ${high}"><path d=${d} /></svg>`
    : nothing;
};
