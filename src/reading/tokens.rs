//! Cuts a reading into words, numbers and marks, each with its place.

use std::ops::Range;

use crate::reading::error::ReadingError;
use crate::reading::error::quoted;
use crate::reading::error::shown;

/// One word, number or mark.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Lexeme {
    Colon,
    Comma,
    /// A hyphen, a dash or a minus sign.
    Dash,
    Degree,
    Dot,
    /// An inch mark in any of its forms, two apostrophes too.
    DoublePrime,
    /// Digits over digits, or a single-character fraction.
    Fraction {
        numerator: String,
        denominator: String,
    },
    Greater,
    Less,
    /// Digits, with points or commas between or a point in front.
    Number(String),
    /// Anything else.
    Other(char),
    Percent,
    Plus,
    PlusMinus,
    /// A foot mark in any of its forms.
    Prime,
    Slash,
    Times,
    /// Letters, in lower case; an apostrophe within belongs to it.
    Word(String),
}

impl Lexeme {
    /// The word, where it is one.
    pub(super) fn as_word(&self) -> Option<&str> {
        match self {
            Lexeme::Word(word) => Some(word),
            Lexeme::Colon
            | Lexeme::Comma
            | Lexeme::Dash
            | Lexeme::Degree
            | Lexeme::Dot
            | Lexeme::DoublePrime
            | Lexeme::Fraction { .. }
            | Lexeme::Greater
            | Lexeme::Less
            | Lexeme::Number(_)
            | Lexeme::Other(_)
            | Lexeme::Percent
            | Lexeme::Plus
            | Lexeme::PlusMinus
            | Lexeme::Prime
            | Lexeme::Slash
            | Lexeme::Times => None,
        }
    }
}

/// A lexeme and where it stands.
#[derive(Clone, Debug)]
pub(super) struct Token {
    pub(super) lexeme: Lexeme,
    pub(super) span: Range<usize>,
}

/// A reading's tokens with a place among them.
#[derive(Debug)]
pub(super) struct Cursor<'t> {
    text: &'t str,
    tokens: Vec<Token>,
    at: usize,
    /// What was accepted with a warning so far.
    pub(super) cautions: Vec<String>,
}

impl<'t> Cursor<'t> {
    pub(super) fn new(text: &'t str) -> Cursor<'t> {
        Cursor {
            text,
            tokens: lex(text),
            at: 0,
            cautions: Vec::new(),
        }
    }

    /// The whole text.
    pub(super) fn text(&self) -> &'t str {
        self.text
    }

