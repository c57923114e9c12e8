/** `node src/setup/bookSchema.js`: writes docs/book.schema.json, the JSON Schema of a book, from src/book/schema.ts. */
import { writeFileSync } from 'node:fs';
import { runnerImport } from 'vite';
import { bookJsonSchema } from './bookJsonSchema.js';
import { inProject } from './paths.js';

/** @param {string} path below src */
async function load(path) {
  const { module } = await runnerImport(inProject(`src/${path}`), {
    root: inProject('.'),
    configFile: false,
    logLevel: 'error',
    resolve: { alias: { $src: inProject('src') } },
  });
  return /** @type {any} */ (module);
}

const { bookSchema, stage, stageForms } = await load('book/schema.ts');
const { BOOK_FORMAT } = await load('book/readBook.ts');
const { BOOK_VERSION } = await load('book/migrations.ts');
const form = { format: BOOK_FORMAT, version: BOOK_VERSION, book: bookSchema, stage, stageForms };
writeFileSync(inProject('docs/book.schema.json'), `${JSON.stringify(bookJsonSchema(form), null, 2)}\n`);
console.log('docs/book.schema.json');
