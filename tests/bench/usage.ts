/** Loaded before a program that is measured (`node --import`): leaves what it used of the machine in the file USAGE. */
import { writeFileSync } from 'node:fs';

process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  writeFileSync(
    process.env.USAGE!,
    JSON.stringify({ seconds: (userCPUTime + systemCPUTime) / 1e6, gigabytes: maxRSS / 1e6 }),
  );
});
