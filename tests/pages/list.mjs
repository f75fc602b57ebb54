// The pages that are opened. To add one: its name, the arguments of the program that
// print it on standard output, and where it differs, what is expected of it.
//   files:         what is written beforehand; @NAME among the arguments is one of them
//   heads: false   its printed pages begin with no head (class `run`)
//   shots: false   not looked at on screens, only printed
//   grey: false    printed with a colour (a page with photographs)

const demo = (name) => `demo-surveys/${name}.csv`;
const ours = (name) => `tests/reports/surveys/${name}.csv`;
const check = (survey, ...more) => ['check', survey, '--format', 'html', ...more];

// a red picture of 2 × 2 pixels, and what is none
const picture = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAEElEQVR4nGP8z8AARAwQCgAf7gP9i18U1AAAAABJRU5ErkJggg==', 'base64');
const hostile = `unit,guard,item,reading,note
,,property,"<b>the ""red"" house</b>",
2A & 2B,<i>deck</i>,place,deck,"</style><script>alert(1)</script>"
2A & 2B,<i>deck</i>,drop,4 ft,
2A & 2B,<i>deck</i>,height,34 in,
2A & 2B,<i>deck</i>,height,2 ft 11 7/8 in,averyveryveryveryveryverylongwordwithoutanyblankthatgoesonandonandonandonandonandon
2A & 2B,<i>deck</i>,opening,4 1/2 in,
2A & 2B,<i>deck</i>,photo,deck.png,"the ""third"" <bay>"
2A & 2B,<i>deck</i>,photo,broken.jpg,
`;

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
  {
    name: 'photographs-and-hostile-names',
    files: { 's.csv': hostile, 'deck.png': picture, 'broken.jpg': '<svg onload="alert(1)">' },
    args: check('@s.csv'),
    grey: false,
  },
  { name: 'compared', args: ['compare', ours('twelve-flats'), demo('twelve-flats'), '--format', 'html'] },
];
