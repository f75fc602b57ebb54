//! What a refusal offers is accepted: offers that would be refused again are left out.

use crate::items::Item;
use crate::reading::error::ReadingError;

/// Where what is to be written ends, and why or when to write it begins.
const ENDS: &[&str] = &[" if ", " for ", " where ", " (", ", and ", ", leave", "; "];

/// The refused reading, and what reads another one in its place.
struct Refused<'t> {
    text: &'t str,
    is_read: &'t dyn Fn(&str) -> bool,
}

impl Refused<'_> {
    /// Whether an offer is accepted, as it stands or in the place that was marked.
    fn accepts(&self, offer: &str, error: &ReadingError) -> bool {
        let end = ENDS.iter().filter_map(|end| offer.find(end)).min();
        let offer = offer[..end.unwrap_or(offer.len())].trim();
        let mut whole = self.text.to_owned();
        if whole.get(error.span.clone()).is_some() {
            whole.replace_range(error.span.clone(), offer);
        }
        (self.is_read)(offer) || (self.is_read)(&whole)
    }
}

/// The refusal with those of its offers that are accepted; where it had none, with an
/// example of the item.
pub(super) fn with_accepted_offers(
    error: ReadingError,
    item: Item,
    text: &str,
    is_read: &dyn Fn(&str) -> bool,
) -> ReadingError {
    let refused = Refused { text, is_read };
    let Some(help) = error.help.clone() else {
        return error;
    };
    // an offer for a part further on is read with what stands before it
    let for_the_whole = error.span.start == 0;
    let shown = [", such as ", ", as in "].into_iter();
    let mut shown = shown.filter_map(|mark| help.rsplit_once(mark).map(|parts| (mark, parts)));
    if let Some((mark, (before, example))) = shown.next() {
        let mut examples = alternatives(example);
        if !for_the_whole || examples.all(|offer| refused.accepts(offer, &error)) {
            return error;
        }
        let own = item.info().examples.first().copied().unwrap_or(example);
        let help = format!("{before}{mark}{own}");
        return error.help(help);
    }
    let offers = help
        .strip_prefix("write ")
        .filter(|offers| are_literal(offers));
    let Some(offers) = offers else {
        return error;
    };
    let all: Vec<&str> = alternatives(offers).collect();
    let kept: Vec<&str> = alternatives(offers)
        .filter(|offer| refused.accepts(offer, &error))
        .collect();
    if kept.len() == all.len() {
        return error;
    }
    let a_number = offers.starts_with(|c: char| c.is_ascii_digit());
    let first = |text: &str| text.split_whitespace().next().map(str::to_owned);
    let for_the_whole = for_the_whole || first(offers) == first(text);
    match (kept.as_slice(), item.info().examples.first()) {
        ([], Some(example)) if a_number && for_the_whole => {
            error.help(format!("write it so: {example}"))
        }
        ([], _) => error,
        (kept, _) => error.help(format!("write {}", kept.join(", or "))),
    }
}

/// `A, or B` and `A or B`.
fn alternatives(offers: &str) -> impl Iterator<Item = &str> {
    offers.split(", or ").flat_map(|offer| offer.split(" or "))
}

/// Whether what stands behind `write` is readings alone, and no list and no advice.
fn are_literal(offers: &str) -> bool {
    let advice = [
        "it ", "one ", "none ", "the ", "a ", "what ", "how ", "both ",
    ];
    let plain = offers.replace(", or ", " or ").replace(", and ", " and ");
    let numbers = alternatives(offers).all(|offer| offer.contains(|c: char| c.is_ascii_digit()));
    numbers
        && !plain.contains([',', ';'])
        && !plain.contains(": ")
        && !advice.iter().any(|a| offers.starts_with(a))
}
