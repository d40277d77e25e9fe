import svelte from 'eslint-plugin-svelte'
import ts from 'typescript-eslint'

const SUBJECTS = [
  'desk', 'courses', 'outcome', 'ready', 'venue', 'group', 'wall', 'line', 'frames', 'stone', 'days', 'lessons', 'kit',
  'store', 'load', 'money', 'pages', 'today', 'after', 'words',
]
const TAURI = { group: ['@tauri-apps/*'], message: 'Only src/backend.ts speaks to Rust.' }
const STORES = { group: ['svelte/store'], message: 'Use a class with $state fields.' }
const forbid = (...patterns) => ({ 'no-restricted-imports': ['error', { patterns }] })

export default ts.config(
  { ignores: ['dist/**'] },
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  { files: ['**/*.svelte', '**/*.svelte.ts'], languageOptions: { parserOptions: { parser: ts.parser } } },
  {
    rules: {
      ...forbid(TAURI, STORES),
      'max-lines': ['error', 200],
      'no-restricted-syntax': ['error',
        { selector: "MemberExpression[object.name='Math']", message: 'Sums belong in craft.' },
        { selector: "CallExpression[callee.name='$effect']", message: 'Use $derived or an event handler.' },
        { selector: "NewExpression[callee.name='Date'], MemberExpression[object.name='Date']", message: 'Only src/clock.svelte.ts reads the clock.' }],
    },
  },
  ...SUBJECTS.map((mine) => ({
    files: [`src/${mine}/**`],
    rules: forbid(TAURI, STORES, {
      group: SUBJECTS.filter((it) => it !== mine).map((it) => `**/${it}/*`),
      message: 'Subjects meet in App.svelte or common/, not here.',
    }),
  })),
  { files: ['src/clock.svelte.ts'], rules: { 'no-restricted-syntax': 'off' } },
  // Where things lie on the screen, and nothing else.
  { files: ['src/common/pixels.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['src/backend.ts'], rules: forbid(STORES) },
  // Generated from Rust: as long as it is, and never edited.
  { files: ['src/bindings/*.ts'], rules: { 'max-lines': 'off' } },
)
