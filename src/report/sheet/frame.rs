//! The frame of a page: names at its head, who decides at its foot, lines for notes.

use maud::Markup;
use maud::html;

use crate::report::one_line;
use crate::report::sheet::Sheet;
use crate::report::sheet::paginate::Around;
use crate::report::sheet::paginate::PagePiece;
use crate::rules::Ruleset;

/// What every page says of who decides.
pub(super) const DEFERRAL: &str = "This sheet collects readings and calls nothing safe. The local \
authority and licensed professionals decide what is asked and whether a railing is fit.";

/// Below this nobody writes: the lines are left out.
const LEAST_NOTES_MM: f64 = 17.0;

/// Which page it is.
pub(super) struct PageOf {
    pub(super) guard: u32,
    pub(super) page: usize,
    pub(super) pages: usize,
}

/// One page of a guard: its names at the top, who decides at the foot, and lines for
/// notes where there is room.
pub(super) fn page(sheet: &Sheet<'_>, of: &PageOf, pieces: Vec<PagePiece>, left_mm: f64) -> Markup {
    let (guards, last) = (sheet.guards.get(), of.page == of.pages);
    let label = format!(
        "railing {} of {guards}, page {} of {}",
        of.guard, of.page, of.pages
    );
    let notes = left_mm >= LEAST_NOTES_MM;
    html! {
        section class="pg guard" aria-label=(label) {
            header class="hd" {
                @for name in ["property", "unit", "railing", "date"] { p { (name) i class="w" {} } }
                p class="no" {
                    span {
                        "railing " b { (of.guard) " of " (guards) }
                        ", page " (of.page) " of " (of.pages)
                    }
                }
            }
            @for piece in pieces { (set(piece)) }
            @if notes || last {
                h2 {
                    "Notes "
                    span class="sub" { "where the worst place is · why not reached" }
                }
                div class="notes" { p class="vh" { "Lines to write on." } }
            }
            (foot(sheet.rulesets))
        }
    }
}

fn set(piece: PagePiece) -> Markup {
    let rows = piece.rows;
    let table = |class: &str| {
        html! {
            @if !rows.is_empty() {
                table class=(class) {
                    thead { (piece.columns) }
                    tbody { @for row in &rows { (row) } }
                }
            }
        }
    };
    html! {
        @match piece.around {
            Around::Balls => {
                (piece.head)
                div class="sc" tabindex="0" role="group" aria-label="The ball at each gap" {
                    (table("balls"))
                }
            }
            Around::Band => {
                div class="band" { (piece.head) (table("rows")) }
            }
            Around::Rows => {
                (piece.head)
                (table("rows"))
            }
        }
    }
}

/// Who decides, and whose rules the sheet asks for.
pub(super) fn foot(rulesets: &[Ruleset]) -> Markup {
    const NAMED: usize = 3;
    let named = |advisory: bool| {
        let of = rulesets
            .iter()
            .filter(|ruleset| ruleset.advisory == advisory);
        let ids: Vec<String> = of.map(|r| one_line(&r.id).into_owned()).collect();
        match ids.len() {
            0 => String::new(),
            1..=NAMED => ids.join(", "),
            more => format!("{} and {} more", ids[..NAMED].join(", "), more - NAMED),
        }
    };
    let (law, advice) = (named(false), named(true));
    html! {
        footer class="ft" {
            p { (DEFERRAL) }
            p {
                @if law.is_empty() { "No building rules, only advice: " (advice) "." }
                @else {
                    "Rules: " (law) "; your town may have changed them."
                    @if !advice.is_empty() { " Advice: " (advice) "." }
                }
            }
        }
    }
}
