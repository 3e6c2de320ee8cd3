/**
 * An SQLite file written whole, without the SQLite library: tables of rows that are only read afterwards. For browsers, where the
 * library would cost more than the rest of the page. Source: “Database File Format”, sqlite.org/fileformat2.html, sections 1.3
 * (header), 1.6 (b-tree pages), 2.1 (records), 2.6 (schema table).
 */

export type SqliteValue = null | number | string | Uint8Array;

export interface SqliteTable {
  readonly name: string;
  /** The statement that would create it. */
  readonly sql: string;
  /** A column that is the row id holds null. */
  readonly rows: readonly (readonly SqliteValue[])[];
  /** Ascending; default 1, 2, 3, … */
  readonly rowIds?: readonly number[];
  /** Columns of each PRIMARY KEY and UNIQUE that is not the row id, in the order in which the statement names them. */
  readonly uniques?: readonly (readonly number[])[];
}

export interface SqliteHead {
  readonly applicationId: number;
  readonly userVersion: number;
}

/** Large enough for the schema of any file of ours on the first page. */
const PAGE_BYTES = 16384;
const HEAD_BYTES = 100;
const PAGE = { tableLeaf: 13, tableInner: 5, indexLeaf: 10 } as const;

/**
 * The bytes of the file. RangeError when a unique key's rows do not fit on one page, or the schema not on the first.
 *
 * @example sqliteFile([{ name: 't', sql: 'CREATE TABLE t (a)', rows: [[1]] }], { applicationId: 0, userVersion: 0 }) // 32768 bytes
 */
export function sqliteFile(tables: readonly SqliteTable[], head: SqliteHead): Uint8Array {
  // The first page is the schema's, written last.
  const pages = new Pages();
  const schema = tables.flatMap(({ name, sql, rows, rowIds, uniques = [] }): SqliteValue[][] => [
    ['table', name, name, tableTree(pages, rows, rowIds), sql],
    ...uniques.map((columns, i) => [
      'index',
      `sqlite_autoindex_${name}_${i + 1}`,
      name,
      indexPage(pages, rows, columns),
      null,
    ]),
  ]);
  const cells = schema.map((row, i) => tableCell(pages, i + 1, row));
  pages.put(1, pageOf(PAGE.tableLeaf, cells, { from: HEAD_BYTES }));
  return pages.file(head);
}

class Pages {
  readonly #pages: Uint8Array[] = [new Uint8Array(PAGE_BYTES)];

  add(page: Uint8Array): number {
    return this.#pages.push(page);
  }

  put(number: number, page: Uint8Array): void {
    this.#pages[number - 1] = page;
  }