    pub(super) fn slice(&self, span: Range<usize>) -> &'t str {
        &self.text[span]
    }

    /// The word that is next.
    pub(super) fn next_word(&self) -> Option<&str> {
        self.peek().and_then(Lexeme::as_word)
    }

    /// The next lexeme.
    pub(super) fn peek(&self) -> Option<&Lexeme> {
        self.peek_over(0)
    }

    /// The lexeme behind so many others.
    pub(super) fn peek_over(&self, count: usize) -> Option<&Lexeme> {
        self.tokens.get(self.at + count).map(|token| &token.lexeme)
    }

    pub(super) fn at_end(&self) -> bool {
        self.at >= self.tokens.len()
    }

    /// How many tokens lie behind; to come back to with [`Cursor::back_to`].
    pub(super) fn mark(&self) -> usize {
        self.at
    }

    pub(super) fn back_to(&mut self, mark: usize) {
        self.at = mark;
    }

    pub(super) fn advance(&mut self) -> Option<Token> {
        let token = self.tokens.get(self.at).cloned();
        self.at += usize::from(token.is_some());
        token
    }

    pub(super) fn eat(&mut self, lexeme: &Lexeme) -> bool {
        let found = self.peek() == Some(lexeme);
        self.at += usize::from(found);
        found
    }

    /// Steps over the word if it is next.
    pub(super) fn word(&mut self, word: &str) -> bool {
        self.phrase(word)
    }

    /// Steps over these words if they are next.
    pub(super) fn phrase(&mut self, phrase: &str) -> bool {
        // of many phrases none is next, and that is seen at the first word
        if !self
            .next_word()
            .is_some_and(|word| phrase.starts_with(word))
        {
            return false;
        }
        let words = phrase.split(' ');
        let mut count = 0;
        for word in words {
            if self.peek_over(count).and_then(Lexeme::as_word) != Some(word) {
                return false;
            }
            count += 1;
        }
        self.at += count;
        true
    }

    /// Steps over the first of these phrases that is next.
    pub(super) fn any_phrase(&mut self, phrases: &[&str]) -> bool {
        phrases.iter().any(|phrase| self.phrase(phrase))
    }

    /// Steps over `x`, `×` or `by`.
    pub(super) fn times(&mut self) -> bool {
        self.eat(&Lexeme::Times) || self.any_phrase(&["x", "by"])
    }

    /// Whether the word stands anywhere ahead.
    pub(super) fn mentions(&self, words: &[&str]) -> bool {
        self.tokens[self.at..]
            .iter()
            .filter_map(|token| token.lexeme.as_word())
            .any(|word| words.contains(&word))
    }

    /// Whether the next token touches the one before.
    pub(super) fn touches(&self) -> bool {
        self.touches_over(0)
    }

    /// Whether the token behind so many others touches the one before it.
    pub(super) fn touches_over(&self, count: usize) -> bool {
        let at = self.at + count;
        match (
            at.checked_sub(1).and_then(|i| self.tokens.get(i)),
            self.tokens.get(at),
        ) {
            (Some(before), Some(next)) => before.span.end == next.span.start,
            (None, _) | (_, None) => false,
        }
    }

    /// The next token's place; the end of the text when there is none.
    pub(super) fn here(&self) -> Range<usize> {
        match self.tokens.get(self.at) {
            Some(token) => token.span.clone(),
            None => {
                let end = self.tokens.last().map_or(0, |token| token.span.end);
                end..end
            }
        }
    }

    /// Everything from the next token to the last.
    pub(super) fn rest(&self) -> Range<usize> {
        let end = self.tokens.last().map_or(0, |token| token.span.end);
        self.here().start..end
    }

    /// From a byte to the end of the token stepped over last.
    pub(super) fn since(&self, start: usize) -> Range<usize> {
        let end = self
            .at
            .checked_sub(1)
            .and_then(|before| self.tokens.get(before))
            .map_or(start, |token| token.span.end);
        start..end.max(start)
    }

    /// The place of the whole reading, without spaces around it.
    pub(super) fn whole(&self) -> Range<usize> {
        let start = self.tokens.first().map_or(0, |token| token.span.start);
        let end = self.tokens.last().map_or(0, |token| token.span.end);
        start..end
    }

    /// The whole text with one piece replaced.
    pub(super) fn rewritten(&self, span: Range<usize>, by: &str) -> String {
        let (before, after) = (&self.text[..span.start], &self.text[span.end..]);
        format!("{before}{by}{after}").trim().to_owned()
    }

    /// Nothing may be left.
    pub(super) fn finish(&self) -> Result<(), ReadingError> {
        if self.at_end() {
            return Ok(());
        }
        let read = self.text[..self.here().start].trim();
        let rest = self.rest();
        let found = quoted(self.slice(rest.clone()));
        let error = if read.is_empty() {
            ReadingError::new(format!("{found} is no reading of this item"), rest)
        } else {
            let message = format!("{found} was not expected after {}", quoted(read));
            let help = match self.peek() {
                Some(Lexeme::Other(';')) => "write one reading a row".to_owned(),
                Some(_) | None => format!("write {}, and the rest in the note", shown(read)),
            };
            ReadingError::new(message, rest).help(help)
        };
        Err(error)
    }
}

