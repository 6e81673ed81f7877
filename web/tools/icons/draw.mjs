// Draws the PNG files of the mark from its SVG. See README.md.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const folder = fileURLToPath(new URL('../../public/icons/', import.meta.url));
const svg = readFileSync(`${folder}mark.svg`, 'utf8');
const square = svg.replace(' rx="72"', '');
const inset = square.replace('viewBox="0 0 512 512"', 'viewBox="-52 -52 616 616"')
  .replace('<rect width="512" height="512"', '<rect x="-52" y="-52" width="616" height="616"');

const wanted = [
  { name: 'mark-192.png', pixels: 192, drawing: svg },
  { name: 'mark-512.png', pixels: 512, drawing: svg },
  { name: 'mark-180.png', pixels: 180, drawing: square },
  { name: 'mark-maskable-512.png', pixels: 512, drawing: inset },
];

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const page = await browser.newPage();
  for (const { name, pixels, drawing } of wanted) {
    await page.setViewportSize({ width: pixels, height: pixels });
    await page.setContent(`<body style="margin:0">${drawing}</body>`);
    await page.evaluate((size) => {
      const drawn = document.querySelector('svg');
      drawn.setAttribute('width', size);
      drawn.setAttribute('height', size);
      drawn.style.display = 'block';
    }, pixels);
    writeFileSync(folder + name, await page.screenshot({ omitBackground: true }));
  }
} finally {
  await browser.close();
}
