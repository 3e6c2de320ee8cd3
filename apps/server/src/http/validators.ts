/** How requests are checked: query and path arrive as text and are read as what they should be; bodies must be it already. */
import { Ajv } from 'ajv';
import formats from 'ajv-formats';
import type { FastifySchemaCompiler } from 'fastify';

export function validators(): FastifySchemaCompiler<object> {
  const settings = { strict: false, removeAdditional: false, useDefaults: true, allErrors: false } as const;
  const strict = withFormats(new Ajv({ ...settings, coerceTypes: false }));
  const reading = withFormats(new Ajv({ ...settings, coerceTypes: true }));
  return ({ schema, httpPart }) => (httpPart === 'body' ? strict : reading).compile(schema);
}

/** The package's types name its default export otherwise than its code does. */
function withFormats(ajv: Ajv): Ajv {
  const add = formats as unknown as (to: Ajv) => Ajv;
  return add(ajv);
}
