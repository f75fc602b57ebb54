//! The styles of text on a terminal. Meaning never hangs on them.

use owo_colors::Style;
use owo_colors::XtermColors;

use crate::items::Verdict;

/// A colour of the fixed part of the palette of 256, with its red, green and blue:
/// every terminal shows the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct PaletteColour {
    number: u8,
    rgb: [u8; 3],
}

/// What falls short.
const SHORT: PaletteColour = PaletteColour {
    number: 131,
    rgb: [175, 95, 95],
};
/// What nobody can tell yet.
const OPEN: PaletteColour = PaletteColour {
    number: 63,
    rgb: [95, 95, 255],
};
/// What meets.
const MET: PaletteColour = PaletteColour {
    number: 29,
    rgb: [0, 135, 95],
};
/// What does not bear on it.
const ASIDE: PaletteColour = PaletteColour {
    number: 243,
    rgb: [118, 118, 118],
};

fn in_colour(colour: PaletteColour) -> Style {
    Style::new().color(XtermColors::from(colour.number))
}

/// A section's title.
#[must_use]
pub(super) fn heading(text: &str) -> String {
    Style::new().bold().style(text).to_string()
}

/// What comes before everything else.
#[must_use]
pub(super) fn danger(text: &str) -> String {
    in_colour(SHORT).bold().style(text).to_string()
}

/// Text in the colour of a verdict.
#[must_use]
pub(super) fn verdict(text: &str, verdict: Verdict) -> String {
    let style = match verdict {
        Verdict::FallsShort => in_colour(SHORT).bold(),
        Verdict::TooClose | Verdict::NotSettled | Verdict::NotMeasured => in_colour(OPEN),
        Verdict::Meets => in_colour(MET),
        Verdict::DoesNotApply => in_colour(ASIDE),
    };
    style.style(text).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// WCAG 2.1, definitions of relative luminance and contrast ratio, read in the text.
    fn luminance(rgb: [u8; 3]) -> f64 {
        let [r, g, b] = rgb.map(|part| {
            let part = f64::from(part) / 255.0;
            if part <= 0.03928 {
                part / 12.92
            } else {
                libm::pow((part + 0.055) / 1.055, 2.4)
            }
        });
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }

    fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }

    #[test]
    fn the_formula_gives_the_published_extremes() {
        let (white, black) = ([255; 3], [0; 3]);
        assert!((contrast(white, black) - 21.0).abs() < 1e-9);
        assert!((contrast(white, white) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn every_colour_is_read_on_white_and_on_black() {
        for colour in [SHORT, OPEN, MET, ASIDE] {
            for ground in [[255; 3], [0; 3]] {
                let found = contrast(colour.rgb, ground);
                assert!(found >= 4.5, "{colour:?} on {ground:?}: {found}");
            }
        }
    }

    /// The cube of 6 x 6 x 6 (from 16) and the greys (from 232), as terminals show them.
    #[test]
    fn every_number_is_its_colour() {
        for colour in [SHORT, OPEN, MET, ASIDE] {
            let rgb = if colour.number >= 232 {
                [8 + 10 * (colour.number - 232); 3]
            } else {
                let step = |part: u8| [0, 95, 135, 175, 215, 255][usize::from(part)];
                let number = colour.number - 16;
                [number / 36, number / 6 % 6, number % 6].map(step)
            };
            assert_eq!(rgb, colour.rgb, "{}", colour.number);
        }
    }
}
