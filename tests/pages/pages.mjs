// Opens every page of list.mjs: conformance, axe, no message, no request, without
// scripts, on narrow and wide screens, in every scheme of colours, and on paper.
// node pages.mjs [NAME…]
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { axeSource, launched, opened } from './browser.mjs';
import { nonconforming } from './conforms.mjs';
import { maker, root } from './made.mjs';
import { faultsOf, hasColour, words } from './print.mjs';
import { pages } from './list.mjs';

const folder = mkdtempSync(join(tmpdir(), 'pages-'));
const made = maker(folder);
const SCREENS = [
  { width: 320, colours: 'light' },
  { width: 390, colours: 'light' },
  { width: 390, colours: 'dark' },
  { width: 390, colours: 'light', forced: true },
  { width: 1280, colours: 'light' },
];

let passed = 0;
const failed = [];

function check(name, what, faults) {
  if (faults.length === 0) { passed += 1; return; }
  failed.push(`${name}, ${what}:`, ...faults.slice(0, 12).map((fault) => `    ${fault}`));
  if (faults.length > 12) failed.push(`    and ${faults.length - 12} more`);
}

async function onScreen(browser, page, url) {
  for (const { width, ...scheme } of SCREENS) {
    const what = `${width} px, ${scheme.forced ? 'forced colours' : scheme.colours}`;
    const at = await opened(browser, url, { width, ...scheme });
    const wide = await at.page.evaluate(() => document.scrollingElement.scrollWidth);
    check(page.name, `${what}: nothing sticks out`, wide > width ? [`${wide} px wide`] : []);
    const small = await at.page.evaluate(() => [...document.querySelectorAll('body *')]
      .filter((element) => element.getClientRects().length > 0
        && [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== ''))
      .filter((element) => {
        const svg = element.ownerSVGElement;
        const scale = svg?.viewBox.baseVal.width ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
        return parseFloat(getComputedStyle(element).fontSize) * (scale || 1) < 11.95;
      })
      .map((element) => `${element.textContent.trim().slice(0, 40)} is smaller than 12 px`));
    check(page.name, `${what}: letters`, small);
    await at.page.evaluate(axeSource);
    const axe = await at.page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
    check(page.name, `${what}: axe`, axe.violations.flatMap((violation) =>
      violation.nodes.map((node) => `${violation.id}: ${node.target} ${violation.help}`)));
    check(page.name, `${what}: silence`, at.faults);
    await at.close();
  }
  const bare = await opened(browser, url, { scripts: false });
  const text = await bare.page.locator('body').innerText();
  check(page.name, 'without scripts', text.includes('professionals decide') ? [] : ['nothing to read']);
  await bare.close();
}

async function onPaper(browser, page, url) {
  const at = await opened(browser, url);
  const heads = await at.page.locator('.run').allTextContents();
  if ((page.heads ?? true) && heads.length === 0) check(page.name, 'on paper', ['no sheet has a head']);
  for (const format of ['A4', 'Letter']) {
    const pdf = join(folder, `${page.name}-${format}.pdf`);
    await at.page.pdf({ path: pdf, format, preferCSSPageSize: false, printBackground: true });
    check(page.name, `on ${format}`, faultsOf(words(pdf), heads));
    if (page.grey ?? true) check(page.name, `on ${format}: grey`, hasColour(pdf) ? ['a colour'] : []);
  }
  await at.close();
}

/// The README's recipe makes a PDF of the first page of the list.
function recipe() {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const line = readme.split('\n').find((one) => one.startsWith('chromium --headless'));
  if (!line) { check('README', 'recipe', ['there is none']); return; }
  const { file, html } = made(pages[0]);
  const pdf = join(folder, 'recipe.pdf');
  const args = line.split(' ').slice(1).map((arg) => arg.replace('porch.pdf', pdf).replace('porch.html', file));
  // as root, as a builder runs it, the sandbox of the browser does not start
  const ran = spawnSync(process.env.CHROMIUM ?? '/usr/bin/chromium', ['--no-sandbox', ...args], { encoding: 'utf8' });
  if (ran.status !== 0) { check('README', 'recipe', [ran.stderr]); return; }
  const heads = [...html.matchAll(/<div class="run"><p>(.*?)<\/p>/g)].map((found) => found[1]);
  check('README', 'recipe', faultsOf(words(pdf), heads));
}

const wanted = process.argv.slice(2);
const chosen = pages.filter((page) => wanted.length === 0 || wanted.includes(page.name));
const browser = await launched();
try {
  for (const page of chosen) {
    const began = Date.now();
    const { file, html } = made(page);
    const url = pathToFileURL(file).href;
    check(page.name, 'HTML conformance', await nonconforming(html));
    if (page.shots ?? true) await onScreen(browser, page, url);
    await onPaper(browser, page, url);
    console.log(`${page.name}: ${((Date.now() - began) / 1000).toFixed(1)} s`);
  }
  if (wanted.length === 0) recipe();
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
console.log(`${passed} passed, ${failed.filter((line) => !line.startsWith(' ')).length} failed`);
if (failed.length > 0) console.error(failed.join('\n'));
process.exitCode = failed.length > 0 || passed === 0 ? 1 : 0;
