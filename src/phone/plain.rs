//! Text for a page, which breaks lines and colours words itself.

/// So many columns that nothing is broken.
pub(super) const UNBROKEN: usize = 100_000;

/// The text without the sequences that colour it on a terminal.
pub(super) fn plain(text: &str) -> String {
    let mut parts = text.split("\u{1b}[");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| {
        let end = part.find(|c: char| c.is_ascii_alphabetic());
        text + end.map_or("", |end| &part[end + 1..])
    })
}

/// Its lines as paragraphs, blank ones left out.
pub(super) fn paragraphs(text: &str) -> Vec<String> {
    let text = plain(text);
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    lines.map(str::to_owned).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn styles_go_and_words_stay() {
        let styled = "\u{1b}[1mbold\u{1b}[0m and \u{1b}[38;5;131mred\u{1b}[39m [m]";
        assert_eq!(plain(styled), "bold and red [m]");
        assert_eq!(plain("plain"), "plain");
        assert_eq!(plain(""), "");
        assert_eq!(paragraphs("  one\n\n two\u{1b}[0m\n"), ["one", "two"]);
    }
}
