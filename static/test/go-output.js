/** The tests that failed in what `go test` printed, as `make test-one` takes them: "./internal/oil:TestX". */
export function failedInGo(output) {
  const failed = [];
  let tests = [];
  for (const line of output.split('\n')) {
    const test = line.match(/^--- FAIL: (\S+)/)?.[1];
    if (test) tests.push(test);
    const [, result, module, path = ''] = line.match(/^(ok|FAIL)\s+([\w.-]+)((?:\/\S+)?)\s/) ?? [];
    if (!module) continue;
    if (result === 'FAIL') failed.push(...at(`.${path}`, tests));
    tests = [];
  }
  return failed;
}

const at = (place, tests) => (tests.length ? tests.map((test) => `${place}:${test}`) : [place]);
