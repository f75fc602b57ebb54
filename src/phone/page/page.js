// The screens. Every word about a railing comes from the core; this file shows it.
const $ = id => document.getElementById(id);
const LENGTH_KEYS = ["1", "2", "3", "1/8", "5/8", "4", "5", "6", "1/4", "3/4", "7", "8", "9", "3/8", "7/8", ".", "0", "\u232b", "1/2", "space", "ft", "in", "cm", "mm", "abc"];
let core, state = null, base = "", typed = [], rules = [], name = "railings.csv", touched = false;

// An element; `on...` are listeners, `null` and `false` are left out.
function h(tag, attributes, ...inside) {
  const node = document.createElement(tag);
  for (const [key, value] of Object.entries(attributes || {})) {
    if (value === null || value === undefined || value === false) continue;
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value); else node.setAttribute(key, value === true ? "" : value);
  }
  node.append(...inside.flat(9).filter(part => part !== null && part !== undefined && part !== false));
  return node;
}
const marks = new Map();
const mark = verdict => {
  if (!marks.has(verdict)) {
    const box = document.createElement("template");
    box.innerHTML = `<svg class="m" aria-hidden="true" focusable="false"><use href="#m-${verdict.replace(/ /g, "-")}"/></svg>`;
    marks.set(verdict, box.content.firstChild);
  }
  return marks.get(verdict).cloneNode(true);
};
const drawing = svg => { const box = h("div", { class: "dr" }); box.innerHTML = svg; return box; };
// Folded, and made only when it is opened: most of it never is.
const fold = (title, make) => {
  let made = false;
  const open = () => { if (!made) box.append(...[make()].flat(9).filter(Boolean)); made = true; };
  const box = h("details", { ontoggle: open }, h("summary", { onclick: open }, title));
  return box;
};
const button = (text, act, extra) => h("button", { type: "button", onclick: act, ...extra }, text);
// An answer by a button. While the finger is still down, the core works out what it would become: it is
// given to a copy of the walk, and where the finger slides away nothing was answered.
const reply = (text, line) => button(text, () => answer(line), { onpointerdown: () => ahead(line) });
const today = () => { const d = new Date(); return `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, "0")}-${String(d.getDate()).padStart(2, "0")}`; };
const sentence = capitals => capitals[0] + capitals.slice(1).toLowerCase();
const upper = text => text[0].toUpperCase() + text.slice(1);

// Puts a screen; the heading has the focus, so that a screen reader begins there.
function show(nodes, cls) {
  const screen = $("screen");
  screen.className = cls || "";
  screen.replaceChildren(...nodes.flat(9).filter(Boolean));
  showKept();                                              // before the focus, which lays the screen out
  const heading = screen.querySelector("h1,h2");
  heading.tabIndex = -1;
  if (touched) heading.focus({ preventScroll: true });
  if (touched && scrollY) scrollTo(0, 0);                  // untouched it is at the top, and to ask would lay it out at once
}
let keptSays = "";
function showKept() {
  const line = $("kept"), off = kept.fault || kept.paused, says = kept.says();
  if (says === keptSays) return;
  keptSays = says;
  line.className = off ? "off" : "on";
  line.innerHTML = says;
  if (off && window.top !== window) line.append(" This is a preview: save the file and open it with a browser.");
}
// Said once to a screen reader, behind the new screen's paint, and gone before it is met a second time below the screen.
let telling;
function tell(text) {
  clearTimeout(telling);
  $("told").textContent = "";
  if (text) telling = setTimeout(() => { $("told").textContent = text; telling = setTimeout(() => { $("told").textContent = ""; }, 8000); }, 150);
}
function notice(...inside) { $("notice").replaceChildren(...inside.filter(Boolean)); if (inside.length) scrollTo(0, 0); }

