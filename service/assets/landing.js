// The form of the first page: measures to an order, an order to a picture, a verdict and files.
// It has no words of its own: they come with the page, and from the API in the page's language.
"use strict";

const at = (id) => document.getElementById(id);
const LANGUAGE = document.documentElement.lang;
const TOLD_IN = at("about").lang;
const FORMATS = ["pdf", "svg", "png", "dxf", "json", "zip"];
const WORDS = Object.fromEntries(
  [...at("words").content.children].map((word) => [word.dataset.name, word.textContent]));
let garment = null;

// A text of the page, its gaps filled.
function say(name, values = {}) {
  return WORDS[name].replaceAll(/\{(\w+)\}/g, (gap, key) => values[key] ?? gap);
}

function made(tag, properties = {}, ...children) {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
}

async function read(path, query = "") {
  const answer = await fetch(`${path}?language=${LANGUAGE}${query}`);
  if (!answer.ok) throw new Error(path);
  return answer.json();
}

function field(id, title, input, hint) {
  input.id = id;
  const told = made("span", { id: `${id}-hint`, className: "hint", textContent: hint, lang: TOLD_IN });
  const wrong = made("span", { id: `${id}-wrong`, className: "wrong" });
  input.setAttribute("aria-describedby", `${wrong.id} ${told.id}`);
  return made("p", { className: "field" }, made("label", { htmlFor: id, textContent: title }), input, wrong, told);
}

function measureField(measure) {
  const input = made("input", { type: "text", inputMode: "decimal", autocomplete: "off" });
  input.dataset.measure = measure.name;
  const title = measure.unit in WORDS ? say(measure.unit, measure) : measure.title;
  return field(`m-${measure.name}`, title, input, measure.how);
}

function choiceField(name, schema) {
  const choices = [schema, ...(schema.anyOf ?? [])];
  const values = choices.flatMap((choice) => choice.enum ?? (choice.const ? [choice.const] : []));
  const yesNo = choices.some((choice) => choice.type === "boolean");
  if (!values.length && !yesNo) return null;
  const words = yesNo ? WORDS : garment.choices[name];
  const select = made("select", {}, made("option", { value: "", textContent: say("as_usual") }));
  for (const value of yesNo ? [true, false] : values) {
    select.append(made("option", { value: JSON.stringify(value), textContent: words[value] }));
  }
  select.dataset.option = name;
  return field(`o-${name}`, schema.title, select, schema.description ?? "");
}

async function choose() {
  const kind = at("kind").value;
  const [told, vocabulary] = await Promise.all([
    read(`v1/garments/${kind}`),
    read("v1/measurements", `&garment=${kind}`),
  ]);
  if (kind !== at("kind").value) return;
  garment = told;
  at("about").textContent = told.summary;
  const needed = vocabulary.measurements.filter((measure) => told.needs.includes(measure.name));
  const more = vocabulary.measurements.filter((measure) => !told.needs.includes(measure.name));
  const kept = Object.fromEntries(written().map((input) => [input.id, input.value]));
  at("needed").replaceChildren(...needed.map(measureField));
  at("more").replaceChildren(...more.map(measureField));
  const options = Object.entries(told.options.properties ?? {}).filter(([name]) => name !== "kind");
  const choices = options.map(([name, schema]) => choiceField(name, schema)).filter(Boolean);
  at("options").replaceChildren(...choices);
  at("choices").hidden = !choices.length;
  for (const [id, value] of Object.entries(kept)) {
    if (at(id)) at(id).value = value;
  }
}

function fill() {
  const number = new Intl.NumberFormat(LANGUAGE, { useGrouping: false });
  at("unit").value = garment.example.unit ?? "cm";
  at("figure").value = garment.example.figure ?? "women";
  for (const [name, value] of Object.entries(garment.example.measurements)) {
    const input = at(`m-${name}`);
    if (input) input.value = number.format(value);
  }
  at("status").textContent = say("filled");
}

// The fields of measures in which something stands.
function written() {
  return [...document.querySelectorAll("[data-measure]")].filter((input) => input.value.trim());
}

function measures() {
  return Object.fromEntries(written().map((input) => {
    const text = input.value.trim();
    const number = Number(text.replace(",", "."));
    return [input.dataset.measure, Number.isNaN(number) ? text : number];
  }));
}

function order() {
  const options = { kind: at("kind").value };
  for (const select of document.querySelectorAll("[data-option]")) {
    if (select.value) options[select.dataset.option] = JSON.parse(select.value);
  }
  return {
    unit: at("unit").value,
    figure: at("figure").value,
    measurements: measures(),
    garment: options,
    output: { paper: at("paper").value, language: LANGUAGE },
  };
}

