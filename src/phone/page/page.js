// The screens. Every word about a railing comes from the core; this file shows it.
const $ = id => document.getElementById(id);
const LENGTH_KEYS = ["1", "2", "3", "1/8", "5/8", "4", "5", "6", "1/4", "3/4", "7", "8", "9", "3/8", "7/8", ".", "0", "⌫", "1/2", "space", "ft", "in", "cm", "mm", "abc"];
let core, state = null, base = "", typed = [], rules = [], name = "railings.csv", where = "", touched = false;

// An element; `on…` are listeners, `null` and `false` are left out.
function h(tag, attributes, ...inside) {
  const node = document.createElement(tag);
  for (const [key, value] of Object.entries(attributes || {})) {
    if (value === null || value === undefined || value === false) continue;
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value); else node.setAttribute(key, value === true ? "" : value);
  }
  node.append(...inside.flat(9).filter(part => part !== null && part !== undefined && part !== false));
  return node;
}
const mark = verdict => {
  const box = document.createElement("template");
  box.innerHTML = `<svg class="m" aria-hidden="true" focusable="false"><use href="#m-${verdict.replace(/ /g, "-")}"/></svg>`;
  return box.content.firstChild;
};
const drawing = svg => { const box = h("div", { class: "dr" }); box.innerHTML = svg; return box; };
const button = (text, act, extra) => h("button", { type: "button", onclick: act, ...extra }, text);
const today = () => { const d = new Date(); return `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, "0")}-${String(d.getDate()).padStart(2, "0")}`; };
const sentence = capitals => capitals[0] + capitals.slice(1).toLowerCase();
const upper = text => text[0].toUpperCase() + text.slice(1);