// ---- asking the core -------------------------------------------------------------------------
function keep() {
  if (!state) return;
  const done = kept.save({ survey: state.survey, base, typed, rules, name, at: today() });
  showKept();
  return done;
}
function begin(survey, chosen) {
  const answer = core.ask({ do: "begin", name, survey, today: today(), rules: chosen || [] });
  if (answer.error || answer.trap) return answer;
  rules = chosen || []; base = survey; typed = []; state = answer;
  return answer;
}
// After a trap: a fresh core, led back to where it was; the last answer is left out.
function recover(line, why) {
  const before = state, lines = typed.slice(), from = base;
  let answer = begin(from, rules);
  for (const old of lines) {
    if (answer.trap || answer.error) break;
    answer = core.ask({ do: "answer", typed: old });
  }
  if (answer.trap || answer.error || answer.survey !== before.survey) answer = begin(before.survey, rules);
  if (answer.trap || answer.error) { state = before; return broken(why); }
  state = { ...answer, said: [] }; typed = answer.survey === before.survey && from === base ? lines : [];
  question();
  notice(h("strong", {}, "This answer was not taken"), h("p", {}, `Something went wrong inside the page at \u201c${line}\u201d. All that you answered before is still here. Write it another way, or skip the question.`), h("p", { class: "dis" }, why));
}
function broken(why) {
  touched = true;
  show([h("h1", {}, "The page cannot go on"), h("p", {}, "What you entered is still here. Save the survey now; it can be opened again here or on a computer with guardrule."), h("div", { class: "ch" }, button("Save the survey", saveSurvey, { class: "pri" })), asText(), h("p", { class: "dis" }, why)]);
}
function ahead(line) {
  const got = core.ask({ do: "understand", typed: line });
  if (got.trap) recover(line, got.trap);
}
function answer(line) {
  touched = true;
  if (!kept.paused) notice();
  const began = performance.now();
  const got = core.ask({ do: "answer", typed: line });
  times.answer = Math.round((performance.now() - began) * 10) / 10;
  if (got.trap) return recover(line, got.trap);
  if (got.error) return notice(h("p", {}, got.error));
  const left = state.question.place && !got.question.place && got.survey !== base;
  state = got; typed.push(line);
  if (left) { base = state.survey; typed = []; }        // a railing is done: nothing before it need be typed again
  keep();
  const stop = got.said.find(one => one.kind === "stop");
  if (stop) danger(stop); else if (got.question.finished) end(); else question();
  times.shown = Math.round((performance.now() - began) * 10) / 10;
}

