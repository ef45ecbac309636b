// The form of the first page: measures to an order, an order to a picture, a verdict and files.
"use strict";

const at = (id) => document.getElementById(id);
const VERDICTS = {
  sound: "Sound: every seam matches and every check has passed.",
  sound_with_remarks: "Sound, with remarks: read them before you cut.",
  unsound: "Not for cutting: a seam does not match or a check has failed.",
};
const FORMATS = ["pdf", "svg", "png", "dxf", "json", "zip"];
let garment = null;

function made(tag, properties = {}, ...children) {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
}

async function read(path) {
  const answer = await fetch(path);
  if (!answer.ok) throw new Error(`${path} is not answered (${answer.status})`);
  return answer.json();
}

function field(id, title, input, hint) {
  input.id = id;
  const told = made("span", { id: `${id}-hint`, className: "hint", textContent: hint });
  if (hint) input.setAttribute("aria-describedby", told.id);
  const wrong = made("span", { id: `${id}-wrong`, className: "wrong" });
  return made("p", { className: "field" }, made("label", { htmlFor: id, textContent: title }), input, told, wrong);
}

function measureField(measure) {
  const input = made("input", { type: "text", inputMode: "decimal", autocomplete: "off" });
  input.dataset.measure = measure.name;
  const unit = { cm: "", deg: " (degrees)", kg: " (kg)" }[measure.unit];
  return field(`m-${measure.name}`, measure.title + unit, input, measure.how);
}

function choiceField(name, schema, title) {
  const choices = [schema, ...(schema.anyOf ?? [])];
  const names = choices.flatMap((choice) => choice.enum ?? (choice.const ? [choice.const] : []));
  const yesNo = choices.some((choice) => choice.type === "boolean");
  if (!names.length && !yesNo) return null;
  const select = made("select", {}, made("option", { value: "", textContent: "as usual" }));
  for (const value of yesNo ? [true, false] : names) {
    const word = { true: "yes", false: "no" }[value] ?? String(value).replaceAll("_", " ");
    select.append(made("option", { value: JSON.stringify(value), textContent: word }));
  }
  select.dataset.option = name;
  return field(`o-${name}`, title, select, schema.description ?? "");
}

async function choose() {
  const kind = at("kind").value;
  const [told, vocabulary] = await Promise.all([
    read(`v1/garments/${kind}`),
    read(`v1/measurements?garment=${kind}`),
  ]);
  if (kind !== at("kind").value) return;
  garment = told;
  at("about").textContent = told.summary;
  const needed = vocabulary.measurements.filter((measure) => told.needs.includes(measure.name));
  const more = vocabulary.measurements.filter((measure) => !told.needs.includes(measure.name));
  const kept = measures();
  at("needed").replaceChildren(...needed.map(measureField));
  at("more").replaceChildren(...more.map(measureField));
  const options = Object.entries(told.options.properties ?? {}).filter(([name]) => name !== "kind");
  const choices = options.map(([name, schema]) =>
    choiceField(name, schema, schema.title ?? name)).filter(Boolean);
  at("options").replaceChildren(...choices);
  at("choices").hidden = !choices.length;
  for (const [name, value] of Object.entries(kept)) {
    const input = at(`m-${name}`);
    if (input) input.value = value;
  }
}

function fill() {
  at("unit").value = garment.example.unit ?? "cm";
  at("figure").value = garment.example.figure ?? "women";
  for (const [name, value] of Object.entries(garment.example.measurements)) {
    const input = at(`m-${name}`);
    if (input) input.value = value;
  }
  at("status").textContent = "Filled in with the measures of an invented person.";
}

function measures() {
  const given = {};
  for (const input of document.querySelectorAll("[data-measure]")) {
    const text = input.value.trim();
    const number = Number(text.replace(",", "."));
    if (text) given[input.dataset.measure] = Number.isNaN(number) ? text : number;
  }
  return given;
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
    output: { paper: at("paper").value },
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

// What is wrong: a list that leads to the fields, each of which says it too.
function refuse(problem) {
  const items = problem.errors.map((error) => {
    const [, part, name] = error.pointer.split("/");
    const input = at(`${part === "measurements" ? "m" : "o"}-${name}`);
    if (!input) return made("li", { textContent: error.detail });
    input.setAttribute("aria-invalid", "true");
    input.closest("details")?.setAttribute("open", "");
    at(`${input.id}-wrong`).textContent = error.detail;
    const label = document.querySelector(`label[for="${input.id}"]`).textContent;
    const link = made("a", { href: `#${input.id}`, textContent: `${label}: ${error.detail}` });
    link.addEventListener("click", (event) => { event.preventDefault(); input.focus(); });
    return made("li", {}, link);
  });
  const detail = items.length ? [] : [made("p", { textContent: problem.detail })];
  at("trouble").replaceChildren(
    made("h3", { textContent: problem.title }), ...detail, made("ul", {}, ...items));
  at("trouble").hidden = false;
  at("keyed").hidden = at("keyed").hidden && problem.status !== 401;
  at("status").textContent = "";
  at("trouble").focus();
}

async function draft() {
  forget();
  at("status").textContent = "Drafting...";
  at("downloads").hidden = true;
  at("findings").replaceChildren();
  at("verdict").textContent = "An earlier pattern, not of these measures.";
  const wanted = order();
  const [told, drawn] = await Promise.all([send(wanted, "json"), send(wanted, "svg")]);
  const answer = await told.json();
  if (!told.ok) return refuse(answer);
  if (!drawn.ok) return refuse(await drawn.json());
  const title = at("kind").selectedOptions[0].textContent;
  URL.revokeObjectURL(at("pattern").src);
  at("pattern").src = URL.createObjectURL(await drawn.blob());
  at("pattern").alt = `${title} drafted to these measures: ${answer.pieces.length} pieces, to scale`;
  at("verdict").textContent = `${title}. ${VERDICTS[answer.verdict]}`;
  at("findings").replaceChildren(
    ...answer.findings.map((found) => made("li", { textContent: found.message })));
  at("downloads").hidden = false;
  at("status").textContent = VERDICTS[answer.verdict];
}

async function download(format) {
  forget();
  at("status").textContent = `Writing ${format.toUpperCase()}...`;
  const answer = await send(order(), format);
  if (!answer.ok) return refuse(await answer.json());
  const address = URL.createObjectURL(await answer.blob());
  made("a", { href: address, download: `${at("kind").value}.${format}` }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  at("status").textContent = `${format.toUpperCase()} is written.`;
}

function safely(work) {
  return work().catch((error) => {
    refuse({ title: "The service cannot be reached", detail: error.message, errors: [], status: 0 });
  });
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
