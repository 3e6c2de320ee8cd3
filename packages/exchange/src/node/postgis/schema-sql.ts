/**
 * The tables of a project in PostgreSQL and what the database itself does when somebody writes to them, this program or
 * another: gives names, counts versions, writes the journal. This program says who writes in settings that end with its
 * transaction; without them the writer is `outside`.
 */
import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import { contractFields, NAMING_FIELDS, type StoredField } from '../../store/layer-fields.ts';
import type { FieldType } from '../../store/project-store.ts';

/** Any number that no other program is likely to lock: "crownf" in ASCII. */
export const WRITE_LOCK = 0x63726f776e66;
/** Format of these tables; see migrations.ts. */
export const FORMAT = 2;

const COLUMN_TYPES: Readonly<Record<FieldType, string>> = {
  text: 'text',
  number: 'double precision',
  integer: 'bigint',
  boolean: 'boolean',
  day: 'date',
  numbers: 'text',
};

/** An identifier or text inside a statement; all of them are names of the contract. */
export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
const literal = (text: string): string => `'${text.replaceAll("'", "''")}'`;

/** All statements that make an empty project. */
export function schemaSql(): string {
  return [OWN_TABLES, ...LAYER_NAMES.map(layerSql)].join('\n');
}

/** Names of the tables of results, those without rows among them. */
export const RESULT_TABLES = 'CREATE TABLE crownfall.result_tables (name text PRIMARY KEY);';

/** Properties with one field changed; null takes it out, others stay as they are, explicit nulls among them. */
export const WITH_FIELD = `
CREATE OR REPLACE FUNCTION crownfall.with_field(properties json, field text, new_value json) RETURNS json LANGUAGE sql IMMUTABLE AS $$
  SELECT coalesce(json_object_agg(key, val ORDER BY place), '{}') FROM (
    SELECT e.key, CASE WHEN e.key = field THEN new_value ELSE e.value END AS val, e.place
    FROM json_each(properties) WITH ORDINALITY AS e(key, value, place)
    UNION ALL
    SELECT field, new_value, 1000000 WHERE NOT EXISTS (SELECT 1 FROM json_object_keys(properties) AS k WHERE k = field)
  ) AS fields WHERE key <> field OR (val IS NOT NULL AND val::text <> 'null') $$;`;