// ---- first: which rules ---------------------------------------------------------------------
// What stands in the file for the first question, ahead of any script; here it comes to life, and it
// is put back wherever the place is asked for.
const [BEFOREHAND, CAUTION, WHERE, PLACE, WHY, OPEN] = $("screen").children;
const [, placeField, placeExamples, { lastChild: placeSkip }] = PLACE.children;
PLACE.onsubmit = e => { e.preventDefault(); say(placeField.value.trim()); };
placeSkip.onclick = () => say("");
const FILE = OPEN.firstChild;
FILE.onchange = openFile;
function openButton() { FILE.lastChild.value = ""; return FILE; }   // so that the same file can be opened again
// What is tapped while the module is still being unpacked is noted at once, and done as soon as it
// can be; of several taps the last one counts. False where it is not to be done any more.
let lastTap = 0;
async function opened(noted) {
  if (core) return true;
  const mine = ++lastTap, said = `${noted} One moment, the rules are being unpacked.`;
  notice(h("p", {}, said));
  await opening;
  if (!core || mine !== lastTap) return false;
  notice();
  return true;
}
// Two or three questions lead to the rules; `lines` are the answers so far.
let search = [];
async function say(line) { if (await opened(line ? `Noted: ${line}.` : "Noted.")) first([...search, line]); }
function earlier() {
  const before = kept.read(BEFORE);
  return before && button("Back to the survey that was here before", async () => { touched = true; if (await opened("The survey that was here before is fetched.")) resume(before); });
}
function first(lines = []) {
  if (lines.length) touched = true;
  const got = core.ask({ do: "search", lines });
  if (got.trap || got.error) return broken(got.trap || got.error);
  if (got.chosen) return start(got.chosen, got.said);
  const q = got.question, refused = got.said.some(one => one.kind === "refused");
  search = refused ? lines.slice(0, -1) : lines;                   // an answer that was not taken is asked again
  let body;
  if (q.several) {
    const boxes = q.choices.map((one, index) => h("label", {}, h("input", { type: "checkbox", checked: index === 0, value: one.key }), h("span", {}, one.says)));
    const go = () => { const keys = boxes.map(box => box.firstChild).filter(box => box.checked).map(box => box.value); say(keys.length ? keys.join(" ") : "n"); };
    body = [h("h1", {}, q.question), h("p", {}, "Several may hold. The advice for small children is looked at beside them."), h("div", { class: "rules" }, boxes), h("div", { class: "ch" }, button("Next", go, { class: "pri" }), button("None of them: advice alone", () => say("n")))];
  } else if (q.choices.length) {
    body = [h("h1", {}, q.question), h("div", { class: "ch" }, q.choices.map(one => button(one.says, () => say(one.key))), q.enter && button(upper(q.enter), () => say("")))];
  } else {
    WHERE.textContent = q.question;
    placeField.value = "";
    placeExamples.textContent = `For example: ${q.examples.join("; ")}`;
    placeExamples.hidden = !q.examples.length;
    placeSkip.textContent = upper(q.enter);
    WHY.textContent = q.more.join(" ");
    body = [WHERE, PLACE, WHY];
  }
  OPEN.replaceChildren(openButton(), ...[lines.length ? null : earlier()].filter(Boolean));
  show([BEFOREHAND, lines.length ? null : CAUTION, told(got.said), body, lines.length ? null : OPEN,
    h("p", { class: "nav" }, lines.length ? button("Back", () => first(search.slice(0, -1))) : null)]);
}
function start(chosen, said) {
  touched = true;
  const before = kept.read(KEY);
  kept.setAside(before);
  kept.saved = before ? before.survey : "";
  name = "railings.csv";
  const got = begin("", chosen);
  if (got.trap || got.error) return broken(got.trap || got.error);
  state.said = [...got.said, ...(said || []).filter(one => one.kind !== "noted")];   // what was noted are the rules, which are named already
  keep(); intro();
}
// Cautions and what it is judged by, once.
function intro() {
  const lines = state.said.flatMap(one => one.lines);
  show([BEFOREHAND, h("h1", {}, "Before you begin"),
    lines.map(line => h("p", { class: /^NO BUILDING/.test(line) ? "cau" : null }, line)),
    state.errors ? h("p", { class: "cau" }, "Something in this survey cannot be read. It is kept as it stands; the report at the end says what.") : null,
    h("div", { class: "ch" }, button("Next", () => { state.said = []; question(); }, { class: "pri" }))]);
}
function resume(old) {
  kept.saved = (kept.read(KEY) || {}).survey || "";
  name = old.name || name;
  let got = begin(old.base ?? old.survey, old.rules);
  for (const line of old.typed || []) { if (got.trap || got.error) break; got = core.ask({ do: "answer", typed: line }); }
  if (got.trap || got.error || got.survey !== old.survey) got = begin(old.survey, old.rules);
  else { state = got; typed = (old.typed || []).slice(); }
  if (got.trap || got.error) { state = { survey: old.survey }; return broken(got.trap || got.error); }
  state = { ...state, said: [] };
  keep();
  if (state.question.finished) end(); else question();
}
async function openFile(event) {
  const file = event.target.files[0];
  if (!file) return;
  touched = true;
  if (!await opened(`${file.name} is opened.`)) return;
  let text;
  try { text = new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer()); } catch {
    return notice(h("strong", {}, `${file.name} was not opened`), h("p", {}, "It is not saved as UTF-8: save it again as \u201cCSV UTF-8\u201d. What is here is as it was."));
  }
  const before = state ? { survey: state.survey, base, typed, rules, name } : kept.read(KEY), was = name;
  name = file.name;
  const got = begin(text, []);
  if (got.trap || got.error) {
    name = was;
    if (before && before.survey) { begin(before.base ?? before.survey, before.rules); for (const line of before.typed || []) state = core.ask({ do: "answer", typed: line }); }
    return notice(h("strong", {}, `${file.name} was not opened`), h("pre", {}, got.trap || got.error), h("p", {}, "What is here is as it was."));
  }
  kept.setAside(before);
  kept.saved = (kept.read(KEY) || {}).survey || "";
  keep(); notice();
  intro();
}

