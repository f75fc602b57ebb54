//! From rows to pages: what is written by hand needs room, and no row may be cut.

use maud::Markup;

/// A part of a guard's pages: its rows with how high they are, in millimetres.
pub(super) struct PaperPart {
    /// Where it begins: heading, drawings, the head of its table.
    pub(super) begin: Box<dyn Fn() -> Markup>,
    /// How high that is.
    pub(super) begin_mm: f64,
    /// Where it goes on, on a further page.
    pub(super) again: Box<dyn Fn() -> Markup>,
    /// How high that is.
    pub(super) again_mm: f64,
    /// The head of its table, repeated where it goes on.
    pub(super) columns: Markup,
    /// Its rows.
    pub(super) rows: Vec<(f64, Markup)>,
    /// What closes it around its rows.
    pub(super) around: Around,
}

/// What a part's rows stand in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Around {
    /// Rows of a name and what to tick or write.
    Rows,
    /// The same in a frame: only on stairs.
    Band,
    /// A row for each hole, a column for each ball.
    Balls,
}

/// A piece of a part on one page.
pub(super) struct PagePiece {
    pub(super) head: Markup,
    pub(super) columns: Markup,
    pub(super) rows: Vec<Markup>,
    pub(super) around: Around,
}

/// The pieces of each page, and the room that is left on it.
pub(super) fn pages(parts: Vec<PaperPart>, room_mm: f64) -> Vec<(Vec<PagePiece>, f64)> {
    let mut all: Vec<(Vec<PagePiece>, f64)> = Vec::new();
    let (mut page, mut left) = (Vec::new(), room_mm);
    for part in parts {
        let mut rows = part.rows.into_iter().peekable();
        let mut head = ((part.begin)(), part.begin_mm);
        loop {
            // a heading takes its first row along, or goes to the next page
            let first = rows.peek().map_or(0.0, |(mm, _)| *mm);
            if head.1 + first > left && !page.is_empty() {
                all.push((std::mem::take(&mut page), left));
                left = room_mm;
            }
            left -= head.1;
            let mut piece = PagePiece {
                head: head.0,
                columns: part.columns.clone(),
                rows: Vec::new(),
                around: part.around,
            };
            while let Some((mm, row)) = rows.next_if(|(mm, _)| *mm <= left) {
                left -= mm;
                piece.rows.push(row);
            }
            if rows.peek().is_none() {
                page.push(piece);
                break;
            }
            if piece.rows.is_empty() {
                // a row higher than a page stands on one of its own
                if let Some((_, row)) = rows.next() {
                    piece.rows.push(row);
                }
                left = 0.0;
                if rows.peek().is_none() {
                    page.push(piece);
                    break;
                }
            }
            page.push(piece);
            all.push((std::mem::take(&mut page), left.max(0.0)));
            left = room_mm;
            head = ((part.again)(), part.again_mm);
        }
    }
    if !page.is_empty() {
        all.push((page, left));
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use maud::html;

    fn part(rows: usize, mm: f64) -> PaperPart {
        PaperPart {
            begin: Box::new(|| html! { "begin" }),
            begin_mm: 10.0,
            again: Box::new(|| html! { "goes on" }),
            again_mm: 5.0,
            columns: Markup::default(),
            rows: (0..rows).map(|_| (mm, html! { "row" })).collect(),
            around: Around::Rows,
        }
    }

    #[test]
    fn no_row_is_lost_and_none_goes_over_the_page() {
        for (rows, mm) in [(1, 8.0), (12, 8.0), (40, 8.0), (3, 120.0)] {
            let pages = pages(vec![part(rows, mm), part(2, 8.0)], 100.0);
            let count: usize = pages
                .iter()
                .flat_map(|(pieces, _)| pieces)
                .map(|piece| piece.rows.len())
                .sum();
            assert_eq!(count, rows + 2);
            assert!(pages.iter().all(|(_, left)| *left >= 0.0));
            let alone = pages
                .iter()
                .flat_map(|(pieces, _)| pieces)
                .any(|piece| piece.rows.is_empty());
            assert!(!alone, "a heading without a row");
        }
    }

    #[test]
    fn a_part_that_goes_on_says_so() {
        let pages = pages(vec![part(20, 8.0)], 100.0);
        let heads: Vec<String> = pages
            .iter()
            .flat_map(|(pieces, _)| pieces)
            .map(|piece| piece.head.clone().into_string())
            .collect();
        assert_eq!(heads, ["begin", "goes on"]);
    }
}
