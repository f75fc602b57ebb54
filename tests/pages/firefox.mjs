// Opens every page of list.mjs in Firefox as well: axe, no message, no request, nothing
// sticks out; and the printed page carries head and deferral there too.
// node firefox.mjs [NAME…]
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer from 'puppeteer-core';
import { axeSource } from './browser.mjs';
import { pages } from './list.mjs';
import { maker } from './made.mjs';
import { faultsOf, words } from './print.mjs';

const folder = mkdtempSync(join(tmpdir(), 'pages-firefox-'));
const made = maker(folder);
const wanted = process.argv.slice(2);
const chosen = pages.filter((page) => wanted.length === 0 || wanted.includes(page.name));
const browser = await puppeteer.launch({
  browser: 'firefox', executablePath: process.env.FIREFOX ?? '/usr/bin/firefox-esr', headless: true,
});
let passed = 0;
const failed = [];

function check(name, what, faults) {
  if (faults.length === 0) passed += 1;
  else failed.push(`${name}, ${what}:`, ...faults.slice(0, 12).map((fault) => `    ${fault}`));
}

try {
  for (const page of chosen) {
    const url = pathToFileURL(made(page).file).href;
    for (const width of [320, 1280]) {
      const tab = await browser.newPage();
      const faults = [];
      tab.on('console', (message) => faults.push(`console: ${message.text()}`));
      tab.on('pageerror', (error) => faults.push(`error: ${error.message}`));
      tab.on('request', (request) => {
        if (request.url() !== url && !request.url().startsWith('data:')) faults.push(`request: ${request.url()}`);
      });
      await tab.setViewport({ width, height: 844 });
      await tab.goto(url);
      check(page.name, `${width} px: silence`, faults);
      const wide = await tab.evaluate(() => document.scrollingElement.scrollWidth);
      check(page.name, `${width} px: nothing sticks out`, wide > width ? [`${wide} px wide`] : []);
      await tab.evaluate(axeSource);
      const axe = await tab.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
      check(page.name, `${width} px: axe`, axe.violations.flatMap((violation) =>
        violation.nodes.map((node) => `${violation.id}: ${node.target} ${violation.help}`)));
      if (width === 1280) {
        const heads = await tab.$$eval('.run', (all) => all.map((one) => one.textContent));
        const pdf = join(folder, `${page.name}.pdf`);
        await tab.pdf({ path: pdf, format: 'a4' });
        // a list's own bullet is a glyph of the browser's, not a letter to read
        const read = words(pdf).map((sheet) => sheet.filter((word) => word.text !== '•'));
        check(page.name, 'on A4', faultsOf(read, heads));
      }
      await tab.close();
    }
    console.log(`firefox: ${page.name}`);
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
console.log(`firefox: ${passed} passed, ${failed.filter((line) => !line.startsWith(' ')).length} failed`);
if (failed.length > 0) console.error(failed.join('\n'));
process.exitCode = failed.length > 0 || passed === 0 ? 1 : 0;
