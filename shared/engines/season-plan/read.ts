/** Reads a season written as `season-plan/1` (README.md); everything that is wrong with it comes back by path. */
import { ok, refuse, type Result } from "../../kernel/outcome.ts";
import { WAYS } from "../../kernel/way.ts";
import { FieldReader, type Fields } from "./read-fields.ts";
import type { Batches, Method, Resource, Scenario, Season, SeasonCrop, Target, Taste, Wish } from "./types.ts";

export const FORMAT = "season-plan/1";
/** Two years; a plan of more is a guess, and its programme too large. */
const MOST_WEEKS = 104;

export function readSeason(file: unknown): Result<Season> {
  const reader = new FieldReader();
  const fields = reader.object(file, "");
  if (fields["format"] !== FORMAT) reader.fault("format", `Expected "${FORMAT}".`);
  const weeks = reader.whole(fields["weeks"], "weeks", 1, MOST_WEEKS);
  const scenarios = scenariosOf(reader, fields);
  const season: Season = {
    firstWeek: reader.text(fields["firstWeek"], "firstWeek"),
    weeks,
    scenarios,
    crops: reader.list(fields["crops"], "crops", (item, path) => cropOf(reader, item, path, weeks, scenarios)),
    resources: reader.list(fields["resources"], "resources", (item, path) => resourceOf(reader, item, path, weeks)),
    equipment: reader.list(fields["equipment"], "equipment", (item, path) => reader.text(item, path)),
    methods: reader.list(fields["methods"], "methods", (item, path) => methodOf(reader, item, path, weeks)),
    eatFromStorePortions: reader.byWeek(fields["eatFromStorePortions"] ?? 0, "eatFromStorePortions", weeks),
    targets: reader.list(fields["targets"], "targets", (item, path) => targetOf(reader, item, path, weeks)),
    wishes: reader.list(fields["wishes"], "wishes", (item, path) => wishOf(reader, item, path, weeks)),
    tastes: reader.list(fields["tastes"], "tastes", (item, path) => tasteOf(reader, item, path)),
    agreed: reader.list(fields["agreed"], "agreed", (item, path) => agreedOf(reader, item, path, weeks)),
    agreedUntil: reader.whole(fields["agreedUntil"] ?? 0, "agreedUntil", 0, weeks),
    frozenWeeks: reader.whole(fields["frozenWeeks"] ?? 0, "frozenWeeks", 0, weeks),
  };
  checkNames(reader, season);
  if (reader.faults.length > 0) return refuse("bad-request", "This season cannot be read as it stands.", reader.faults);
  return ok(season);
}

function scenariosOf(reader: FieldReader, fields: Fields): Scenario[] {
  const read = reader.list(fields["scenarios"], "scenarios", (item, path) => {
    const { id, weight } = reader.object(item, path);
    return { id: reader.text(id, `${path}.id`), weight: reader.number(weight ?? 1, `${path}.weight`) };
  });
  const whole = read.reduce((sum, { weight }) => sum + weight, 0);
  if (read.length === 0) reader.fault("scenarios", "Expected at least one scenario.");
  else if (whole <= 0) reader.fault("scenarios", "At least one scenario needs a weight above 0.");
  return read.map(({ id, weight }) => ({ id, chance: weight / whole }));
}

function cropOf(reader: FieldReader, item: unknown, path: string, weeks: number, scenarios: readonly Scenario[]): SeasonCrop {
  const fields = reader.object(item, path);
  const harvests = reader.object(fields["harvestGrams"], `${path}.harvestGrams`);
  return {
    crop: reader.text(fields["crop"], `${path}.crop`),
    keepWeeks: reader.whole(fields["keepWeeks"], `${path}.keepWeeks`, 1),
    freshGrams: reader.byWeek(fields["freshGrams"] ?? 0, `${path}.freshGrams`, weeks),
    giveGrams: reader.byWeek(fields["giveGrams"] ?? 0, `${path}.giveGrams`, weeks),
    harvestGrams: scenarios.map(({ id }) => reader.byWeek(harvests[id], `${path}.harvestGrams.${id}`, weeks)),
  };
}

function resourceOf(reader: FieldReader, item: unknown, path: string, weeks: number): Resource {
  const fields = reader.object(item, path);
  return {
    id: reader.text(fields["id"], `${path}.id`),
    kind: reader.oneOf(fields["kind"], `${path}.kind`, ["weekly", "consumed", "held"]),
    unit: typeof fields["unit"] === "string" ? fields["unit"] : "",
    amount: reader.byWeek(fields["amount"], `${path}.amount`, weeks),
  };
}

