// A page on paper: its words and where they stand.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { tmpdir } from 'node:os';

const DEFERRAL = 'The local authority and licensed professionals decide';
// the box of a word in Liberation Sans is ascent and descent high: 0.905 and 0.212 em
const BOX_OF_AN_EM = 1.117;
const SMALLEST = 8;

const plain = (text) => text.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"')
  .replace(/&#39;|&apos;/g, "'").replace(/&amp;/g, '&');

/// Each page of a PDF with the boxes of its words.
export function words(pdf) {
  const xml = execFileSync('pdftotext', ['-bbox', pdf, '-'], { encoding: 'utf8', maxBuffer: 1 << 29 });
  return xml.split('<page ').slice(1).map((page) => {
    const found = page.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g);
    return [...found].map(([, x0, y0, x1, y1, text]) =>
      ({ x0: +x0, y0: +y0, x1: +x1, y1: +y1, text: plain(text) }));
  });
}

const joined = (text) => text.replace(/\s+/g, '');

/// What is wrong with the printed pages: heads, deferral, small letters, words over words.
export function faultsOf(pages, heads) {
  const faults = [];
  const known = heads.map(joined);
  for (const [index, page] of pages.entries()) {
    const text = joined(page.map((word) => word.text).join(''));
    const at = `page ${index + 1} of ${pages.length}`;
    if (page.length === 0) { faults.push(`${at}: empty`); continue; }
    if (known.length > 0 && !known.some((head) => text.startsWith(head))) {
      faults.push(`${at}: begins with no head: ${page.slice(0, 12).map((w) => w.text).join(' ')}`);
    }
    if (!text.includes(joined(DEFERRAL))) faults.push(`${at}: no deferral`);
    for (const word of page) {
      const points = (word.y1 - word.y0) / BOX_OF_AN_EM;
      if (points < SMALLEST - 0.05) faults.push(`${at}: ${word.text}: ${points.toFixed(1)} pt`);
    }
    faults.push(...covered(page).map((both) => `${at}: ${both}`));
  }
  return faults;
}

/// Pairs of words that cover each other by more than the room between lines.
function covered(page) {
  const inner = page.filter((word) => word.text.trim() !== '').map((word) => {
    const high = word.y1 - word.y0;
    return { ...word, y0: word.y0 + high * 0.25, y1: word.y1 - high * 0.25 };
  }).sort((a, b) => a.y0 - b.y0);
  const faults = [];
  for (let i = 0; i < inner.length; i += 1) {
    for (let j = i + 1; j < inner.length && inner[j].y0 < inner[i].y1; j += 1) {
      const wide = Math.min(inner[i].x1, inner[j].x1) - Math.max(inner[i].x0, inner[j].x0);
      if (wide > 0.8) faults.push(`"${inner[i].text}" and "${inner[j].text}" cover each other`);
    }
  }
  return faults;
}

/// Whether anything on the pages has a colour.
export function hasColour(pdf) {
  const folder = mkdtempSync(join(tmpdir(), 'grey-'));
  try {
    execFileSync('pdftoppm', ['-r', '36', pdf, join(folder, 'p')]);
    return readdirSync(folder).some((name) => {
      const ppm = readFileSync(join(folder, name));
      let at = 0;
      for (let line = 0; line < 3; at += 1) if (ppm[at] === 10) line += 1;
      for (; at + 2 < ppm.length; at += 3) {
        const [r, g, b] = [ppm[at], ppm[at + 1], ppm[at + 2]];
        if (Math.max(r, g, b) - Math.min(r, g, b) > 10) return true;
      }
      return false;
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}
