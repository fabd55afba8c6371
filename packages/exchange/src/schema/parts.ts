/** Small words the schema is written in. */
export type Schema = { readonly [key: string]: unknown };

export const NUMBER: Schema = { type: 'number' };
export const NOT_NEGATIVE: Schema = { type: 'number', minimum: 0 };
export const TEXT: Schema = { type: 'string' };
export const VERDICT: Schema = { enum: ['pass', 'note', 'fail'] };
export const TRIPLE: Schema = {
  type: 'array',
  prefixItems: [NUMBER, NUMBER, NUMBER],
  minItems: 3,
  items: false,
};

/** The value or `null`. */
export const nullable = (schema: Schema): Schema => ({ anyOf: [schema, { type: 'null' }] });

/** An object with exactly these keys, all of them there. */
export const exactly = (properties: Readonly<Record<string, Schema>>, about?: string): Schema => ({
  type: 'object',
  ...(about === undefined ? {} : { description: about }),
  properties,
  required: Object.keys(properties),
  additionalProperties: false,
});

export const listOf = (items: Schema): Schema => ({ type: 'array', items });

/** A value with a line about it. */
export const about = (schema: Schema, description: string): Schema => ({ ...schema, description });

/** A shape told once, under `$defs`. */
export const ref = (name: string): Schema => ({ $ref: `#/$defs/${name}` });
