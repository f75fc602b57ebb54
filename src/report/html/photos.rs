//! Photographs that a survey names, carried in the page.

use maud::Markup;
use maud::html;

use crate::items::Item;
use crate::report::JudgedGuard;
use crate::report::PhotoSource;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::told::PhotoTold;
use crate::report::words;

/// The photographs of a guard, as far as they can be had.
pub(super) fn of_guard(
    entry: &JudgedGuard<'_>,
    basis: &ReportBasis<'_>,
    source: &mut dyn PhotoSource,
) -> Vec<PhotoTold> {
    let named = entry.guard.of(Item::Photo).map(|(_, observation)| {
        let survey = words::file_name(observation.row, basis.survey);
        PhotoTold {
            name: one_line(&observation.written).into_owned(),
            note: one_line(&observation.note).into_owned(),
            shown: source.photo(survey, &observation.written),
        }
    });
    named.collect()
}

/// The photographs; one that cannot be shown is a named empty frame.
pub(super) fn section(photos: &[PhotoTold], heading: &Markup) -> Markup {
    if photos.is_empty() {
        return html! {};
    }
    html! {
        section {
            (heading)
            ul class="photos" {
                @for photo in photos {
                    li {
                        figure class="fig" {
                            @match &photo.shown {
                                Ok(shown) => {
                                    img src={ "data:image/jpeg;base64," (shown.jpeg) } width=(shown.wide)
                                        height=(shown.high) alt=(alternative(photo));
                                }
                                Err(why) => { p class="no-photo" { "No picture: " (why) "." } }
                            }
                            figcaption { (photo.name) @if !photo.note.is_empty() { ": “" (photo.note) "”" } }
                        }
                    }
                }
            }
        }
    }
}

/// What a screen reader says of it: the note, since nobody here looked at the picture.
fn alternative(photo: &PhotoTold) -> String {
    if photo.note.is_empty() {
        format!("Photograph {}, without a note", photo.name)
    } else {
        format!("Photograph: {}", photo.note)
    }
}