const OWN_TABLES = `
CREATE SCHEMA crownfall;
CREATE TABLE crownfall.format (format integer NOT NULL);
INSERT INTO crownfall.format VALUES (${FORMAT});
CREATE TABLE crownfall.project (facts json NOT NULL, version integer NOT NULL);
INSERT INTO crownfall.project VALUES ('{"title":"","season":0,"units":"metric","imagery":[],"settings":{}}', 1);
CREATE TABLE crownfall.given_layers (layer text PRIMARY KEY);
CREATE TABLE crownfall.steps (
  step bigint PRIMARY KEY, kind text NOT NULL, author text NOT NULL, at text NOT NULL,
  reverts bigint, reverted_by bigint);
CREATE INDEX ON crownfall.steps (author, step);
CREATE TABLE crownfall.requests (request_id text PRIMARY KEY, answer json NOT NULL);
CREATE TABLE crownfall.journal (
  change bigint PRIMARY KEY, step bigint, kind text NOT NULL, layer text NOT NULL, record_id bigint NOT NULL,
  action text NOT NULL, version integer NOT NULL, author text NOT NULL, at text NOT NULL,
  tree_id text, before json, after json);
CREATE INDEX ON crownfall.journal (layer, record_id, change);
CREATE INDEX ON crownfall.journal (step);
CREATE INDEX ON crownfall.journal (tree_id) WHERE tree_id IS NOT NULL;
CREATE TABLE crownfall.conflicts (
  conflict_id bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY, layer text NOT NULL, record_id bigint NOT NULL,
  given json NOT NULL, author text NOT NULL, at text NOT NULL, state text NOT NULL DEFAULT 'open',
  decided_by text, decided_at text);
CREATE TABLE crownfall.visits (
  number bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY, visit_id text NOT NULL UNIQUE, tree_id text, block_id text,
  visited_on text NOT NULL, visitor text NOT NULL, did text NOT NULL, note text, details json,
  author text NOT NULL, at text NOT NULL);
CREATE INDEX ON crownfall.visits (tree_id);
CREATE INDEX ON crownfall.visits (block_id);
CREATE TABLE crownfall.results (
  name text NOT NULL, result_id bigint NOT NULL, geom geometry(Geometry, 4326), unfit bytea, properties json NOT NULL,
  PRIMARY KEY (name, result_id));
CREATE INDEX ON crownfall.results USING gist (geom);
${RESULT_TABLES}

CREATE FUNCTION crownfall.setting(name text) RETURNS text LANGUAGE sql STABLE AS
  $$ SELECT nullif(current_setting('crownfall.' || name, true), '') $$;

CREATE FUNCTION crownfall.one_writer() RETURNS trigger LANGUAGE plpgsql AS
  $$ BEGIN PERFORM pg_advisory_xact_lock(${WRITE_LOCK}); RETURN NULL; END $$;

CREATE FUNCTION crownfall.only_added() RETURNS trigger LANGUAGE plpgsql AS
  $$ BEGIN RAISE EXCEPTION '% is added to, never changed', TG_TABLE_NAME; END $$;
CREATE TRIGGER only_added BEFORE UPDATE OR DELETE ON crownfall.journal
  FOR EACH ROW EXECUTE FUNCTION crownfall.only_added();
CREATE TRIGGER only_added BEFORE UPDATE OR DELETE ON crownfall.visits
  FOR EACH ROW EXECUTE FUNCTION crownfall.only_added();

CREATE FUNCTION crownfall.note(
  layer text, record_id bigint, action text, version integer, tree_id text, before json, after json) RETURNS void
LANGUAGE sql SECURITY DEFINER SET search_path = pg_catalog, public AS $$
  INSERT INTO crownfall.journal
  SELECT (SELECT coalesce(max(j.change), 0) + 1 FROM crownfall.journal j), 
    CASE WHEN layer NOT IN ('visits', 'conflicts', 'results') THEN crownfall.setting('step')::bigint END,
    coalesce(crownfall.setting('kind'), 'outside'), layer, record_id, action, version,
    coalesce(crownfall.setting('author'), 'outside'),
    coalesce(crownfall.setting('at'), to_char(clock_timestamp() AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')),
    tree_id, before, after $$;

CREATE FUNCTION crownfall.versions_of(of_layer text, of_record bigint) RETURNS integer
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public AS $$
  SELECT coalesce(max(version), 0) FROM crownfall.journal WHERE layer = of_layer AND record_id = of_record $$;

CREATE FUNCTION crownfall.state_of(geom geometry, unfit bytea, properties json) RETURNS json LANGUAGE sql IMMUTABLE AS $$
  SELECT json_build_object('geometry', encode(coalesce(unfit, ST_AsBinary(geom, 'NDR')), 'hex'), 'properties', properties) $$;

${WITH_FIELD}
`;

/** A layer's table. `properties` holds the values as given; the columns beside it are for other programs and for finding. */
function layerSql(layer: LayerName): string {
  const table = `crownfall.${quoted(layer)}`;
  const fields = contractFields(layer);
  const naming = NAMING_FIELDS[layer];
  const looked = fields.filter(({ name }) => name === naming?.field || name === 'tree_id' || name === 'block_id');
  return `
CREATE TABLE ${table} (
  record_id bigint PRIMARY KEY GENERATED BY DEFAULT AS IDENTITY,
  version integer NOT NULL DEFAULT 1,
  geom geometry(Geometry, 4326),
  ${fields.map(({ name, type }) => `${quoted(name)} ${COLUMN_TYPES[type]},`).join('\n  ')}
  properties json NOT NULL DEFAULT '{}',
  unfit bytea);
COMMENT ON COLUMN ${table}.unfit IS 'A geometry that PostGIS refuses, as it was given (WKB).';
${fields.flatMap(({ name, description }) => (description === undefined ? [] : [`COMMENT ON COLUMN ${table}.${quoted(name)} IS ${literal(description)};`])).join('\n')}
CREATE INDEX ON ${table} USING gist (geom);
${looked.map(({ name }) => `CREATE INDEX ON ${table} (${quoted(name)});`).join('\n')}
${beforeSql(layer, fields)}
${afterSql(layer, fields)}
CREATE TRIGGER a_one_writer BEFORE INSERT OR UPDATE OR DELETE ON ${table}
  FOR EACH STATEMENT EXECUTE FUNCTION crownfall.one_writer();
CREATE TRIGGER b_before BEFORE INSERT OR UPDATE ON ${table}
  FOR EACH ROW EXECUTE FUNCTION crownfall.${quoted(`before_${layer}`)}();
CREATE TRIGGER c_after AFTER INSERT OR UPDATE OR DELETE ON ${table}
  FOR EACH ROW EXECUTE FUNCTION crownfall.${quoted(`after_${layer}`)}();`;
}

