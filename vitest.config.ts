import { defineConfig } from 'vitest/config';

export default defineConfig({
  // The published tables are imported as text, by the bundle and by the tests alike.
  plugins: [
    {
      name: 'csv-as-text',
      enforce: 'pre',
      transform(code, id) {
        return id.endsWith('.csv') ? `export default ${JSON.stringify(code)}` : undefined;
      },
    },
  ],
  test: { include: ['test/**/*.test.ts'], testTimeout: 60_000 },
});