// ---- a question -----------------------------------------------------------------------------
function bar() {
  const q = state.question, tells = verdict => verdict && verdict !== "not measured" && verdict !== "does not apply";
  // where the rules are met and the advice is not, both are said
  const shown = state.so_far.filter(one => tells(one.verdict) || (tells(one.advice) && one.advice !== "meets"));
  const part = one => [tells(one.verdict) ? [mark(one.verdict), ` ${one.says}`] : null,
    tells(one.advice) && one.advice !== one.verdict ? [tells(one.verdict) ? ", " : null, "advice ", mark(one.advice), ` ${one.advice_says}`] : null];
  return h("div", { class: "bar" },
    h("p", {}, [q.place || (state.guards ? "between two railings" : "before the railings"), q.left > 1 ? `about ${q.left} left` : null].filter(Boolean).join(" \u00b7 ")),
    h("p", { class: "sofar" }, shown.length ? shown.map(one => h("span", {}, `${one.hazard}: `, part(one))) : "nothing said yet"));
}
// What became of the answer; what is more than a few lines is folded, so that the field stays in sight.
function told(all) {
  if (all.some(one => one.lines.length)) tell(all.flatMap(one => one.lines).join(" "));
  return saidBox(all);
}
function saidBox(all) {
  const lines = all.flatMap(one => one.lines.map(line => [one.kind, line]));
  if (!lines.length) return null;
  const put = ([kind, line]) => h("p", { class: `k-${kind}` }, line);
  const first = lines.length > 4 ? lines.slice(0, 3) : lines, rest = lines.slice(first.length);
  return h("div", { class: `noted${all.some(one => one.kind === "refused") ? " refused" : ""}` }, first.map(put), rest.length ? fold(`${rest.length} more`, () => rest.map(put)) : null);
}
function question() { show(asked(told(state.said))); }
function asked(said) {
  const q = state.question;
  const long = q.question.length > 80 && q.short !== q.question && !q.is_name;   // a heading that is read at arm's length
  const body = q.item === "photo" ? photoQuestion(q) : q.several ? several(q) : q.choices.length ? choose(q) : field(q);
  return [bar(), said, h("h1", {}, q.item === "photo" ? "A photograph of it?" : long || (q.is_name && state.guards) ? q.short : q.question), long ? h("p", {}, q.question) : null, q.drawing && drawing(q.drawing), q.how.map(how => h("p", {}, how)),
    q.so_far.length ? h("p", {}, `So far: ${q.so_far.join("; ")}.`) : null, body, more(q), nav(q)];
}
function choose(q) {
  const wide = q.choices.some(one => one.says.length > 16);
  return [h("div", { class: `ch${wide || q.choices.length < 5 ? "" : " two"}` }, q.choices.map(one => reply(one.says, one.key))), other(q)];
}
function several(q) {
  const chosen = new Set();
  const toggle = one => one.key === "n" ? reply(one.says, "n") : button(one.says, e => {
    const on = !chosen.has(one.key);
    if (on) chosen.add(one.key); else chosen.delete(one.key);
    e.target.setAttribute("aria-pressed", on);
  }, { "aria-pressed": "false" });
  const go = () => chosen.size ? answer([...chosen].join(" ")) : notice(h("p", {}, "Nothing is chosen: choose what you see, or skip the question."));
  return [h("p", {}, "Choose all that you see, then Next."), h("div", { class: "ch" }, q.choices.map(toggle)), h("div", { class: "ch" }, button("Next", go, { class: "pri", onpointerdown: () => chosen.size && ahead([...chosen].join(" ")) })), other(q)];
}
// What no button says: a reading, or words of one's own behind a comma.
function other(q) {
  return fold(q.length ? "What the tape reads" : "Write it instead", () => field(q));
}
// The keys of a length are made once and copied, with one listener for all of them.
let lengthKeys;
function keypad(words, press) {
  const key = text => h("button", { type: "button", class: /^[a-z]+$/.test(text) && text !== "space" ? "u" : null,
    "aria-label": text === "\u232b" ? "erase the last sign" : text === "abc" ? "letters: show the keyboard" : null }, text);
  lengthKeys ??= h("div", { class: "kp", role: "group", "aria-label": "keys" }, LENGTH_KEYS.map(key));
  const pad = lengthKeys.cloneNode(true);
  pad.append(...words.map(key));
  pad.addEventListener("click", e => { const at = e.target.closest("button"); if (at) press(at.textContent); });
  return pad;
}
function field(q) {
  const input = h("input", { type: "text", id: "answer", autocomplete: "off", spellcheck: "false", autocapitalize: "off", enterkeyhint: "next", inputmode: q.length ? "none" : null, "aria-describedby": "und" });
  const example = q.examples.length ? `For example: ${q.examples.join("; ")}` : "";
  const und = h("p", { class: "und", id: "und", role: "status" }, example);
  let timer;
  const understand = () => {
    clearTimeout(timer);
    const text = input.value.trim();
    if (!text || q.is_name) { und.textContent = example; return; }
    timer = setTimeout(() => {
      const got = core.ask({ do: "understand", typed: text });
      if (got.trap) return recover(text, got.trap);
      und.textContent = (got.lines || []).join(" ").replace(/^Noted\. /, "Understood: ");
    }, 150);
  };
  input.addEventListener("input", understand);
  const press = key => {
    const at = input.selectionStart ?? input.value.length, to = input.selectionEnd ?? at;
    let left = input.value.slice(0, at); const right = input.value.slice(to);
    if (key === "\u232b") left = at === to ? left.replace(/( ?\d\/\d+| ?[a-z]+ ?|.)$/u, "") : left;
    else if (key === "space") left += " ";
    else if (/^\d\/\d+$/.test(key) || /^[a-z]+$/.test(key)) left = `${left.trimEnd()}${left.trim() ? " " : ""}${key}${/^[a-z]+$/.test(key) && !["in", "ft", "cm", "mm"].includes(key) ? " " : ""}`;
    else left += key;
    input.value = left + right;
    input.setSelectionRange(left.length, left.length);
    understand();
  };
  const abc = () => { input.removeAttribute("inputmode"); input.blur(); input.focus(); };
  const words = q.length ? [...new Set(q.examples.join(" ").match(/[a-z]+/g) || [])].filter(word => !["in", "ft", "cm", "mm", "m", "none", "or", "ball"].includes(word)).slice(0, 10) : [];
  const typed = () => { clearTimeout(timer); return input.value.trim(); };
  const go = e => { e.preventDefault(); answer(typed()); };
  return h("form", { onsubmit: go },
    h("label", { for: "answer" }, q.is_name ? "Its name" : q.item ? upper(q.item) : "Your answer"), input, und,
    q.length ? keypad(words, key => key === "abc" ? abc() : press(key)) : null,
    h("p", { class: "nx" }, h("button", { class: "pri", onpointerdown: () => ahead(typed()) }, "Next"),
      q.length && q.item && !q.choices.length ? reply("Cannot reach", "not reached") : null,
      q.is_name && state.guards ? button("No more railings", () => answer("finish")) : null,
      q.is_name && state.guards ? button("Built as the last one", () => answer(`= ${input.value.trim()}`)) : null),
    q.is_name && state.guards ? h("p", { class: "dis" }, "Built as the last one takes over what fills it, where it stands and what a hand holds; write what differs behind \u201cbut\u201d: landing 2 but glass. What is looked at, pushed or measured is asked anew.") : null);
}
function more(q) {
  return [q.more.length ? fold("How, in full", () => q.more.map(line => h("p", {}, line))) : null, fold("More", () => h("div", { class: "ch" }, acts(q)))];
}
function acts(q) {
  const ask = line => () => answer(line), all = [];
  if (q.place && !q.is_name) {
    all.push(button("A note beside the last answer", () => noteScreen()), button("A photograph", photoScreen), button("Mend an earlier answer", mend),
      button("No railing here", ask("no guard")), button("On to the next railing", ask("next")));
    if (q.item && q.so_far.length) all.push(button(`Another reading of ${q.item}`, ask(`another ${q.item}`)));
    all.push(button("Ask again what I skipped", ask("again")));
  }
  return [...all, button("Finish", ask("finish")), button("Save the survey", saveSurvey), button("The railings so far", () => { state.said = []; end(); })];
}
function nav(q) {
  const skip = q.enter && !q.is_name ? upper(q.enter) : null;
  return h("p", { class: "nav" }, reply("Back", "back"), skip && reply(skip, ""),
    q.place && !q.is_name && q.choices.length && q.enter ? reply("Cannot reach", "not reached") : null);
}
function noteScreen() {
  const input = h("input", { type: "text", id: "answer", autocomplete: "off" });
  show([h("h1", {}, "A note beside the last answer"), h("form", { onsubmit: e => { e.preventDefault(); if (input.value.trim()) answer(`note ${input.value.trim()}`); else question(); } },
    h("label", { for: "answer" }, "In your own words"), input, h("div", { class: "ch" }, h("button", { class: "pri" }, "Next"))), h("p", { class: "nav" }, button("Back", () => { state.said = []; question(); }))]);
}
function mend() {
  const rows = state.written;
  show([bar(), h("h1", {}, "Which answer?"), rows.length ? h("ul", { class: "gl" }, rows.map(([item, reading]) => h("li", {}, button(`${item}: ${reading}`, () => answer(`correct ${item}`))))) : h("p", {}, "Nothing is written here yet."),
    h("p", { class: "nav" }, button("Back", () => { state.said = []; question(); }))]);
}
function takeButton(text, after) {
  const take = async event => {
    const place = state.question.place;
    for (const file of event.target.files) {
      try { if (after(await photos.add(file, place)) === false) return; } catch (e) { return notice(h("p", {}, `${file.name} was not taken: ${e.message}. All else is kept.`)); }
    }
    if (photos.fault) notice(h("p", {}, "The photograph is here only until this page is closed: this browser keeps none. Save the page with it."));
  };
  return h("label", { class: "file" }, text, h("input", { type: "file", accept: "image/*", onchange: take }));
}
const PHOTO = "It is made smaller here, and the place where it was taken is removed from it. It stays on this phone and in the page that you save.";
function photoQuestion() { return [h("p", {}, PHOTO), h("div", { class: "ch" }, takeButton("Take or choose a photograph", photo => { answer(photo); return false; }))]; }
function photoScreen() {
  const add = photo => {
    const line = `photo: ${photo}`, got = core.ask({ do: "answer", typed: line });
    if (got.trap) { recover(line, got.trap); return false; }
    if (got.error || got.said.some(one => one.kind === "refused")) throw new Error(got.error || got.said[0].lines.join(" "));
    state = got; typed.push(line); keep(); photoScreen(); tell("The photograph is kept with this railing.");
    return false;
  };
  const names = state.written.filter(([item]) => item === "photo").map(([, reading]) => reading);
  show([bar(), h("h1", {}, "A photograph of it"), h("p", {}, PHOTO), h("div", { class: "ch" }, takeButton("Take or choose a photograph", add)),
    pictures(names), h("div", { class: "ch" }, button("Go on", () => { state.said = []; question(); }, { class: "pri" }))]);
}
function pictures(names) {
  const shown = names.filter(one => photos.all.has(one));
  if (!shown.length) return null;
  return h("div", { class: "pics" }, shown.map(one => {
    const url = URL.createObjectURL(photos.all.get(one));
    return h("figure", {}, h("img", { src: url, alt: `Photograph ${one}`, onload: () => URL.revokeObjectURL(url) }), h("figcaption", {}, one));
  }));
}