function send(wanted, format) {
  const headers = { "Content-Type": "application/json" };
  if (at("key").value) headers.Authorization = `Bearer ${at("key").value}`;
  return fetch(`v1/patterns?format=${format}`, {
    method: "POST", headers, body: JSON.stringify(wanted),
  });
}

function forget() {
  at("trouble").hidden = true;
  for (const each of document.querySelectorAll("[aria-invalid]")) each.removeAttribute("aria-invalid");
  for (const each of document.querySelectorAll(".wrong")) each.textContent = "";
}

// What an entry of a problem says of a field, and in which language: a text that is no number is
// told of by the page.
function told(error, input) {
  const unread = ["wrong_type", "unreadable_length"].includes(error.code);
  if (!unread || !input.dataset.measure) return [error.detail, TOLD_IN];
  return [say(at("unit").value === "in" ? "no_inches" : "no_number"), LANGUAGE];
}

// What is wrong: a list that leads to the fields, each of which says it too.
function refuse(problem) {
  const items = problem.errors.map((error) => {
    const [, part, name] = error.pointer.split("/");
    const input = at(`${part === "measurements" ? "m" : "o"}-${name}`);
    if (!input) return made("li", { textContent: error.detail, lang: TOLD_IN });
    const [message, lang] = told(error, input);
    const label = document.querySelector(`label[for="${input.id}"]`).textContent;
    input.setAttribute("aria-invalid", "true");
    input.closest("details")?.setAttribute("open", "");
    Object.assign(at(`${input.id}-wrong`), { textContent: message, lang });
    const named = message.startsWith(label) ? message : say("at_field", { field: label, message });
    const link = made("a", { href: `#${input.id}`, textContent: named, lang });
    link.addEventListener("click", (event) => { event.preventDefault(); input.focus(); });
    return made("li", {}, link);
  });
  complain(problem.title, ...(items.length ? [made("ul", {}, ...items)] : []));
}

function complain(title, ...more) {
  at("trouble").replaceChildren(made("h3", { textContent: title }), ...more);
  at("trouble").hidden = false;
  at("status").textContent = "";
  at("trouble").focus();
}

// An answer that is no pattern: a refused order, or a service that cannot draft it now.
async function fail(answer) {
  if (answer.status === 401) at("keyed").hidden = false;
  if (answer.status === 422) return refuse(await answer.json());
  complain(say({ 401: "unauthorized", 429: "busy", 503: "busy" }[answer.status] ?? "failed"));
}

async function draft() {
  forget();
  at("status").textContent = say("drafting");
  at("downloads").hidden = true;
  at("findings").replaceChildren();
  at("verdict").textContent = say("earlier");
  const wanted = order();
  const [told, drawn] = await Promise.all([send(wanted, "json"), send(wanted, "svg")]);
  if (!told.ok) return fail(told);
  if (!drawn.ok) return fail(drawn);
  const answer = await told.json();
  const title = at("kind").selectedOptions[0].textContent;
  const verdict = say(answer.verdict);
  URL.revokeObjectURL(at("pattern").src);
  at("pattern").src = URL.createObjectURL(await drawn.blob());
  at("pattern").alt = say("drawn", { title });
  at("verdict").textContent = say("verdict", { title, verdict });
  at("findings").replaceChildren(
    ...answer.findings.map((found) => made("li", { textContent: found.message })));
  at("downloads").hidden = false;
  at("status").textContent = verdict;
}

async function download(format) {
  forget();
  const name = format.toUpperCase();
  at("status").textContent = say("writing", { format: name });
  const answer = await send(order(), format);
  if (!answer.ok) return fail(answer);
  const address = URL.createObjectURL(await answer.blob());
  made("a", { href: address, download: `${at("kind").value}.${format}` }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  at("status").textContent = say("written", { format: name });
}

function safely(work) {
  return work().catch(() => complain(say("failed")));
}

at("kind").addEventListener("change", () => safely(choose));
at("fill").addEventListener("click", fill);
at("order").addEventListener("submit", (event) => { event.preventDefault(); safely(draft); });
for (const format of FORMATS) {
  const button = made("button", { type: "button", textContent: format.toUpperCase() });
  button.addEventListener("click", () => safely(() => download(format)));
  at("formats").append(button, " ");
}
at("order").hidden = false;
safely(choose);
