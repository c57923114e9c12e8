import { toJsonSchema } from '@valibot/to-json-schema';

/**
 * The parts of the book's own checks that decide what a file may look like.
 * @typedef {import('valibot').GenericSchema<unknown, any>} Schema
 * @typedef {{ format: string, version: number, book: Schema, stage: unknown, stageForms: readonly Schema[] }} BookForm
 */

/** JSON has no number that is not finite. */
const ignoreActions = ['finite'];

/**
 * A JSON Schema (draft 2020-12) of a `*.pourbook.json` file, made from the checks the program itself reads with.
 * @param {BookForm} form
 * @returns {Record<string, unknown>}
 */
export function bookJsonSchema({ format, version, book, stage, stageForms }) {
  const target = /** @type {const} */ ('draft-2020-12');
  const { $schema, $defs, ...shape } = toJsonSchema(book, {
    target,
    ignoreActions,
    overrideSchema: ({ valibotSchema }) => {
      if (valibotSchema.type !== 'lazy') return undefined;
      if (valibotSchema !== stage)
        throw new Error('A choice by field whose forms are not known to the JSON Schema.');
      return { anyOf: stageForms.map(formOfStage) };
    },
  });
  return {
    $schema,
    title: 'Quietpour book',
    description:
      'What stands in a *.pourbook.json file: lengths in m, angles in rad, time in s, mass in kg, temperature in K. Each field: docs/book-file.md.',
    type: 'object',
    properties: { format: { const: format }, version: { const: version }, book: shape },
    required: ['format', 'version', 'book'],
    additionalProperties: false,
  };

  /** @param {Schema} one */
  function formOfStage(one) {
    const { $schema: _, ...alone } = toJsonSchema(one, { target, ignoreActions });
    return alone;
  }
}
