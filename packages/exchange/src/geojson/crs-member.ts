/**
 * The system that a `crs` member names (GeoJSON format specification 1.0, 2008, section 3: `name`; older still: `EPSG` with
 * a code). `undefined` for null and absent; a link or anything else gives its JSON text, which no one can resolve.
 */
export function crsOfMember(member: unknown): string | undefined {
  if (member === undefined || member === null) return undefined;
  const { type, properties } = member as { type?: unknown; properties?: { name?: unknown; code?: unknown } };
  if (type === 'name' && typeof properties?.name === 'string') return properties.name;
  if (type === 'EPSG' && properties?.code !== undefined) return `EPSG:${properties.code}`;
  return JSON.stringify(member);
}
