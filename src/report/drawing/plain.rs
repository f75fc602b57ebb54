//! A drawing in plain ASCII.

use crate::items::At;
use crate::items::COLUMN;
use crate::items::DrawingScene;
use crate::items::Mark;
use crate::items::ROW;

/// The lines of a drawing, without blanks at their ends. Posts are `#`,
/// balusters `|`, level rails `=`, what is solid `/`, dimensions arrows.
#[must_use]
pub fn plain(scene: &DrawingScene) -> Vec<String> {
    let mut canvas = Canvas {
        columns: scene.columns,
        rows: scene.rows,
        cells: vec![vec![' '; size(scene.columns)]; size(scene.rows)],
    };
    for mark in scene.marks {
        canvas.mark(mark);
    }
    let lines = canvas.cells.iter();
    lines
        .map(|line| line.iter().collect::<String>().trim_end().to_owned())
        .collect()
}

fn size(count: i32) -> usize {
    usize::try_from(count).unwrap_or(0)
}

struct Canvas {
    columns: i32,
    rows: i32,
    cells: Vec<Vec<char>>,
}

impl Canvas {
    fn put_sign(&mut self, x: i32, y: i32, sign: char) {
        if (0..self.columns).contains(&x) && (0..self.rows).contains(&y) {
            self.cells[size(y)][size(x)] = sign;
        }
    }

    fn mark(&mut self, mark: &Mark) {
        match *mark {
            Mark::Ball { at, across } => self.ball(at, across),
            Mark::Baluster { x, rows } => self.fill(at(x, rows.0), at(x, rows.1), '|'),
            Mark::Box(from, to) => self.outline(from, to),
            Mark::Dots(from, to) => self.dots(from, to),
            Mark::Label(from, text) => {
                for (x, sign) in (from.x..).zip(text.chars()) {
                    self.put_sign(x, from.y, sign);
                }
            }
            Mark::Post { x, rows } => self.fill(at(x, rows.0), at(x, rows.1), '#'),
            Mark::Rail(from, to) => self.rail(from, to),
            Mark::Solid(from, to) => self.fill(from, to, '/'),
            Mark::Span(from, to, _) => self.span(from, to),
        }
    }

    fn fill(&mut self, from: At, to: At, sign: char) {
        for y in from.y..=to.y {
            for x in from.x..=to.x {
                self.put_sign(x, y, sign);
            }
        }
    }

    fn outline(&mut self, from: At, to: At) {
        self.fill(from, to, ' ');
        for y in [from.y, to.y] {
            self.fill(at(from.x, y), at(to.x, y), '-');
            self.put_sign(from.x, y, '+');
            self.put_sign(to.x, y, '+');
        }
        for x in [from.x, to.x] {
            self.fill(at(x, from.y + 1), at(x, to.y - 1), '|');
        }
    }

    fn span(&mut self, from: At, to: At) {
        let level = from.y == to.y;
        let (between, first, last) = if level {
            ('-', '<', '>')
        } else {
            (':', '^', 'v')
        };
        self.fill(from, to, between);
        self.put_sign(from.x, from.y, first);
        self.put_sign(to.x, to.y, last);
    }

    fn ball(&mut self, centre: At, across: i32) {
        let radius = across * COLUMN / 2;
        let tall = radius / ROW;
        for row in -tall..=tall {
            let reach = (radius * radius - row * row * ROW * ROW).isqrt() / COLUMN;
            let (y, left, right) = (centre.y + row, centre.x - reach, centre.x + reach);
            let (side, end, middle) = match row {
                row if row == -tall => ('.', '.', '-'),
                row if row == tall => ('\'', '\'', '-'),
                _ => ('(', ')', ' '),
            };
            self.fill(at(left, y), at(right, y), middle);
            self.put_sign(left, y, side);
            self.put_sign(right, y, end);
        }
    }

    /// A level rail, or one that climbs or falls: `'`, `-` and `.` stand for the
    /// upper, middle and lower third of a row.
    fn rail(&mut self, from: At, to: At) {
        if from.y == to.y {
            self.fill(from, to, '=');
            return;
        }
        for x in from.x..=to.x {
            let thirds = thirds(from, to, x);
            let sign = match thirds.rem_euclid(3) {
                0 => '\'',
                1 => '-',
                _ => '.',
            };
            self.put_sign(x, thirds.div_euclid(3), sign);
        }
    }

    fn dots(&mut self, from: At, to: At) {
        for x in (from.x..=to.x).step_by(2) {
            let y = thirds(from, to, x).div_euclid(3);
            if (0..self.columns).contains(&x)
                && (0..self.rows).contains(&y)
                && self.cells[size(y)][size(x)] == ' '
            {
                self.put_sign(x, y, '.');
            }
        }
    }
}

/// How far down a line is at a column, in thirds of a row.
fn thirds(from: At, to: At, x: i32) -> i32 {
    let run = (to.x - from.x).max(1);
    3 * from.y + (3 * (to.y - from.y) * (x - from.x)).div_euclid(run)
}

const fn at(x: i32, y: i32) -> At {
    At { x, y }
}
