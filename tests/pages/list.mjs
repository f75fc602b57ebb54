// The pages that are opened. To add one: its name, the arguments of the program that
// print it, and where it differs, what is expected of it.
//   heads: every printed page begins with the head of its sheet (class `run`)
//   shots: looked at on screens and in every scheme of colours
//   grey:  printed without any colour (a page with photographs is not)

const demo = (name) => `demo-surveys/${name}.csv`;
const check = (survey, ...more) => ['check', survey, '--format', 'html', ...more];

export const pages = [
  { name: 'family-house', args: check(demo('family-house')) },
  { name: 'one-railing', args: check(demo('one-railing')) },
  { name: 'old-house', args: check(demo('old-house')) },
  { name: 'city-flat-uk', args: check(demo('city-flat-uk')) },
  { name: 'load-path', args: check(demo('load-path')) },
  { name: 'twelve-flats', args: check(demo('twelve-flats')) },
  { name: 'a-house-with-rules', args: check('tests/reports/surveys/house.csv', '--rules', 'us-dwelling-2018') },
  { name: 'a-landing', args: check('tests/reports/surveys/one-landing.csv') },
];
