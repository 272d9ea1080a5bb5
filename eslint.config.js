import tseslint from 'typescript-eslint';
import { guards } from './test/lint/guards.js';

export default tseslint.config(
  { ignores: ['dist/', 'output/', 'node_modules/', 'coverage/'] },
  ...tseslint.configs.recommendedTypeChecked,
  ...tseslint.configs.stylisticTypeChecked,
  {
    languageOptions: {
      parserOptions: { project: './tsconfig.json' },
    },
    rules: {
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', ignoreRestSiblings: true },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      // A named cast says what an index within bounds gives; a bare ! says nothing.
      '@typescript-eslint/non-nullable-type-assertion-style': 'off',
    },
  },
  ...guards,
);
