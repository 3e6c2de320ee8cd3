/** Pages of features and single features, put together from text that is ready. */
import type { CollectionName } from '../figures/figures.ts';
import { COLLECTION_NOTES } from './collection-fields.ts';
import { GEOJSON_TYPE, JSON_TYPE, type Link, link } from './documents.ts';
import type { ItemQuery } from './item-query.ts';
import type { ServedCollection } from './served-collection.ts';

/** Where the page was asked for: the collection's address and the query as it was given. */
export interface PageAddress {
  readonly collection: string;
  readonly query: Readonly<Record<string, unknown>>;
}

/** Requirements fc-response, fc-links, fc-timeStamp, fc-numberMatched, fc-numberReturned; links to next and previous page. */
export function itemsDocument(
  served: ServedCollection,
  query: ItemQuery,
  address: PageAddress,
  timeStamp: string,
): Buffer {
  const { matched, page } = served.select(query);
  const head = {
    type: 'FeatureCollection',
    timeStamp,
    numberMatched: matched,
    numberReturned: page.length,
    links: pageLinks(query, matched, page.length, address),
  };
  const pieces: Uint8Array[] = [Buffer.from(`${JSON.stringify(head).slice(0, -1)},"features":[`)];
  page.forEach((position, i) => {
    if (i > 0) pieces.push(COMMA);
    pieces.push(served.text(position));
  });
  pieces.push(END);
  return Buffer.concat(pieces);
}

const COMMA = Buffer.from(',\n');
const END = Buffer.from(']}\n');

/** Requirements f-success, f-links: the feature with its links as a foreign member. */
export function featureDocument(
  served: ServedCollection,
  position: number,
  name: CollectionName,
  base: string,
): Buffer {
  const collection = `${base}/collections/${name}`;
  const links = [
    link(`${collection}/items/${encodeURIComponent(served.set.ids[position])}`, 'self', GEOJSON_TYPE, 'This feature'),
    link(collection, 'collection', JSON_TYPE, COLLECTION_NOTES[name].title),
  ];
  const text = Buffer.from(served.text(position));
  return Buffer.concat([text.subarray(0, -1), Buffer.from(`,"links":${JSON.stringify(links)}}\n`)]);
}

function pageLinks(query: ItemQuery, matched: number, returned: number, address: PageAddress): Link[] {
  const { offset, limit } = query;
  const links = [
    link(pageAddress(address, {}), 'self', GEOJSON_TYPE, 'This page'),
    link(address.collection, 'collection', JSON_TYPE, 'The collection'),
  ];
  if (returned > 0 && offset + returned < matched) {
    links.push(link(pageAddress(address, { offset: offset + returned, limit }), 'next', GEOJSON_TYPE, 'Next page'));
  }
  if (offset > 0) {
    const before = { offset: Math.max(0, offset - limit), limit };
    links.push(link(pageAddress(address, before), 'prev', GEOJSON_TYPE, 'Previous page'));
  }
  return links;
}

function pageAddress({ collection, query }: PageAddress, changed: Readonly<Record<string, number>>): string {
  const all = Object.entries({ ...query, ...changed }).map(([name, value]): [string, string] => [name, String(value)]);
  const text = new URLSearchParams(all).toString();
  return `${collection}/items${text === '' ? '' : `?${text}`}`;
}
