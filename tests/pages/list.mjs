// The pages that are opened. To add one: its name, the arguments of the program that
// print it on standard output, and where it differs, what is expected of it.
//   heads: false   its printed pages begin with no head (class `run`)
//   shots: false   not looked at on screens, only printed
//   grey: false    printed with a colour (a page with photographs)

const demo = (name) => `demo-surveys/${name}.csv`;
const ours = (name) => `tests/reports/surveys/${name}.csv`;
const check = (survey, ...more) => ['check', survey, '--format', 'html', ...more];

export const pages = [
  { name: 'family-house', args: check(demo('family-house')) },
  { name: 'one-railing', args: check(demo('one-railing')) },
  { name: 'old-house', args: check(demo('old-house')) },
  { name: 'city-flat-uk', args: check(demo('city-flat-uk')) },
  { name: 'load-path', args: check(demo('load-path')) },
  { name: 'twelve-flats', args: check(demo('twelve-flats')) },
  { name: 'request', args: check(demo('family-house'), '--as', 'request') },
  { name: 'work', args: check(demo('twelve-flats'), '--as', 'work'), shots: false },
  { name: 'record', args: check(demo('old-house'), '--as', 'record'), shots: false },
  { name: 'life-size', args: check(demo('family-house'), '--as', 'life-size') },
  { name: 'compared', args: ['compare', ours('twelve-flats'), demo('twelve-flats'), '--format', 'html'] },
];
