/**
 * Which folder may import which. Arrows run one way, so that a reader finds what a file needs before it and never
 * behind it.
 */
import boundaries from 'eslint-plugin-boundaries';

/** Inside the core a folder imports only what stands before it; folders of one row do not see each other. */
const core = [
  ['measure'],
  ['formula'],
  ['geometry'],
  ['cloth'],
  ['steps'],
  ['project'],
  ['layout', 'questions', 'speech'],
  ['kit', 'drawing'],
  ['handout'],
];

/** The same inside src/site. */
const site = [['content'], ['check'], ['pages'], ['print'], ['live']];

/** A folder of a group, as an element of its own, with what it may import besides itself. */
function inOrder(group, rows, others) {
  return rows.flatMap((row, i) => {
    const before = rows.slice(0, i).flat();
    return row.map((folder) => ({
      type: `${group} ${folder}`,
      pattern: `src/${group}/${folder}`,
      sees: [...before.map((one) => `${group} ${one}`), ...others],
    }));
  });
}

const coreFolders = inOrder('core', core, []);
const coreTypes = ['core', ...coreFolders.map(({ type }) => type)];
const siteFolders = inOrder('site', site, coreTypes);
const siteTypes = ['site', ...siteFolders.map(({ type }) => type)];

const elements = [
  ...coreFolders,
  { type: 'core', pattern: 'src/core', sees: coreTypes },
  ...siteFolders,
  { type: 'site', pattern: 'src/site', sees: [...siteTypes, ...coreTypes] },
  // The form that an author fills in is made of the same parts as a lesson.
  { type: 'author', pattern: 'src/author', sees: [...siteTypes, ...coreTypes, 'components', 'pages'] },
  { type: 'components', pattern: 'components', sees: coreTypes },
  { type: 'pages', pattern: 'src/{pages,layouts,styles}', sees: [...siteTypes, ...coreTypes, 'components', 'author'] },
];

/** @type {import('eslint').Linter.Config} */
export const arrows = {
  files: ['src/**/*.{ts,svelte,astro}', 'components/**/*.{ts,svelte,astro}'],
  plugins: { boundaries },
  settings: {
    'boundaries/elements': elements.map(({ type, pattern }) => ({ type, pattern })),
    // What a lesson word is, apart from its markup: the check, the handouts and the reference read it.
    'boundaries/files': [{ category: 'word', pattern: 'components/words/{,*/}*.ts' }],
  },
  rules: {
    'boundaries/dependencies': [
      'error',
      {
        default: 'disallow',
        message: 'Arrows run one way: see .config/boundaries.js for what a folder may import.',
        policies: [
          ...elements.map(({ type, sees }) => ({
            from: { element: { type } },
            allow: { to: { element: { type: [type, ...sees] } } },
          })),
          { from: { element: { type: siteTypes } }, allow: { to: { file: { categories: 'word' } } } },
        ],
      },
    ],
  },
};
