/** Condenses the last benchmark run into a table kept per version: name, mean, median of the samples, spread. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';

const folder = new URL('./results/', import.meta.url);
const raw = new URL('latest.json', folder);
const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
const { files } = JSON.parse(readFileSync(raw, 'utf8'));
const ms = (value) => (value < 1 ? value.toFixed(3) : value < 100 ? value.toFixed(2) : value.toFixed(0));

const rows = files.flatMap(({ groups }) =>
  groups.flatMap(({ fullName, benchmarks }) => [
    `\n## ${fullName.split(' > ').slice(1).join(' > ')}\n`,
    '| what | mean, ms | fastest, ms | ± % | samples |',
    '|---|---|---|---|---|',
    ...benchmarks.map(
      (b) => `| ${b.name} | ${ms(b.mean)} | ${ms(b.min)} | ${b.rme.toFixed(0)} | ${b.sampleCount} |`,
    ),
  ]),
);
const where = `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}`;
writeFileSync(
  new URL(`${version}.md`, folder),
  `# Benchmarks, version ${version}\n\n${where}. Seeded; one run, side by side.\n${rows.join('\n')}\n`,
);
rmSync(raw);
