import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { conditions: ['@runback/source', 'node', 'import', 'default'] },
  ssr: { resolve: { conditions: ['@runback/source', 'node', 'import', 'default'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    reporters: ['default', './tests/closing-line.ts'],
    testTimeout: 60_000,
    // A browser on a busy machine takes its time; a wrong answer is still told.
    expect: { poll: { timeout: 20_000 } },
  },
});