// Puts a screen; the heading has the focus, so that a screen reader begins there.
function show(nodes, cls) {
  const screen = $("screen");
  screen.className = cls || "";
  screen.replaceChildren(...nodes.flat(9).filter(Boolean));
  const heading = screen.querySelector("h1,h2");
  heading.tabIndex = -1;
  if (touched) heading.focus({ preventScroll: true });
  scrollTo(0, 0);
  showKept();
}
function showKept() {
  const line = $("kept"), off = kept.fault || kept.paused;
  line.className = off ? "off" : "on";
  line.innerHTML = kept.says();
  if (off && window.top !== window) line.append(" This is a preview: save the file and open it with a browser.");
}
function tell(text) { $("told").textContent = ""; if (text) setTimeout(() => { $("told").textContent = text; }, 30); }
function notice(...inside) { $("notice").replaceChildren(...inside.filter(Boolean)); }

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
  notice(h("h2", {}, "This answer was not taken"), h("p", {}, `Something went wrong inside the page at “${line}”. All that you answered before is still here. Write it another way, or skip the question.`), h("p", { class: "dis" }, why));
}
function broken(why) {
  touched = true;
  show([h("h1", {}, "The page cannot go on"), h("p", {}, "What you entered is still here. Save the survey now; it can be opened again here or on a computer with guardrule."), h("div", { class: "ch" }, button("Save the survey", saveSurvey, { class: "pri" })), asText(), h("p", { class: "dis" }, why)]);
}
function answer(line) {
  touched = true; notice();
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
const CAUTION = () => h("p", { class: "cau" }, h("b", {}, "Stay on the safe side. Never lean on a railing to try it. "), "Somebody else minds the child while you measure.");
function openButton() {
  return h("label", { class: "file" }, "Open an earlier survey", h("input", { type: "file", accept: ".csv,text/csv,text/plain,text/comma-separated-values", onchange: openFile }));
}
function first() {
  const before = kept.read(BEFORE);
  const field = h("input", { type: "text", id: "where", autocomplete: "off", autocapitalize: "words", spellcheck: "false" });
  const go = e => { e.preventDefault(); touched = true; if (field.value.trim()) home(field.value.trim()); else adviceAlone(); };
  show([
    h("div", { class: "bar" }, h("p", {}, "Before the railings")), CAUTION(),
    h("h1", {}, "Where is the railing?"),
    h("p", {}, "It finds the building rules. Without an answer only advice for small children is looked at."),
    h("form", { onsubmit: go }, h("label", { for: "where" }, "Country, and state or province"), field, h("p", { class: "dis" }, "For example: Ohio; Ontario; England; Germany, Bavaria"),
      h("div", { class: "ch" }, h("button", { class: "pri" }, "Next"))),
    h("div", { class: "ch" }, button("I do not know: advice alone", () => { touched = true; adviceAlone(); }), openButton(),
      before && button("Back to the survey that was here before", () => { touched = true; resume(before); })),
  ]);
}
function home(place) {
  where = place;
  const say = word => () => offered(`${word} in ${place}`);
  show([
    h("div", { class: "bar" }, h("p", {}, place)), h("h1", {}, "What kind of home is it?"),
    h("p", {}, "Flats and houses have rules of their own."),
    h("div", { class: "ch" }, button("a house of one or two homes", say("house")), button("a flat in a building with three homes or more", say("flat")), button("a rented flat", say("rented flat")), button("a rented house", say("rented house")), button("it is no home, or I do not know", () => offered(place))),
    h("p", { class: "nav" }, button("Back", first)),
  ]);
}
function offered(words) {
  const found = core.ask({ do: "find", words });
  if (found.trap || found.error) return broken(found.trap || found.error);
  const near = found.unknown.filter(([, near]) => near);
  const boxes = [];
  const offer = (one, checked) => {
    const box = h("input", { type: "checkbox", value: one.id, checked });
    boxes.push(box);
    return h("label", {}, box, h("span", {}, one.title, h("small", {}, [one.only && `${upper(one.only)}. `, one.covers])));
  };
  const go = () => start(boxes.filter(box => box.checked).map(box => box.value));
  show([
    h("div", { class: "bar" }, h("p", {}, `Taken as: ${found.taken}`)),
    h("h1", {}, found.law.length ? "Which building rules?" : "No building rules are here for it"),
    found.unknown.length ? h("div", { class: "noted refused" }, found.unknown.map(([word, near]) => h("p", { class: "refused" }, `“${word}” is not known here${near ? `: did you mean ${near}?` : "."}`))) : null,
    near.length ? h("div", { class: "ch" }, near.map(([word, near]) => button(upper(near), () => home(where.replace(word, near))))) : null,
    found.law.length ? h("p", {}, "Take what fits; several may hold. The advice for small children is always looked at.") : null,
    h("div", { class: "rules" }, found.law.map((one, index) => offer(one, index === 0))),
    found.only_where.length ? h("details", {}, h("summary", {}, "Only for some things or places"), h("div", { class: "rules" }, found.only_where.map(one => offer(one, false)))) : null,
    found.not_here.map(says => h("p", {}, says)),
    found.ask.length ? h("p", {}, `Say as well, if you can: ${found.ask.join("; ")}.`) : null,
    h("div", { class: "ch" }, found.law.length ? button("Next", go, { class: "pri" }) : null, button(found.law.length ? "Advice alone" : "Go on with advice alone", adviceAlone)),
    h("p", { class: "nav" }, button("Back", first)),
  ]);
}
const adviceAlone = () => start([]);
function start(chosen) {
  kept.setAside(kept.read(KEY));
  name = "railings.csv";
  const got = begin("", chosen);
  if (got.trap || got.error) return broken(got.trap || got.error);
  keep(); intro();
}
// Cautions and what it is judged by, once.
function intro() {
  const [first, ...rest] = state.said.flatMap(one => one.lines);
  show([
    h("div", { class: "bar" }, h("p", {}, "Before the railings")), h("h1", {}, first),
    state.law ? null : h("p", { class: "cau" }, h("b", {}, "NO BUILDING RULES ARE CHECKED, advice alone.")),
    h("ul", {}, rest.map(line => h("li", {}, line.replace(/^- /, "")))),
    h("div", { class: "ch" }, button("Next", question, { class: "pri" })),
  ]);
}
function resume(old) {
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
  let text;
  try { text = new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer()); } catch {
    return notice(h("h2", {}, `${file.name} was not opened`), h("p", {}, "It is not saved as UTF-8: save it again as “CSV UTF-8”. What is here is as it was."));
  }
  const before = state ? { survey: state.survey, base, typed, rules, name } : kept.read(KEY), was = name;
  name = file.name;
  const got = begin(text, []);
  if (got.trap || got.error) {
    name = was;
    if (before && before.survey) { begin(before.base ?? before.survey, before.rules); for (const line of before.typed || []) state = core.ask({ do: "answer", typed: line }); }
    return notice(h("h2", {}, `${file.name} was not opened`), h("pre", {}, got.trap || got.error), h("p", {}, "What is here is as it was."));
  }
  kept.setAside(before);
  keep(); notice();
  intro();
}