// ---- a danger -------------------------------------------------------------------------------
function danger(stop) {
  const calls = [...new Set(stop.acts.map(one => one.act))], lines = stop.lines.filter(line => !calls.some(call => line.includes(call)) && !/^!+/.test(line));
  const said = state.said;
  tell("");
  state.said = [];
  show([
    h("h1", {}, calls.length ? sentence(calls.join(", and ")) : "Stop"),
    h("p", { class: "big" }, stop.acts.map(one => `${upper(one.says)}.`).join(" ")),
    h("div", { class: "do" }, lines.map(line => h("p", {}, line))),
    h("div", { class: "ch" }, button("Go on", state.question.finished ? end : question, { class: "pri" }),
      state.question.is_name || state.question.finished ? null : button("On to the next railing", () => answer("next")),
      button("It was a slip: change my answer", () => answer("back"))),
  ], "danger");
  state.said = said.filter(one => one.kind !== "stop" && one.kind !== "noted");
}

// ---- the end --------------------------------------------------------------------------------
const stem = () => name.replace(/\.[a-z]+$/i, "");
function saveSurvey() { download(state.survey, `${stem()}.csv`, "text/csv"); tell("The survey is handed to the browser to save."); }
function asText() {
  const area = h("textarea", { id: "astext", readonly: true, rows: 8, spellcheck: "false" });
  area.value = state.survey;
  return h("details", { class: "noprint" }, h("summary", {}, "Copy the survey as text"), h("label", { for: "astext" }, "Where nothing can be saved, copy all of it into a message to yourself."), area);
}
// The report's own page, in a frame: its style and its print layout stay its own.
function framed(page, title) {
  const frame = h("iframe", { title, id: "report" });
  const fit = () => { try { frame.height = String(frame.contentDocument.documentElement.scrollHeight + 8); } catch { frame.height = String(Math.round(innerHeight * 0.8)); } };
  frame.addEventListener("load", () => {
    fit();
    try { const body = frame.contentDocument; body.addEventListener("toggle", fit, true); addEventListener("resize", fit); } catch { /* a preview lets nobody look in */ }
  });
  frame.srcdoc = page;
  return frame;
}
function printReport() {
  const frame = $("report");
  try { frame.contentWindow.focus(); frame.contentWindow.print(); } catch { print(); }
}
// The report as a page, with the photographs of these railings in it.
async function pageOf(guards, only) {
  const sent = {};
  for (const photo of guards.flatMap(one => one.photos)) { const got = await photos.sent(photo); if (got) sent[photo] = got; }
  return core.ask({ do: "check", files: [{ name, text: state.survey }], form: "html", today: today(), only: only || null, photos: sent });
}
async function end() {
  const got = core.ask({ do: "guards" });
  if (got.trap || got.error) return broken(got.trap || got.error);
  const guards = got.guards, tonight = guards.filter(one => one.acts.length), html = await pageOf(guards);
  if (html.trap || html.error) return broken(html.trap || html.error);
  const page = html.report;
  const count = guards.length === 1 ? "1 railing" : `${guards.length} railings`;
  show([
    h("h1", {}, guards.length ? `${count} written down` : "No railing was written down"), told(state.said),
    tonight.length ? h("div", { class: "say" }, h("h2", {}, "Tonight"), tonight.map(one => h("p", {}, h("b", {}, `${one.place}: ${sentence([...new Set(one.acts.map(act => act.act))].join(", and "))}. `), one.acts.map(act => `${upper(act.says)}.`).join(" ")))) : null,
    h("ul", { class: "gl" }, guards.map(one => h("li", {}, button([mark(one.verdict), h("span", {}, h("b", {}, one.place), ` \u00b7 ${one.says}`)], () => guardScreen(one))))),
    h("div", { class: "ch two" }, button("Save the survey", saveSurvey, { class: "pri" }), button("Save the page", () => savePage(page, stem(), "save")),
      typeof navigator.share === "function" ? button("Share the page", () => savePage(page, stem(), "share")) : null, button("Print", printReport),
      button("Another railing", again), openButton()),
    html.diagnostics ? [h("h2", {}, "What could not be read"), h("pre", {}, html.diagnostics)] : null,
    asText(),
    guards.length ? [h("h2", {}, "The report"), framed(page, "The report")] : null,
    h("p", { class: "nav" }, button("A new survey", () => { touched = true; first(); })),
  ]);
}
function again() {
  const old = state.survey, got = begin(old, rules);
  if (got.trap || got.error) return broken(got.trap || got.error);
  state.said = [];
  if (state.question.place) return answer("next");
  keep(); question();
}
async function guardScreen(one) {
  touched = true;
  const got = await pageOf([one], { building: one.building, unit: one.unit, guard: one.guard });
  if (got.trap || got.error) return broken(got.trap || got.error);
  const page = got.report;
  show([h("h1", {}, [mark(one.verdict), ` ${one.place}`]),
    h("div", { class: "ch two" }, button("Save this page", () => savePage(page, `${stem()}-${one.guard}`, "save")), button("Print", printReport),
      typeof navigator.share === "function" ? button("Share this page", () => savePage(page, `${stem()}-${one.guard}`, "share")) : null),
    framed(page, `The page of ${one.place}`), h("p", { class: "nav" }, button("Back", end))]);
}
async function savePage(page, called, how) {
  const file = new File([page], `${called}.html`, { type: "text/html" });
  if (how === "share" && navigator.canShare && navigator.canShare({ files: [file] })) {
    try { await navigator.share({ files: [file], title: called }); return; } catch (e) { if (e.name === "AbortError") return; }
  }
  download(page, `${called}.html`, "text/html");
  tell("The page is handed to the browser to save.");
}