/** Names, counts, and carries what another program wrote to the columns into `properties`. */
function beforeSql(layer: LayerName, fields: readonly StoredField[]): string {
  const carried = fields.map(({ name }) => {
    const column = quoted(name);
    return `IF NEW.${column} IS DISTINCT FROM old_row.${column} THEN
      NEW.properties := crownfall.with_field(NEW.properties, ${literal(name)}, to_json(NEW.${column}));
    END IF;`;
  });
  return `
CREATE FUNCTION crownfall.${quoted(`before_${layer}`)}() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public AS $$
DECLARE old_row crownfall.${quoted(layer)};
DECLARE made text;
BEGIN
  IF crownfall.setting('silent') IS NOT NULL THEN RETURN NEW; END IF;
  IF TG_OP = 'UPDATE' THEN
    old_row := OLD;
    IF NEW.record_id <> OLD.record_id THEN RAISE EXCEPTION 'the number of a record stays'; END IF;
  END IF;
  IF crownfall.setting('author') IS NULL THEN
    IF NEW.geom IS DISTINCT FROM old_row.geom THEN NEW.unfit := NULL; END IF;
    ${carried.join('\n    ')}
  END IF;
  ${namingSql(layer)}
  IF TG_OP = 'INSERT' THEN
    NEW.version := crownfall.versions_of(${literal(layer)}, NEW.record_id) + 1;
  ELSIF NEW.properties::text IS DISTINCT FROM OLD.properties::text OR NEW.geom IS DISTINCT FROM OLD.geom
      OR NEW.unfit IS DISTINCT FROM OLD.unfit THEN
    NEW.version := OLD.version + 1;
  ELSE
    NEW.version := OLD.version;
  END IF;
  RETURN NEW;
END $$;`;
}

/** A record without a name gets one, a copy of a named record another; unless its name is given back by an undoing. */
function namingSql(layer: LayerName): string {
  const naming = NAMING_FIELDS[layer];
  if (naming === undefined) return '';
  const field = quoted(naming.field);
  const taken = (name: string): string =>
    `EXISTS (SELECT 1 FROM crownfall.${quoted(layer)} AS t WHERE t.${field} = ${name} AND t.record_id <> NEW.record_id)`;
  return `IF TG_OP = 'INSERT' AND coalesce(crownfall.setting('kind'), '') NOT IN ('undo', 'redo')
      AND (coalesce(NEW.${field}, '') = '' OR ${taken(`NEW.${field}`)}) THEN
    made := coalesce(nullif(NEW.${field}, ''), ${literal(naming.prefix)}) || '-' || NEW.record_id;
    IF ${taken('made')} THEN made := made || '-' || substr(md5(random()::text), 1, 8); END IF;
    NEW.${field} := made;
    NEW.properties := crownfall.with_field(NEW.properties, ${literal(naming.field)}, to_json(made));
  END IF;`;
}

function afterSql(layer: LayerName, fields: readonly StoredField[]): string {
  const ofTree = fields.some(({ name }) => name === 'tree_id');
  const tree = ofTree
    ? `CASE WHEN TG_OP = 'DELETE' THEN OLD.tree_id ELSE coalesce(NEW.tree_id, OLD.tree_id) END`
    : 'NULL';
  return `
CREATE FUNCTION crownfall.${quoted(`after_${layer}`)}() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public AS $$
BEGIN
  IF crownfall.setting('silent') IS NOT NULL THEN RETURN NULL; END IF;
  IF TG_OP = 'UPDATE' AND NEW.version = OLD.version THEN RETURN NULL; END IF;
  PERFORM crownfall.note(${literal(layer)},
    CASE WHEN TG_OP = 'DELETE' THEN OLD.record_id ELSE NEW.record_id END, lower(TG_OP),
    CASE WHEN TG_OP = 'DELETE' THEN OLD.version + 1 ELSE NEW.version END, ${tree},
    CASE WHEN TG_OP <> 'INSERT' THEN crownfall.state_of(OLD.geom, OLD.unfit, OLD.properties) END,
    CASE WHEN TG_OP <> 'DELETE' THEN crownfall.state_of(NEW.geom, NEW.unfit, NEW.properties) END);
  RETURN NULL;
END $$;`;
}
