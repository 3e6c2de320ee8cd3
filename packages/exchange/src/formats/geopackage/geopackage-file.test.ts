/** Files written without SQLite, opened by SQLite itself (better-sqlite3) and by GDAL. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, test } from 'vitest';
import { readGeometryBlob } from '../../store/geopackage/geometry-blob.ts';
import { geopackageFile } from './geopackage-file.ts';
import { sqliteFile } from './sqlite-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'crownfall-gpkg-'));
afterAll(() => rmSync(folder, { recursive: true }));

const opened = (bytes: Uint8Array): Database.Database => new Database(Buffer.from(bytes));

const ring = (x: number, vertices: number): Float64Array =>
  Float64Array.from({ length: 2 * vertices }, (_, i) => {
    const angle = (2 * Math.PI * Math.floor(i / 2)) / vertices;
    return i % 2 === 0 ? x + 0.001 * Math.cos(angle) : 28 + 0.001 * Math.sin(angle);
  });

describe('an SQLite file written whole', () => {
  test('holds all rows, in trees of one level and more, and is sound', () => {
    const rows = Array.from({ length: 20_000 }, (_, i) => [null, `row ${i}`, i / 7, null, Uint8Array.of(i % 256)]);
    const sql = 'CREATE TABLE t (id INTEGER PRIMARY KEY, name TEXT, x REAL, n, b BLOB)';
    const db = opened(sqliteFile([{ name: 't', sql, rows }], { applicationId: 7, userVersion: 9 }));
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    const { n, s } = db.prepare('SELECT count(*) n, sum(x) s FROM t').get() as { n: number; s: number };
    expect(n).toBe(20_000);
    expect(s).toBeCloseTo(
      rows.reduce((sum, row) => sum + Number(row[2]), 0),
      3,
    );
    expect(db.prepare('SELECT * FROM t WHERE id = 15001').get()).toMatchObject({ name: 'row 15000', n: null });
  });

  test.each([16_340, 16_349, 16_350, 40_000, 200_000])('a value of %i bytes is kept whole', (length) => {
    const value = Uint8Array.from({ length }, (_, i) => i % 251);
    const db = opened(
      sqliteFile([{ name: 't', sql: 'CREATE TABLE t (b)', rows: [[value]] }], { applicationId: 0, userVersion: 0 }),
    );
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect((db.prepare('SELECT b FROM t').get() as { b: Buffer }).b.equals(Buffer.from(value))).toBe(true);
  });
});

describe('a layer as a GeoPackage file', () => {
  const features = [1, 2, 3].map((n) => ({
    geometry: { kind: 'area' as const, polygons: [[ring(-80 + n / 100, n === 3 ? 5000 : 12)]] },
    properties: { block_id: `B${n}`, 'stained "m2"': n / 3, calibrated: n > 1, parts: { a: n }, gone: null },
  }));
  const layer = { name: 'blocks', description: 'ranked', features, madeAt: '2026-05-20T08:00:00.000Z' };

  test('SQLite finds it sound, with every value and vertex', () => {
    const db = opened(geopackageFile(layer));
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(db.pragma('foreign_key_check')).toEqual([]);
    expect(db.pragma('application_id', { simple: true })).toBe(0x47504b47);
    expect(db.prepare('SELECT srs_id FROM gpkg_spatial_ref_sys').pluck().all()).toEqual([-1, 0, 4326]);
    const rows = db.prepare('SELECT * FROM blocks').all() as Record<string, unknown>[];
    expect(rows.map(({ fid, block_id }) => [fid, block_id])).toEqual([
      [1, 'B1'],
      [2, 'B2'],
      [3, 'B3'],
    ]);
    expect(rows[1]).toMatchObject({ 'stained "m2"': 2 / 3, calibrated: 1, parts: '{"a":2}', gone: null });
    expect(readGeometryBlob(rows[2].geom as Uint8Array).geometry).toEqual(features[2].geometry);
  });

  test('GDAL opens it', () => {
    const path = join(folder, 'blocks.gpkg');
    writeFileSync(path, geopackageFile(layer));
    const gdal = spawnSync('ogrinfo', ['-so', path, 'blocks'], { encoding: 'utf8' });
    if (gdal.error !== undefined) return console.warn('ogrinfo is not here: not tried with GDAL.');
    expect(gdal.stderr).toBe('');
    expect(gdal.stdout).toContain('Feature Count: 3');
    expect(gdal.stdout).toContain('calibrated: Integer(Boolean)');
  });

  test('no features give an empty layer', () => {
    const db = opened(geopackageFile({ ...layer, features: [] }));
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(db.prepare('SELECT count(*) FROM blocks').pluck().get()).toBe(0);
  });
});