/// Single-character fractions: Unicode code charts, Latin-1 and Number Forms.
const FRACTIONS: &[(char, &str, &str)] = &[
    ('¼', "1", "4"),
    ('½', "1", "2"),
    ('¾', "3", "4"),
    ('⅐', "1", "7"),
    ('⅑', "1", "9"),
    ('⅒', "1", "10"),
    ('⅓', "1", "3"),
    ('⅔', "2", "3"),
    ('⅕', "1", "5"),
    ('⅖', "2", "5"),
    ('⅗', "3", "5"),
    ('⅘', "4", "5"),
    ('⅙', "1", "6"),
    ('⅚', "5", "6"),
    ('⅛', "1", "8"),
    ('⅜', "3", "8"),
    ('⅝', "5", "8"),
    ('⅞', "7", "8"),
];

fn lex(text: &str) -> Vec<Token> {
    let mut tokens = Vec::new();
    let mut at = 0;
    while let Some(first) = text[at..].chars().next() {
        let rest = &text[at..];
        let (length, lexeme) = if is_blank(first) {
            (first.len_utf8(), None)
        } else if let Some((length, lexeme)) = number(rest) {
            (length, Some(lexeme))
        } else if first.is_alphabetic() {
            let length = word_length(rest);
            (length, Some(Lexeme::Word(plain_word(&rest[..length]))))
        } else {
            let (length, lexeme) = mark(rest, first);
            (length, Some(lexeme))
        };
        if let Some(lexeme) = lexeme {
            tokens.push(Token {
                lexeme,
                span: at..at + length,
            });
        }
        at += length;
    }
    tokens
}

/// Spaces of any kind, those without width too.
fn is_blank(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{200b}' | '\u{2060}' | '\u{feff}')
}

/// A number, a fraction, or a single-character fraction at the start.
fn number(rest: &str) -> Option<(usize, Lexeme)> {
    let first = rest.chars().next()?;
    if !first.is_ascii()
        && let Some((_, numerator, denominator)) = FRACTIONS.iter().find(|(c, ..)| *c == first)
    {
        let lexeme = Lexeme::Fraction {
            numerator: (*numerator).to_owned(),
            denominator: (*denominator).to_owned(),
        };
        return Some((first.len_utf8(), lexeme));
    }
    if let Some((length, numerator)) = digits(rest, plain_digit).or_else(|| digits(rest, raised))
        && let Some((more, denominator)) = slash_and_digits(&rest[length..])
    {
        let lexeme = Lexeme::Fraction {
            numerator,
            denominator,
        };
        return Some((length + more, lexeme));
    }
    let length = decimal_length(rest);
    (length > 0).then(|| (length, Lexeme::Number(rest[..length].to_owned())))
}

/// A slash and the digits behind it.
fn slash_and_digits(rest: &str) -> Option<(usize, String)> {
    let slash = rest
        .chars()
        .next()
        .filter(|c| matches!(c, '/' | '⁄' | '∕'))?;
    let after = &rest[slash.len_utf8()..];
    let (length, denominator) = digits(after, plain_digit).or_else(|| digits(after, lowered))?;
    Some((slash.len_utf8() + length, denominator))
}

/// A run of digits of one kind, as plain digits.
fn digits(rest: &str, digit: fn(char) -> Option<char>) -> Option<(usize, String)> {
    let mut length = 0;
    let mut plain = String::new();
    for c in rest.chars() {
        let Some(as_plain) = digit(c) else { break };
        length += c.len_utf8();
        plain.push(as_plain);
    }
    (length > 0).then_some((length, plain))
}

fn plain_digit(c: char) -> Option<char> {
    c.is_ascii_digit().then_some(c)
}

fn raised(c: char) -> Option<char> {
    if c.is_ascii() {
        return None;
    }
    "⁰¹²³⁴⁵⁶⁷⁸⁹"
        .chars()
        .zip('0'..='9')
        .find(|(from, _)| *from == c)
        .map(|(_, to)| to)
}

fn lowered(c: char) -> Option<char> {
    if c.is_ascii() {
        return None;
    }
    "₀₁₂₃₄₅₆₇₈₉"
        .chars()
        .zip('0'..='9')
        .find(|(from, _)| *from == c)
        .map(|(_, to)| to)
}

