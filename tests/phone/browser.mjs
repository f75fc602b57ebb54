// A browser with a profile of its own, and a person who taps or types in it.
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { createRequire } from "node:module";
// one set of packages for all tests in a browser
const require = createRequire(new URL("../pages/package.json", import.meta.url));
const { chromium } = require("playwright-core");
export const axe = require("axe-core").source;
export const PAGE = resolve(process.env.PAGE ?? "target/page/guardrule.html");
const FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
const opened = new Set();

/// A browser left open by a failed test would keep the runner waiting.
export async function closeAll() { for (const one of opened) await one.close().catch(() => {}); opened.clear(); }

export async function open({ profile = mkdtempSync(join(tmpdir(), "phone-")), prefs, page = PAGE, ready = true, ...options } = {}) {
  if (prefs) { mkdirSync(join(profile, "Default"), { recursive: true }); writeFileSync(join(profile, "Default/Preferences"), JSON.stringify(prefs)); }
  const context = await chromium.launchPersistentContext(profile, { executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", headless: true, args: FLAGS, offline: true, acceptDownloads: true, hasTouch: true, viewport: { width: 390, height: 844 }, ...options });
  opened.add(context);
  const tab = context.pages()[0] ?? await context.newPage();
  tab.setDefaultTimeout(15000);
  const asked = [], faults = [];
  context.on("request", r => asked.push(r.url()));
  tab.on("pageerror", e => faults.push(String(e)));
  tab.on("console", m => { if (["error", "warning"].includes(m.type())) faults.push(m.text()); });
  const goto = async (at = tab) => { await at.goto(pathToFileURL(page).href); if (ready) await at.waitForSelector("html[data-ready]", { state: "attached", timeout: 60000 }); };
  const close = async keep => { opened.delete(context); await context.close(); if (!keep) rmSync(profile, { recursive: true, force: true }); };
  return { context, tab, asked, faults, goto, close, profile };
}

/// What the screen asks, by the name that stays the same.
export const id = tab => tab.evaluate(() => (state ? state.question.id : "before"));
export const heading = tab => tab.textContent("#screen h1, #screen h2");
export const survey = tab => tab.evaluate(() => state.survey);

/// A person: by touch every act is a tap, by keyboard a run of Tab and one Enter.
export class Person {
  constructor(tab, by) { this.tab = tab; this.by = by; this.acts = 0; this.keys = 0; }
  async press(name, where = "#screen") {
    const button = this.tab.locator(where).getByRole("button", { name, exact: true }).first();
    this.acts++;
    if (this.by === "touch") return button.tap();
    await this.reach(button);
    this.keys++;
    await this.tab.keyboard.press("Enter");
  }
  async reach(target) {
    const handle = await target.elementHandle({ timeout: 5000 });
    for (let n = 0; n < 80; n++) {
      if (await handle.evaluate(node => node === document.activeElement)) return;
      this.keys++;
      await this.tab.keyboard.press("Tab");
    }
    throw new Error("the keyboard does not reach it");
  }
  /// A reading by the page's own keys, or typed.
  async write(...keys) {
    const field = this.tab.locator("#answer");
    if (this.by === "touch") {
      const own = await this.tab.locator(".kp").count();
      if (own) for (const key of keys) { this.acts++; await this.tab.locator(".kp").getByRole("button", { name: key, exact: true }).tap(); }
      else { this.acts += keys.join(" ").length; await field.fill(keys.join(" ")); }
    } else { await this.reach(field); const text = keys.join(" ").replace(/(\d) (?=\d( |$))/g, "$1"); this.keys += text.length; await this.tab.keyboard.type(text); }
    await this.press("Next");
  }
  async more(name) { await this.tab.locator("summary", { hasText: /^More$/ }).click(); this.acts++; await this.press(name); }
}

/// Answers the questions that find the rules.
export async function rulesOf(person, place, home) {
  await person.write(place);
  if (home && await person.tab.locator("#screen").getByRole("button", { name: home }).count()) await person.press(home);
  if (await person.tab.locator(".rules").count()) await person.press("Next");
  await person.tab.waitForFunction(() => document.querySelector("#screen h1")?.textContent === "Before you begin");
  await person.press("Next");
}

/// Answers by the name of the question until the next railing is asked for, or `stop` says so.
export async function walkOne(person, name, answers) {
  const { tab } = person, asked = [];
  await person.write(name);
  for (let n = 0; n < 60; n++) {
    const stopped = await tab.locator("#screen.danger").count();
    if (stopped) { asked.push("DANGER"); await answers.danger(person); continue; }
    const now = await id(tab);
    if (now === "railing" || now === "finished") return asked;
    asked.push(now);
    const act = answers[now] ?? answers.otherwise;
    const before = await tab.evaluate(() => typed.length + "/" + state.survey.length + "/" + state.question.id);
    await act(person, now);
    if (before === await tab.evaluate(() => typed.length + "/" + state.survey.length + "/" + state.question.id)) throw new Error(`nothing came of ${now}: ${await tab.textContent("#screen")}`);
  }
  throw new Error(`it does not end: ${asked}`);
}
export const skip = async person => {
  const enter = await person.tab.evaluate(() => state.question.enter);
  await person.press(enter[0].toUpperCase() + enter.slice(1));
};
