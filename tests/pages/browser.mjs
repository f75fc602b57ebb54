// One browser for all pages; every page in a context of its own.
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const { chromium } = require('playwright-core');
const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync'];

export const axeSource = require('axe-core').source;

export async function launched() {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: FLAGS });
}

/// Opens a file; what it logs and what it asks for is kept.
export async function opened(browser, url, { width = 390, colours = 'light', forced = false, scripts = true } = {}) {
  const context = await browser.newContext({
    viewport: { width, height: 844 },
    colorScheme: colours,
    forcedColors: forced ? 'active' : 'none',
    javaScriptEnabled: scripts,
    offline: true,
  });
  const page = await context.newPage();
  const faults = [];
  page.on('console', (message) => faults.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
  page.on('request', (request) => {
    if (request.url() !== url && !request.url().startsWith('data:')) faults.push(`request: ${request.url()}`);
  });
  await page.goto(url);
  return { page, faults, close: () => context.close() };
}