/// Length of digits with points and commas between them, or a point in front.
fn decimal_length(rest: &str) -> usize {
    let bytes = rest.as_bytes();
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let mut at = 0;
    loop {
        if digit(at) {
            at += 1;
        } else if matches!(bytes.get(at), Some(b'.')) && digit(at + 1)
            || at > 0 && matches!(bytes.get(at), Some(b',')) && digit(at + 1)
        {
            at += 2;
        } else {
            return at;
        }
    }
}

/// Length of letters at the start, with apostrophes between letters.
fn word_length(rest: &str) -> usize {
    let mut length = 0;
    let mut chars = rest.chars().peekable();
    while let Some(c) = chars.next() {
        let within = matches!(c, '\'' | '’') && chars.peek().is_some_and(|n| n.is_alphabetic());
        if !c.is_alphabetic() && !within {
            break;
        }
        length += c.len_utf8();
    }
    length
}

fn plain_word(word: &str) -> String {
    if word.is_ascii() {
        return word.to_ascii_lowercase();
    }
    word.to_lowercase().replace('’', "'")
}

/// A mark, and how many bytes it takes.
fn mark(rest: &str, first: char) -> (usize, Lexeme) {
    if let Some(length) = plus_minus_length(rest) {
        return (length, Lexeme::PlusMinus);
    }
    let one = first.len_utf8();
    if is_prime(first) {
        let second = rest[one..].chars().next().filter(|c| is_prime(*c));
        return match second {
            Some(second) => (one + second.len_utf8(), Lexeme::DoublePrime),
            None => (one, Lexeme::Prime),
        };
    }
    let lexeme = match first {
        ':' => Lexeme::Colon,
        ',' => Lexeme::Comma,
        '-' | '\u{2010}' | '\u{2011}' | '‒' | '–' | '—' | '−' => Lexeme::Dash,
        '°' => Lexeme::Degree,
        '.' => Lexeme::Dot,
        '"' | '″' | '”' | '“' | '‟' | 'ʺ' => Lexeme::DoublePrime,
        '>' => Lexeme::Greater,
        '<' => Lexeme::Less,
        '%' => Lexeme::Percent,
        '+' => Lexeme::Plus,
        '/' => Lexeme::Slash,
        '×' | '✕' | '*' => Lexeme::Times,
        other => Lexeme::Other(other),
    };
    (one, lexeme)
}

fn is_prime(c: char) -> bool {
    matches!(c, '\'' | '′' | '’' | '‘' | '´' | 'ʹ')
}

/// Length of `±`, `+/-` or `+-` at the start.
fn plus_minus_length(rest: &str) -> Option<usize> {
    ["±", "+/-", "+/−", "+/–", "+-", "+−", "+–"]
        .iter()
        .find(|form| rest.starts_with(**form))
        .map(|form| form.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lexemes(text: &str) -> Vec<Lexeme> {
        lex(text).into_iter().map(|token| token.lexeme).collect()
    }

    fn fraction(numerator: &str, denominator: &str) -> Lexeme {
        Lexeme::Fraction {
            numerator: numerator.to_owned(),
            denominator: denominator.to_owned(),
        }
    }

    #[test]
    fn fractions_of_every_form_are_one_token() {
        let half = vec![Lexeme::Number("33".to_owned()), fraction("1", "2")];
        for text in ["33 1/2", "33½", "33\u{a0}½", "33 ¹⁄₂", "33¹⁄₂", "33 1⁄2"] {
            assert_eq!(lexemes(text), half, "{text}");
        }
    }

    #[test]
    fn marks_of_every_form_are_alike() {
        for text in ["'", "′", "’"] {
            assert_eq!(lexemes(text), [Lexeme::Prime], "{text}");
        }
        for text in ["\"", "″", "”", "''", "′′", "’’"] {
            assert_eq!(lexemes(text), [Lexeme::DoublePrime], "{text}");
        }
        for text in ["±", "+/-", "+-"] {
            assert_eq!(lexemes(text), [Lexeme::PlusMinus], "{text}");
        }
    }

    #[test]
    fn places_count_bytes_of_the_text_as_it_stands() {
        let spans: Vec<_> = lex(" 35½″ x").into_iter().map(|t| t.span).collect();
        assert_eq!(spans, [1..3, 3..5, 5..8, 9..10]);
    }
}