// ---- a question -----------------------------------------------------------------------------
function bar() {
  const q = state.question, worst = state.so_far.filter(one => one.verdict && one.verdict !== "not measured" && one.verdict !== "does not apply");
  return h("div", { class: "bar" },
    h("p", {}, [q.place || "between two railings", q.left > 1 ? `about ${q.left} left` : null].filter(Boolean).join(" · ")),
    h("p", { class: "sofar" }, worst.length ? worst.map(one => h("span", {}, `${one.hazard}: `, mark(one.verdict), ` ${one.says}`)) : "nothing said yet"));
}
function noted() {
  const said = state.said.filter(one => one.lines.length);
  if (!said.length) return null;
  const refused = said.some(one => one.kind === "refused");
  tell(said.flatMap(one => one.lines).join(" "));
  return h("div", { class: `noted${refused ? " refused" : ""}` }, said.map(one => one.lines.map(line => h("p", { class: one.kind }, line))));
}
function question() {
  const q = state.question;
  tell("");
  const body = q.several ? several(q) : q.choices.length && !q.length ? choose(q) : field(q);
  show([bar(), noted(), h("h2", {}, q.question), q.drawing && drawing(q.drawing), q.how.map(how => h("p", {}, how)),
    q.so_far.length ? h("p", {}, `So far: ${q.so_far.join("; ")}.`) : null, body, more(q), nav(q)]);
}
function choose(q) {
  const wide = q.choices.some(one => one.says.length > 16);
  const yes = one => one.says === "y" ? "yes" : one.says === "n" ? "no" : one.says || one.key;
  return [h("div", { class: `ch${wide || q.choices.length < 5 ? "" : " two"}` }, q.choices.map(one => button(yes(one), () => answer(one.key)))), other(q)];
}
function several(q) {
  const chosen = new Set();
  const toggle = one => button(one.says, e => {
    if (one.key === "n") return answer("n");
    const on = !chosen.has(one.key);
    if (on) chosen.add(one.key); else chosen.delete(one.key);
    e.target.setAttribute("aria-pressed", on);
  }, one.key === "n" ? {} : { "aria-pressed": "false" });
  const go = () => chosen.size ? answer([...chosen].join(" ")) : notice(h("p", {}, "Nothing is chosen: choose what you see, or skip the question."));
  return [h("div", { class: "ch" }, q.choices.map(toggle)), h("div", { class: "ch" }, button("Next", go, { class: "pri" })), other(q)];
}
// A word that no button says.
function other(q) {
  if (!q.item && !q.examples.length) return null;
  return h("details", {}, h("summary", {}, "Write it instead"), field({ ...q, length: false }));
}
function field(q) {
  const input = h("input", { type: "text", id: "answer", autocomplete: "off", spellcheck: "false", autocapitalize: "off", enterkeyhint: "next", inputmode: q.length ? "none" : null, "aria-describedby": "und" });
  const und = h("p", { class: "und", id: "und", role: "status" });
  let timer;
  const understand = () => {
    clearTimeout(timer);
    const text = input.value.trim();
    if (!text || q.is_name) { und.textContent = ""; return; }
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
    if (key === "⌫") left = at === to ? left.replace(/( ?\d\/\d+| ?[a-z]+ ?|.)$/u, "") : left;
    else if (key === "space") left += " ";
    else if (/^\d\/\d+$/.test(key) || /^[a-z]+$/.test(key)) left = `${left.trimEnd()}${left.trim() ? " " : ""}${key}${/^[a-z]+$/.test(key) && !["in", "ft", "cm", "mm"].includes(key) ? " " : ""}`;
    else left += key;
    input.value = left + right;
    input.setSelectionRange(left.length, left.length);
    understand();
  };
  const abc = () => { input.removeAttribute("inputmode"); input.blur(); input.focus(); };
  const words = q.length ? [...new Set(q.examples.join(" ").match(/[a-z]+/g) || [])].filter(word => !["in", "ft", "cm", "mm", "m", "none", "or", "ball"].includes(word)).slice(0, 10) : [];
  const keys = [...LENGTH_KEYS, ...words].map(key => button(key, () => key === "abc" ? abc() : press(key), {
    class: /^[a-z]+$/.test(key) && key !== "space" ? "u" : null,
    "aria-label": key === "⌫" ? "erase the last sign" : key === "abc" ? "letters: show the keyboard" : null,
  }));
  const go = e => { e.preventDefault(); answer(input.value.trim()); };
  return h("form", { onsubmit: go },
    h("label", { for: "answer" }, q.is_name ? "Its name" : q.item ? upper(q.item) : "Your answer"), input, und,
    q.examples.length ? h("p", { class: "dis" }, `For example: ${q.examples.join("; ")}`) : null,
    q.length ? h("div", { class: "kp", role: "group", "aria-label": "keys" }, keys) : null,
    h("p", { class: "nx" }, h("button", { class: "pri" }, "Next"),
      q.length && q.item ? button("Cannot reach", () => answer("not reached")) : null,
      q.is_name && state.guards ? button("No more railings", () => answer("finish")) : null,
      q.is_name && state.guards ? button("Same as the last one but", () => answer(`= ${input.value.trim()}`)) : null));
}
function more(q) {
  const ask = line => () => answer(line);
  const inside = [];
  if (q.more.length) inside.push(h("details", {}, h("summary", {}, "How to measure it, in full"), q.more.map(line => h("p", {}, line))));
  const acts = [];
  if (q.place && !q.is_name) {
    acts.push(button("A note beside the last answer", () => noteScreen()), button("A photograph", photoScreen), button("Mend an earlier answer", mend),
      button("No railing here", ask("no guard")), button("On to the next railing", ask("next")));
    if (q.item && q.so_far.length) acts.push(button(`Another reading of ${q.item}`, ask(`another ${q.item}`)));
    acts.push(button("Ask again what I skipped", ask("again")));
  }
  acts.push(button("Finish", ask("finish")), button("Save the survey", saveSurvey));
  inside.push(h("details", {}, h("summary", {}, "More"), h("div", { class: "ch" }, acts)));
  return inside;
}
function nav(q) {
  const skip = q.enter && !q.is_name ? upper(q.enter) : null;
  return h("p", { class: "nav" }, button("Back", () => answer("back")), skip && button(skip, () => answer("")),
    q.item && !q.length && !q.is_name && q.choices.length ? button("Cannot reach", () => answer("not reached")) : null);
}
function noteScreen() {
  const input = h("input", { type: "text", id: "answer", autocomplete: "off" });
  show([h("h2", {}, "A note beside the last answer"), h("form", { onsubmit: e => { e.preventDefault(); if (input.value.trim()) answer(`note ${input.value.trim()}`); else question(); } },
    h("label", { for: "answer" }, "In your own words"), input, h("div", { class: "ch" }, h("button", { class: "pri" }, "Next"))), h("p", { class: "nav" }, button("Back", question))]);
}
function mend() {
  const rows = state.written;
  show([bar(), h("h2", {}, "Which answer?"), rows.length ? h("ul", { class: "gl" }, rows.map(([item, reading]) => h("li", {}, button(`${item}: ${reading}`, () => answer(`correct ${item}`))))) : h("p", {}, "Nothing is written here yet."),
    h("p", { class: "nav" }, button("Back", question))]);
}
function photoScreen() {
  const place = state.question.place;
  const take = async event => {
    const files = [...event.target.files];
    for (const file of files) {
      try {
        const photo = await photos.add(file, place);
        const got = core.ask({ do: "answer", typed: `photo: ${photo}` });
        if (got.trap) return recover(`photo: ${photo}`, got.trap);
        if (got.error || got.said.some(one => one.kind === "refused")) throw new Error(got.error || got.said[0].lines.join(" "));
        state = got; typed.push(`photo: ${photo}`); keep();
      } catch (e) { return notice(h("p", {}, `${file.name} was not taken: ${e.message}. Other answers are kept.`)); }
    }
    if (photos.fault) notice(h("p", {}, "The photograph is here only until this page is closed: this browser keeps none. Save the page with it."));
    photoScreen();
    tell("The photograph is kept with this railing.");
  };
  const names = state.written.filter(([item]) => item === "photo").map(([, reading]) => reading);
  show([bar(), h("h2", {}, "A photograph of it"), h("p", {}, "It is made smaller here, and the place where it was taken is removed. It stays on this phone and in the page that you save."),
    h("div", { class: "ch" }, h("label", { class: "file" }, "Take or choose a photograph", h("input", { type: "file", accept: "image/*", multiple: true, onchange: take }))),
    pictures(names), h("div", { class: "ch" }, button("Go on", question, { class: "pri" }))]);
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
  const calls = stop.acts.map(one => one.act), lines = stop.lines.filter(line => !calls.some(call => line.includes(call)) && !/^!+/.test(line));
  const finished = state.question.finished;
  tell("");
  show([
    h("h1", {}, stop.acts.length ? sentence([...new Set(calls)].join(", and ")) : "Stop"),
    h("p", { class: "big" }, stop.acts.map(one => `${upper(one.says)}.`).join(" ")),
    h("div", { class: "do" }, lines.map(line => h("p", {}, line))),
    h("div", { class: "ch" }, button(state.question.is_name ? "Go on with the next railing" : "Go on", finished ? end : question, { class: "pri" }),
      state.question.is_name ? button("What the eye tells, without touching it", byEye) : button("Go on with the next railing", () => answer("next")),
      button("It was a slip: change my answer", () => answer("back"))),
  ], "danger");
}
// Without touching it: what can be typed after a danger.
function byEye() {
  show([h("h2", {}, "Only what needs no touching"), h("p", {}, "Stay where you are. What do you see from there?"),
    h("div", { class: "ch" }, [["How far it is down", "drop"], ["What fills it", "infill"], ["A photograph", "photo"]].map(([text, item]) => button(text, () => answer(`another ${item}`)))),
    h("div", { class: "ch" }, button("Go on with the next railing", question, { class: "pri" }))]);
}

