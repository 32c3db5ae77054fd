// Draws the committed PNGs. Icons: `node test/draw-pictures.js`. Screenshots for the
// manifest, of the site as built: `… site`; of a running site: `… http://localhost:8080/`.
import { readFile, writeFile } from 'node:fs/promises';
import { launchChromium, startServer } from './browser/launch.js';

const icons = new URL('../icons/', import.meta.url);

// `scale` is the part of the square that the drawing fills: a maskable icon is cut
// to a circle of 80 % of its width, an Apple one to a rounded square. All are paper
// to the edge: without see-through pixels they have few colours and weigh little.
const drawn = [
  { file: 'icon-192.png', size: 192, scale: 1 },
  { file: 'icon-512.png', size: 512, scale: 1 },
  { file: 'maskable-512.png', size: 512, scale: 0.88 },
  { file: 'touch-180.png', size: 180, scale: 0.95 },
];

const screenshots = [
  { file: 'screenshot-narrow.png', width: 360, height: 740, deviceScaleFactor: 2 },
  { file: 'screenshot-wide.png', width: 1280, height: 800, deviceScaleFactor: 1 },
];

async function drawIcons(page) {
  const svg = await readFile(new URL('icon.svg', icons), 'utf8');
  const paper = svg.match(/<rect[^>]* fill="(#[0-9a-f]{6})"/)[1];
  for (const { file, size, scale } of drawn) {
    await page.setViewport({ width: size, height: size });
    await page.setContent(
      `<style>body{margin:0;height:100vh;display:grid;place-content:center;
        background:${paper}}</style>
      ${svg.replace('<svg ', `<svg width="${size * scale}" height="${size * scale}" `)}`,
    );
    await save(page, file);
  }
}

async function drawScreenshots(page, url) {
  for (const { file, ...viewport } of screenshots) {
    await page.setViewport(viewport);
    await page.goto(url, { waitUntil: 'networkidle0' });
    await save(page, file);
  }
}

async function save(page, file) {
  await writeFile(new URL(file, icons), await page.screenshot());
}

const [what] = process.argv.slice(2);
const endings = [];
const browser = await launchChromium();
try {
  const page = await browser.newPage();
  if (!what) {
    await drawIcons(page);
  } else if (what === 'site') {
    const server = await startServer({ after: (fn) => endings.push(fn) });
    await drawScreenshots(page, server.url);
  } else {
    await drawScreenshots(page, what);
  }
} finally {
  await browser.close();
  for (const end of endings) await end();
}
