// How the page's modules are put together, for the page (`build.mjs`) and for the tests of its parts.
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export const here = fileURLToPath(new URL('.', import.meta.url));

// The text of an entry (a file's name, or `stdin` as esbuild has it) with all that it imports.
export async function bundled(entry, options) {
  const { outputFiles } = await build({
    ...(typeof entry === 'string' ? { entryPoints: [entry] } : { stdin: { resolveDir: here, ...entry } }),
    absWorkingDir: here, bundle: true, target: 'es2022', write: false, charset: 'utf8', legalComments: 'inline', logLevel: 'error',
    jsx: 'automatic', jsxImportSource: 'preact', tsconfigRaw: '{}', ...options,
  });
  return outputFiles[0].text.trim();
}