// ---- the end --------------------------------------------------------------------------------
const stem = () => name.replace(/\.[a-z]+$/i, "");
function saveSurvey() { download(state.survey, `${stem()}.csv`, "text/csv"); tell("The survey is handed to the browser to save."); }
function report(form) { return core.ask({ do: "check", files: [{ name, text: state.survey }], rules: [], form, today: today() }); }
function asText() {
  const area = h("textarea", { id: "astext", readonly: true, rows: 8, spellcheck: "false" });
  area.value = state.survey;
  return h("details", { class: "noprint" }, h("summary", {}, "Copy the survey as text"), h("label", { for: "astext" }, "Where nothing can be saved, copy all of it into a message to yourself."), area);
}
function end() {
  const got = core.ask({ do: "guards" });
  if (got.trap || got.error) return broken(got.trap || got.error);
  const guards = got.guards, tonight = guards.filter(one => one.acts.length), text = report("text");
  if (text.trap || text.error) return broken(text.trap || text.error);
  const count = guards.length === 1 ? "1 railing" : `${guards.length} railings`;
  show([
    h("h1", {}, guards.length ? `${count} written down` : "No railing was written down"), noted(),
    tonight.length ? h("div", { class: "say" }, h("h2", {}, "Tonight"), tonight.map(one => h("p", {}, h("b", {}, `${one.place}: ${sentence([...new Set(one.acts.map(act => act.act))].join(", and "))}. `), one.acts.map(act => `${upper(act.says)}.`).join(" ")))) : null,
    h("ul", { class: "gl" }, guards.map(one => h("li", {}, button([mark(one.verdict), h("span", {}, h("b", {}, one.place), ` · ${one.says}`)], () => guardScreen(one))))),
    h("div", { class: "ch two" }, button("Save the survey", saveSurvey, { class: "pri" }), button("Save the page", () => savePage("save")),
      typeof navigator.share === "function" ? button("Share the page", () => savePage("share")) : null, button("Print", () => print()),
      button("Another railing", again), openButton()),
    h("h2", {}, "The report"), h("div", { id: "report" }, h("pre", {}, text.report)),
    text.diagnostics ? [h("h2", {}, "What could not be read"), h("pre", {}, text.diagnostics)] : null,
    asText(),
    h("p", { class: "nav" }, button("New survey", () => { touched = true; first(); })),
  ]);
}
function again() {
  const old = state.survey, got = begin(old, rules);
  if (got.trap || got.error) return broken(got.trap || got.error);
  state = { ...got, said: [] };
  if (!state.question.is_name) { const next = core.ask({ do: "answer", typed: "next" }); if (!next.error && !next.trap) { state = { ...next, said: [] }; typed.push("next"); } }
  keep(); question();
}
function guardScreen(one) {
  show([h("h1", {}, [mark(one.verdict), ` ${one.place}`]), h("p", {}, h("b", {}, upper(one.says))),
    one.acts.length ? h("div", { class: "say" }, one.acts.map(act => h("p", {}, h("b", {}, `${sentence(act.act)}. `), `${upper(act.says)}.`))) : null,
    h("ul", { class: "gl" }, one.hazards.map(of => h("li", {}, h("p", {}, of.verdict ? mark(of.verdict) : mark("does not apply"), ` ${upper(of.hazard)}: ${of.says}${of.advice ? `; advice: ${of.advice_says}` : ""}`)))),
    pictures(one.photos), h("p", { class: "nav" }, button("Back", end))]);
}
async function savePage(how) {
  const got = core.ask({ do: "guards" }), text = report("text");
  const escape = s => s.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/"/g, "&quot;");
  let pics = "";
  for (const one of got.guards) for (const photo of one.photos) {
    const url = await photos.dataUrl(photo);
    if (url) pics += `<figure><img src="${url}" alt="Photograph ${escape(photo)}"><figcaption>${escape(one.place)}: ${escape(photo)}</figcaption></figure>\n`;
  }
  const page = `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escape(stem())}: report</title></head><body>\n<pre>${escape(text.report)}</pre>\n${pics}</body></html>\n`;
  const file = new File([page], `${stem()}.html`, { type: "text/html" });
  if (how === "share" && navigator.canShare && navigator.canShare({ files: [file] })) {
    try { await navigator.share({ files: [file], title: stem() }); return; } catch (e) { if (e.name === "AbortError") return; }
  }
  download(page, `${stem()}.html`, "text/html");
  tell("The page is handed to the browser to save.");
}