// ---- other tabs, leaving, beginning ----------------------------------------------------------
kept.clash = theirs => {
  if (kept.paused || !state) return;
  kept.paused = true;
  showKept();
  const take = () => { kept.setAside({ survey: state.survey, base, typed, rules, name }); kept.paused = false; notice(); resume(theirs); };
  const stay = () => { kept.setAside(theirs); kept.paused = false; kept.saved = theirs.survey; notice(); keep(); };
  notice(h("strong", {}, "The survey is open in another tab too"), h("p", {}, "An answer was kept there meanwhile. Go on in one of them only; the other's survey stays to be gone back to."),
    h("div", { class: "ch" }, button("Go on with the other tab's", take), button("Go on with this one", stay)));
};
addEventListener("storage", event => {
  if (event.key !== KEY || !event.newValue || !state) return;
  const theirs = JSON.parse(event.newValue);
  if (theirs && theirs.tab !== TAB && theirs.survey !== state.survey) kept.clash(theirs);
});
addEventListener("pagehide", () => keep());
document.addEventListener("visibilitychange", () => { if (document.hidden) keep(); });
addEventListener("beforeunload", event => { if (state && (kept.fault || kept.paused) && state.guards) event.preventDefault(); });

// Behind the first question: the rulesets' heads are read one by one, then a railing of nobody's is
// walked through in an instance of its own, since a browser compiles what is called for the first time.
const REHEARSED = { children: "2 years", look: "n", touch: "n", drop: "9 ft", "drop beyond": "9 ft", infill: "b", gaps: "4", height: "36 1/2 in", climb: "2", "thing to climb": "18 in high 5 in away", "post fastening": "h" };
function warm() {
  const got = core.ask({ do: "warm" });
  setTimeout(got.left > 0 ? warm : rehearse, 0);
}
function rehearseScreen(got) {
  const mine = state;
  try { state = got; asked(saidBox(got.said)); } finally { state = mine; }   // made and thrown away
}
function rehearse() {
  const other = new Core(), names = ["landing", "stair", "finish"];   // what is called often is compiled a second time, and better
  other.module = core.module; other.start();
  let got = other.ask({ do: "begin", name: "r.csv", survey: "", today: "2000-01-01", rules: ["us-buildings-2024"] }), left = 60;
  const step = () => {
    if (got.trap || got.error) return;
    const q = got.question;
    if (!q.finished && left-- > 0) {
      rehearseScreen(got);
      got = other.ask({ do: "answer", typed: q.is_name ? names.shift() ?? "finish" : REHEARSED[q.id] ?? "" });
      setTimeout(step, 0);
      return;
    }
    other.ask({ do: "check", files: [{ name: "r.csv", text: got.survey }], form: "html", today: "2000-01-01" });
    times.warm = since();
  };
  setTimeout(step, 0);
}
// The first question stands there at once; the module is unpacked behind it.
const old = kept.read(KEY);
if (!old) kept.write(KEY, null);                         // so that a store that is blocked is known at once
if (old && old.survey) show([h("h1", {}, "One moment"), h("p", {}, "The rules are being unpacked. Then it goes on where you left it.")]);
else { OPEN.append(earlier() || ""); showKept(); }
times.first = performance.now();
const opening = new Promise(done => addEventListener("DOMContentLoaded", done)).then(async () => {
  const pictures = photos.open();
  const ready = await Core.open($("core"));
  await pictures;
  core = ready;
  if (old && old.survey) resume(old);
  times.ready = performance.now();
  document.documentElement.dataset.ready = "yes";
  setTimeout(warm, 50);
}).catch(fault => {
  show([h("h1", {}, "This browser cannot run the page"), h("p", {}, `Why: ${fault.message || fault}. Open it with an up-to-date browser, or print the sheet of guardrule (guardrule sheet) and fill it in by hand.`),
    old && old.survey ? [h("p", {}, "The survey that was kept here is untouched:"), button("Save the survey", () => download(old.survey, "railings.csv", "text/csv"))] : h("p", {}, "Nothing was entered yet, so nothing is lost.")]);
  document.documentElement.dataset.ready = "no";
});
// early.js: this script runs
$("cannot").remove();
onerror = null;
