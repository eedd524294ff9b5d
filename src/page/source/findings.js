// What was found, worst first, out of what `check` answers.

const gravity = ['fail', 'unknown', 'warn', 'waived'];

function share({ margin, limit }) {
  if (margin === null) return Infinity;
  return Math.abs(limit) > 0 ? margin / Math.abs(limit) : margin;
}

/** The findings of `check --format json`, in the report's order and under the report's names. */
export function findingsOf(answer) {
  return answer.checks
    .map((each, i) => ({ ...each, id: `judgement-${i + 1}` }))
    .filter((each) => each.verdict !== 'pass')
    .sort((a, b) => gravity.indexOf(a.verdict) - gravity.indexOf(b.verdict) || share(a) - share(b));
}

/** Errors of files, as the checker writes them: "file:line:column: error: what". */
export function errorsOf(text) {
  const errors = [];
  for (const line of text.split('\n')) {
    const found = /^(.+?)(?::(\d+):(\d+))?: error: (.*)$/.exec(line);
    if (found)
      errors.push({ id: `error-${errors.length + 1}`, verdict: 'error', rule: '', route: '', message: found[4], mend: '',
        location: { file: found[1] === 'linewright' ? '' : found[1], line: Number(found[2] || 0), column: Number(found[3] || 0) } });
    else if (errors.length && line.startsWith('help: ')) errors.at(-1).mend = line.slice(6);
  }
  return errors;
}

export function tallyWords(summary) {
  const words = [['fail', 'failed'], ['unknown', 'not known'], ['warn', 'warned'], ['waived', 'waived'], ['pass', 'passed']];
  return words.filter(([key]) => summary[key]).map(([key, word]) => `${summary[key]} ${word}`).join(', ') || 'nothing was judged';
}