  file({ applicationId, userVersion }: SqliteHead): Uint8Array {
    const file = new Uint8Array(this.#pages.length * PAGE_BYTES);
    for (const [i, page] of this.#pages.entries()) file.set(page, i * PAGE_BYTES);
    file.set(new TextEncoder().encode('SQLite format 3\0'));
    const view = new DataView(file.buffer);
    view.setUint16(16, PAGE_BYTES);
    // Journal as of old, no reserved bytes, payload fractions as prescribed.
    file.set([1, 1, 0, 64, 32, 32], 18);
    const words: Readonly<Record<number, number>> = {
      24: 1, // change counter
      28: this.#pages.length,
      40: 1, // schema cookie
      44: 4, // schema format
      56: 1, // UTF-8
      60: userVersion,
      68: applicationId,
      92: 1, // the change counter that the next word holds for
      96: 3_040_000,
    };
    for (const [at, word] of Object.entries(words)) view.setUint32(Number(at), word);
    return file;
  }
}

/** Number of the root page of the rows' tree. */
function tableTree(pages: Pages, rows: readonly (readonly SqliteValue[])[], rowIds?: readonly number[]): number {
  const cells = rows.map((row, i) => {
    const last = rowIds?.[i] ?? i + 1;
    return { bytes: tableCell(pages, last, row), last };
  });
  let level = packed(cells).map((group) => ({
    page: pages.add(
      pageOf(
        PAGE.tableLeaf,
        group.map(({ bytes }) => bytes),
      ),
    ),
    last: group.at(-1)?.last ?? 0,
  }));
  while (level.length > 1) {
    const inner = level.map(({ page, last }) => ({ bytes: joined([word(page), varint(last)]), page, last }));
    level = packed(inner).map((group) => {
      const right = group[group.length - 1];
      const bytes = group.slice(0, -1).map((each) => each.bytes);
      return { page: pages.add(pageOf(PAGE.tableInner, bytes, { right: right.page })), last: right.last };
    });
  }
  return level[0].page;
}

function indexPage(pages: Pages, rows: readonly (readonly SqliteValue[])[], columns: readonly number[]): number {
  const keys = rows.map((row, i) => [...columns.map((column) => row[column]), i + 1]);
  // Texts compare by their bytes.
  keys.sort((a, b) => (String(a) < String(b) ? -1 : 1));
  const cells = keys.map((key) => {
    const payload = record(key);
    return joined([varint(payload.length), payload]);
  });
  return pages.add(pageOf(PAGE.indexLeaf, cells));
}

/** Cells by page, in order; one empty page when there are none. */
function packed<Cell extends { readonly bytes: Uint8Array }>(cells: readonly Cell[]): Cell[][] {
  const groups: Cell[][] = [[]];
  let room = PAGE_BYTES - 12;
  for (const cell of cells) {
    const needs = cell.bytes.length + 2;
    if (needs > room) {
      groups.push([]);
      room = PAGE_BYTES - 12;
    }
    groups[groups.length - 1].push(cell);
    room -= needs;
  }
  return groups;
}

interface PageShape {
  /** Where the page's own head begins. */
  readonly from?: number;
  /** The right-most child of an inner page. */
  readonly right?: number;
}

function pageOf(type: number, cells: readonly Uint8Array[], { from = 0, right }: PageShape = {}): Uint8Array {
  const page = new Uint8Array(PAGE_BYTES);
  const view = new DataView(page.buffer);
  const headBytes = right === undefined ? 8 : 12;
  let end = PAGE_BYTES;
  for (const [i, cell] of cells.entries()) {
    end -= cell.length;
    if (end < from + headBytes + 2 * cells.length)
      throw new RangeError('sqliteFile: a page is too small for its cells');
    page.set(cell, end);
    view.setUint16(from + headBytes + 2 * i, end);
  }
  view.setUint8(from, type);
  view.setUint16(from + 3, cells.length);
  view.setUint16(from + 5, end);
  if (right !== undefined) view.setUint32(from + 8, right);
  return page;
}

/** A row; what is too long for the page goes on in a chain of pages (section 1.6, “cell payload overflow pages”). */
function tableCell(pages: Pages, rowId: number, row: readonly SqliteValue[]): Uint8Array {
  const payload = record(row);
  const head = [varint(payload.length), varint(rowId)];
  const most = PAGE_BYTES - 35;
  if (payload.length <= most) return joined([...head, payload]);
  const least = Math.floor(((PAGE_BYTES - 12) * 32) / 255) - 23;
  const fitting = least + ((payload.length - least) % (PAGE_BYTES - 4));
  const kept = fitting <= most ? fitting : least;
  let next = 0;
  const starts: number[] = [];
  for (let at = kept; at < payload.length; at += PAGE_BYTES - 4) starts.push(at);
  for (const at of starts.reverse()) {
    const page = new Uint8Array(PAGE_BYTES);
    page.set(word(next));
    page.set(payload.subarray(at, at + PAGE_BYTES - 4), 4);
    next = pages.add(page);
  }
  return joined([...head, payload.subarray(0, kept), word(next)]);
}

/** Section 2.1: the types, with the length of their list before it, then the values. */
function record(values: readonly SqliteValue[]): Uint8Array {
  const coded = values.map(codeOf);
  const types = joined(coded.map(({ type }) => varint(type)));
  // The length counts itself; lists of ours take one byte or two.
  const bytes = types.length + 1 < 128 ? 1 : 2;
  return joined([varint(types.length + bytes), types, ...coded.map(({ value }) => value)]);
}

const NOTHING = new Uint8Array();

function codeOf(value: SqliteValue): { readonly type: number; readonly value: Uint8Array } {
  if (value === null) return { type: 0, value: NOTHING };
  if (typeof value === 'string') {
    const bytes = new TextEncoder().encode(value);
    return { type: 2 * bytes.length + 13, value: bytes };
  }
  if (value instanceof Uint8Array) return { type: 2 * value.length + 12, value };
  const bytes = new Uint8Array(8);
  const view = new DataView(bytes.buffer);
  if (Number.isSafeInteger(value) && !Object.is(value, -0)) {
    view.setBigInt64(0, BigInt(value));
    return { type: 6, value: bytes };
  }
  view.setFloat64(0, value);
  return { type: 7, value: bytes };
}

/** Seven bits a byte, the highest first; all but the last have the top bit set. Negative ones are nine bytes, the last whole. */
function varint(value: number): Uint8Array {
  if (value < 0) {
    const bits = BigInt.asUintN(64, BigInt(value));
    const bytes = [Number(bits & 0xffn)];
    for (let left = bits >> 8n; bytes.length < 9; left >>= 7n) bytes.unshift(0x80 | Number(left & 0x7fn));
    return Uint8Array.from(bytes);
  }
  const bytes = [value % 128];
  for (let left = Math.floor(value / 128); left > 0; left = Math.floor(left / 128)) bytes.unshift(128 + (left % 128));
  return Uint8Array.from(bytes);
}

function word(value: number): Uint8Array {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setUint32(0, value);
  return bytes;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
