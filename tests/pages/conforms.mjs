// HTML by the rules of a conformance checker.
import { HtmlValidate } from 'html-validate';

const validate = new HtmlValidate({ extends: ['html-validate:standard'] });

/// What the checker says against a page, by line and column.
export async function nonconforming(html) {
  const report = await validate.validateString(html);
  return report.results.flatMap((result) => result.messages)
    .map((m) => `${m.line}:${m.column} ${m.ruleId}: ${m.message}`);
}
