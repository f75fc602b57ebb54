// Prints the measuring sheet for six choices of rulesets on A4 and Letter and looks at
// each page: it is named, says who decides, no letter is smaller than 8 pt, no words
// cover each other, nothing sticks out on a narrow phone, and axe finds nothing.
// Packages and browser are those of tests/pages:
//   bash tests/pages/run.sh once, then: node tests/sheet/pages.mjs [FOLDER FOR PDF AND PNG]
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { axeSource, launched, opened } from '../pages/browser.mjs';
import { nonconforming } from '../pages/conforms.mjs';
import { faultsOf, words } from '../pages/print.mjs';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const program = process.env.GUARDRULE ?? join(root, 'target/debug/guardrule');
const kept = process.argv[2];
const folder = kept ?? mkdtempSync(join(tmpdir(), 'sheets-'));
if (kept) mkdirSync(kept, { recursive: true });

const GUARDS = 2;
const CHOICES = {
  advice: [],
  'us-house': ['us-dwelling-2018'],
  'us-strength': ['us-dwelling-2018', '--strength'],
  england: ['uk-approved-document-k'],
  ontario: ['ontario-2012'],
  many: ['us-dwelling-2024', 'us-buildings-2024', 'florida-dwelling-2023', 'germany-stairs-din-18065', '--strength'],
};
const PAPERS = { a4: { format: 'A4', high: 842 }, letter: { format: 'Letter', high: 792 } };

let passed = 0;
const failed = [];
const check = (name, what, faults) => {
  if (faults.length === 0) { passed += 1; return; }
  failed.push(`${name}, ${what}:`, ...faults.slice(0, 12).map((fault) => `    ${fault}`));
  if (faults.length > 12) failed.push(`    and ${faults.length - 12} more`);
};

function made(name, paper, choice) {
  const rules = choice.flatMap((id) => (id.startsWith('--') ? [id] : ['--rules', id]));
  const args = ['sheet', '--paper', paper, '--guards', String(GUARDS), ...rules];
  const ran = spawnSync(program, args, { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 });
  if (ran.status !== 0) throw new Error(`${name}: ${ran.stderr}`);
  const file = join(folder, `${name}-${paper}.html`);
  writeFileSync(file, ran.stdout);
  return file;
}

/// The heads of the pages: two of the front, those of each railing, the reference.
const heads = (guards) => ['Measuring sheet', 'How to write it down', 'What the chosen rules ask',
  ...Array.from({ length: guards }, (_, i) => `property unit railing date railing ${i + 1} of ${guards}, page`)];

/// Which railing each page is of; 0 where it is none's.
const railings = (pages) => pages.map((page) => {
  const text = page.slice(0, 12).map((word) => word.text).join(' ');
  return Number(/railing (\d+) of \d+, page/.exec(text)?.[1] ?? 0);
});

const browser = await launched();
for (const [name, choice] of Object.entries(CHOICES)) {
  for (const [paper, { format, high }] of Object.entries(PAPERS)) {
    const file = made(name, paper, choice);
    const url = pathToFileURL(file).href;
    check(name, `${paper}: HTML conformance`, await nonconforming(readFileSync(file, 'utf8')));
    const at = await opened(browser, url, { width: 320 });
    check(name, `${paper}: nothing is asked for`, at.faults);
    const wide = await at.page.evaluate(() => document.scrollingElement.scrollWidth);
    check(name, `${paper}: 320 px`, wide > 320 ? [`${wide} px wide`] : []);
    await at.page.evaluate(axeSource);
    const axe = await at.page.evaluate(() => globalThis.axe.run());
    check(name, `${paper}: axe`, axe.violations.flatMap((fault) => fault.nodes.map((node) => `${fault.id}: ${node.html.slice(0, 90)}`)));
    const pdf = join(folder, `${name}-${paper}.pdf`);
    await at.page.pdf({ path: pdf, format, preferCSSPageSize: true, printBackground: true });
    await at.close();
    const pages = words(pdf);
    check(name, `${paper}: pages`, faultsOf(pages, heads(GUARDS)));
    const low = pages.flatMap((page, index) => page.filter((word) => word.y1 > high - 11 * 72 / 25.4 + 1)
      .map((word) => `page ${index + 1}: "${word.text}" lies in the margin`));
    check(name, `${paper}: margins`, low);
    const of = railings(pages);
    const backed = of.flatMap((number, index) => (index % 2 === 1 && number !== of[index - 1]
      ? [`pages ${index} and ${index + 1}: railing ${of[index - 1]} and ${number}`] : []));
    check(name, `${paper}: both sides`, backed.filter((_, i) => i < GUARDS * 20));
    console.log(`${name} ${paper}: ${pages.length} pages, of railings ${of.filter((n) => n > 0).length}`);
  }
}
await browser.close();
if (!kept) rmSync(folder, { recursive: true, force: true });
console.log(`${passed} checks passed, ${failed.filter((line) => !line.startsWith(' ')).length} failed`);
if (failed.length > 0) { console.log(failed.join('\n')); process.exit(1); }