// ---- other tabs, leaving, beginning ----------------------------------------------------------
addEventListener("storage", event => {
  if (event.key !== KEY || !event.newValue || !state) return;
  const theirs = JSON.parse(event.newValue);
  if (theirs.tab === TAB || theirs.survey === state.survey) return;
  kept.paused = true;
  showKept();
  const take = () => { kept.setAside({ survey: state.survey, base, typed, rules, name }); kept.paused = false; notice(); resume(theirs); };
  const stay = () => { kept.setAside(theirs); kept.paused = false; notice(); keep(); };
  notice(h("h2", {}, "The survey is open in another tab too"), h("p", {}, "An answer was kept there just now. Go on in one of them only; the other's survey stays to be gone back to."),
    h("div", { class: "ch" }, button("Go on with the other tab's", take), button("Go on with this one", stay)));
});
addEventListener("pagehide", () => keep());
document.addEventListener("visibilitychange", () => { if (document.hidden) keep(); });
addEventListener("beforeunload", event => { if (state && (kept.fault || kept.paused) && state.guards) event.preventDefault(); });

function warm() {
  const got = core.ask({ do: "warm" });
  if (got.left > 0) setTimeout(warm, 0); else times.warm = since();
}
Core.open($("core")).then(async opened => {
  core = opened;
  await photos.open();
  const old = kept.read(KEY);
  if (!old) kept.write(KEY, null);                     // so that a store that is blocked is known at once
  if (old && old.survey) resume(old); else first();
  times.ready = since();
  document.documentElement.dataset.ready = "yes";
  setTimeout(warm, 50);
}).catch(fault => {
  $("cannot").replaceChildren("This browser cannot run the page (", String(fault.message || fault), "). Open it with an up-to-date browser, or print the sheet of guardrule and fill it in by hand.");
  document.documentElement.dataset.ready = "no";
});
