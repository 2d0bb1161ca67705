import js from '@eslint/js';
import astro from 'eslint-plugin-astro';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import { defineConfig } from 'eslint/config';
import { arrows } from './boundaries.js';

export default defineConfig(
  { ignores: ['dist/', '.astro/', '.cache/', '.tools/', 'test-results/'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...astro.configs.recommended,
  ...svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
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
);
