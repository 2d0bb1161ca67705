/** How many tests passed, failed and were skipped, from the files that the test runners leave. */
export type Count = { passed: number; failed: number; skipped: number };

/** A file of tests that did not even load counts as one failure: it holds tests that nobody ran. */
export function countVitest(json: string): Count {
  const { testResults } = JSON.parse(json) as {
    testResults: { status: string; assertionResults: { status: string }[] }[];
  };
  const tests = testResults.flatMap(({ assertionResults }) => assertionResults.map(({ status }) => status));
  const unloaded = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  );
  return {
    passed: tests.filter((status) => status === 'passed').length,
    failed: tests.filter((status) => status === 'failed').length + unloaded.length,
    skipped: tests.filter((status) => status !== 'passed' && status !== 'failed').length,
  };
}

/** Errors outside any test (a setting that is wrong, a server that does not start) count as failures. */
export function countPlaywright(json: string): Count {
  const { stats, errors } = JSON.parse(json) as {
    stats: { expected: number; unexpected: number; flaky: number; skipped: number };
    errors: unknown[];
  };
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length, skipped: stats.skipped };
}