function methodOf(reader: FieldReader, item: unknown, path: string, weeks: number): Method {
  const fields = reader.object(item, path);
  const session = reader.object(fields["sessionBatches"] ?? { min: 1, max: 1 }, `${path}.sessionBatches`);
  const id = reader.text(fields["id"], `${path}.id`);
  return {
    id,
    title: typeof fields["title"] === "string" ? fields["title"] : id,
    way: reader.oneOf(fields["way"], `${path}.way`, WAYS),
    keptIn: reader.oneOf(fields["keptIn"], `${path}.keptIn`, ["freezer", "fridge", "shelf", "none"]),
    process: reader.oneOf(fields["process"], `${path}.process`, ["tested", "not-needed", "none"]),
    needs: reader.list(fields["needs"], `${path}.needs`, (need, at) => reader.text(need, at)),
    uses: reader.list(fields["uses"], `${path}.uses`, (use, at) => {
      const { crop, grams } = reader.object(use, at);
      return { crop: reader.text(crop, `${at}.crop`), grams: reader.number(grams, `${at}.grams`) };
    }),
    sessionBatches: { min: reader.whole(session["min"], `${path}.sessionBatches.min`), max: reader.whole(session["max"], `${path}.sessionBatches.max`) },
    perSession: reader.amounts(fields["perSession"], `${path}.perSession`),
    perBatch: reader.amounts(fields["perBatch"], `${path}.perBatch`),
    portions: reader.number(fields["portions"] ?? 0, `${path}.portions`),
    keepWeeks: fields["keepWeeks"] === undefined ? null : reader.whole(fields["keepWeeks"], `${path}.keepWeeks`, 1),
    eatPortions: reader.byWeek(fields["eatPortions"] ?? 0, `${path}.eatPortions`, weeks),
    opening: reader.number(fields["opening"] ?? 0, `${path}.opening`),
    recourse: fields["recourse"] === true,
  };
}

function targetOf(reader: FieldReader, item: unknown, path: string, weeks: number): Target {
  const fields = reader.object(item, path);
  return { ...askedOf(reader, fields, path), atWeek: reader.whole(fields["atWeek"], `${path}.atWeek`, 0, weeks - 1) };
}

function wishOf(reader: FieldReader, item: unknown, path: string, weeks: number): Wish {
  const fields = reader.object(item, path);
  const from = reader.whole(fields["from"], `${path}.from`, 0, weeks - 1);
  return { ...askedOf(reader, fields, path), from, until: reader.whole(fields["until"], `${path}.until`, from + 1, weeks) };
}

function askedOf(reader: FieldReader, fields: Fields, path: string): { id: string; methods: string[]; portions: number } {
  const portions = reader.number(fields["portions"], `${path}.portions`);
  if (portions === 0) reader.fault(`${path}.portions`, "Expected more than 0 portions.");
  return { ...namedOf(reader, fields, path), portions };
}

function namedOf(reader: FieldReader, fields: Fields, path: string): { id: string; methods: string[] } {
  return { id: reader.text(fields["id"], `${path}.id`), methods: reader.list(fields["methods"], `${path}.methods`, (id, at) => reader.text(id, at)) };
}

function tasteOf(reader: FieldReader, item: unknown, path: string): Taste {
  const fields = reader.object(item, path);
  const tiers = reader.list(fields["tiers"], `${path}.tiers`, (tier, at) => {
    const { portions, worth } = reader.object(tier, at);
    return { portions: reader.number(portions, `${at}.portions`), worth: reader.number(worth, `${at}.worth`) };
  });
  tiers.forEach((tier, i) => {
    if (i > 0 && tier.worth > (tiers[i - 1]?.worth ?? 0)) reader.fault(`${path}.tiers.${i}.worth`, "A later tier is worth no more than the one before.");
  });
  return { ...namedOf(reader, fields, path), everyWeeks: reader.whole(fields["everyWeeks"], `${path}.everyWeeks`, 1), tiers };
}

function agreedOf(reader: FieldReader, item: unknown, path: string, weeks: number): Batches {
  const fields = reader.object(item, path);
  return {
    method: reader.text(fields["method"], `${path}.method`),
    week: reader.whole(fields["week"], `${path}.week`, 0, weeks - 1),
    batches: reader.whole(fields["batches"], `${path}.batches`),
  };
}

/** Every id once, and only ids that are there. */
function checkNames(reader: FieldReader, season: Season): void {
  const crops = new Set(season.crops.map(({ crop }) => crop));
  const methods = new Set(season.methods.map(({ id }) => id));
  reader.distinct(season.scenarios.map(({ id }) => id), (i) => `scenarios.${i}.id`);
  reader.distinct(season.crops.map(({ crop }) => crop), (i) => `crops.${i}.crop`);
  reader.distinct(season.resources.map(({ id }) => id), (i) => `resources.${i}.id`);
  reader.distinct(season.methods.map(({ id }) => id), (i) => `methods.${i}.id`);
  season.methods.forEach(({ uses }, i) => {
    reader.known(uses.map(({ crop }) => crop), crops, `methods.${i}.uses`, "crop");
    reader.distinct(uses.map(({ crop }) => crop), (u) => `methods.${i}.uses.${u}.crop`);
  });
  for (const list of ["targets", "wishes", "tastes"] as const) {
    season[list].forEach((asked, i) => reader.known(asked.methods, methods, `${list}.${i}.methods`, "method"));
  }
  reader.known(season.agreed.map(({ method }) => method), methods, "agreed", "method");
  reader.distinct(season.agreed.map(({ method, week }) => `${method} in week ${week}`), (i) => `agreed.${i}`);
}
