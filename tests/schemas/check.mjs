// Holds the schemas for editors against what the program reads, in JSON Schema 2020 and YAML 1.2, where a bare number
// is a number: every file that loads is accepted, every broken one refused, but for the few that are listed here.
// Run by tests/run: node check.mjs FOLDER-OF-THE-REPOSITORY
import Ajv from "ajv/dist/2020.js";
import fs from "node:fs";
import path from "node:path";
import { parse } from "yaml";

const root = process.argv[2];
const kinds = ["criteria", "cases", "rules", "practice", "work"];

// What a schema cannot know: the program refuses these, an editor does not. At most ten.
const acceptedThoughBroken = new Set([
  "criteria-class-unknown.yaml", // the classes of this very file
  "criteria-dimension-mixed.yaml", // a formula is not taken apart
  "criteria-id-twice.yaml",
  "criteria-order-turned.yaml",
  "criteria-table-unknown.yaml",
  "criteria-type-misspelt.yaml", // the vocabulary grows, and people may say one thing in many words
  "cases-rule-unknown.yaml",
  "practice-condition-unknown.yaml", // the conditions are the program's to list
  "rules-range-of-no-variable.yaml",
  "work-word-of-no-rules.yaml",
]);

const ajv = new Ajv({ strict: true, strictRequired: false, strictTypes: false, allErrors: true });
const schemas = new Map();
for (const kind of kinds) {
  const text = fs.readFileSync(path.join(root, "criteria", `${kind}.schema.json`), "utf8");
  schemas.set(kind, ajv.compile(JSON.parse(text)));
}

let passed = 0;
const failures = [];
const tell = (fine, what) => (fine ? (passed += 1) : failures.push(what));

const filesIn = (folder) =>
  fs.readdirSync(path.join(root, folder)).filter((name) => name.endsWith(".yaml")).sort();

const refusals = (kind, text) => {
  const validate = schemas.get(kind);
  return validate(parse(text)) ? [] : validate.errors.map((e) => `${e.instancePath || "/"} ${e.message}`);
};

const accepted = (kind, what, text) => {
  const found = refusals(kind, text);
  tell(found.length === 0, `${what} is refused by ${kind}.schema.json:\n    ${found.slice(0, 6).join("\n    ")}`);
};

const notSets = new Set(["vocabulary.yaml", "plausible.yaml", "nominal-sizes.yaml"]);
const shipped = {
  criteria: ["criteria", "demo/criteria", "tests/criteria/doubtful"],
  cases: ["criteria/cases"],
  rules: ["criteria/welder"],
  practice: ["criteria/technique"],
};
for (const [kind, folders] of Object.entries(shipped))
  for (const folder of folders)
    for (const name of filesIn(folder))
      if (!notSets.has(name))
        accepted(kind, `${folder}/${name}`, fs.readFileSync(path.join(root, folder, name), "utf8"));
accepted("work", "demo/work.yaml", fs.readFileSync(path.join(root, "demo/work.yaml"), "utf8"));

// The examples of the READMEs; what is no whole set stands under a head, as in tests/docs.
const examples = (file) =>
  [...fs.readFileSync(path.join(root, file), "utf8").matchAll(/```yaml\n(.*?)```/gs)].map((found) => found[1]);
const head = "set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A, B]\n";
const oneRule =
  "rules:\n  - {id: r, types: porosity, exams: RT, allowed: none, clause: c, standing: {house: x}}\n";
examples("criteria/README.md").forEach((block, at) => {
  const whole = block.startsWith("set:") ? block : head + block;
  const ruled = /^rules:/m.test(whole) ? whole : whole + oneRule;
  accepted("criteria", `example ${at + 1} of criteria/README.md`, ruled);
});
const welder = examples("criteria/welder/README.md");
accepted("rules", "the example of rules for welders", welder[0]);
accepted("work", "the example of a work file", welder[1]);
accepted("practice", "the example of a practice", examples("criteria/technique/README.md")[0]);

const broken = filesIn("tests/schemas/broken");
tell(broken.length >= 50, `only ${broken.length} broken files`);
tell(acceptedThoughBroken.size <= 10, "more than ten broken files are accepted");
for (const name of broken) {
  const kind = name.slice(0, name.indexOf("-"));
  const found = refusals(kind, fs.readFileSync(path.join(root, "tests/schemas/broken", name), "utf8"));
  if (acceptedThoughBroken.has(name))
    tell(found.length === 0, `${name} is refused now: take it off the list\n    ${found.join("\n    ")}`);
  else tell(found.length > 0, `${name} is broken, and ${kind}.schema.json accepts it`);
}
for (const name of acceptedThoughBroken) tell(broken.includes(name), `${name} is listed and does not exist`);

for (const failure of failures) console.log(failure);
console.log(`schemas: ${passed} passed, ${failures.length} failed`);
process.exit(failures.length === 0 ? 0 : 1);
