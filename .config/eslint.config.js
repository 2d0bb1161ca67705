import { fileURLToPath } from 'node:url';
import js from '@eslint/js';
import astro from 'eslint-plugin-astro';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import { defineConfig } from 'eslint/config';
import { arrows } from './boundaries.js';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig(
  { ignores: ['dist/', '.astro/', '.cache/', '.tools/', 'test-results/'] },
  js.configs.recommended,
  ...ts.configs.recommendedTypeChecked,
  ...astro.configs.recommended,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      globals: { ...globals.browser, ...globals.node },
      parserOptions: { projectService: true, tsconfigRootDir: root, extraFileExtensions: ['.svelte'] },
    },
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // What no page watches, such as what has been read once, is kept in plain maps.
      'svelte/prefer-svelte-reactivity': 'off',
    },
  },
  arrows,
  {
    files: ['src/core/**'],
    ignores: ['src/core/project/schema.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        { paths: [{ name: 'zod', message: 'Zod stays in schema.ts, out of lessons.' }] },
      ],
    },
  },
  // TypeScript itself tells undefined names apart from types; the plain rule cannot.
  { files: ['**/*.ts', '**/*.svelte', '**/*.astro'], rules: { 'no-undef': 'off' } },
  { files: ['**/*.svelte', '**/*.svelte.ts'], languageOptions: { parserOptions: { parser: ts.parser } } },
  // The linter does not know what a part hands to a function written in markup; svelte-check does.
  {
    files: ['**/*.svelte'],
    rules: {
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  // Vitest’s matchers in place of a value are of any type; a stand-in may be asynchronous and wait for nothing.
  {
    files: ['tests/**/*.ts'],
    rules: {
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/require-await': 'off',
    },
  },
  // `astro check` looks at the types of pages; plain scripts have none.
  {
    files: ['**/*.astro', '**/*.astro/*.ts', '**/*.js', '**/*.cjs', '**/*.mjs'],
    ...ts.configs.disableTypeChecked,
    languageOptions: { parserOptions: { projectService: false, project: null } },
  },
);
