//! Mending the unit of numbers without one, and what that touches.

use crate::input::Severity;
use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::reading::parse;
use crate::reading::print;
use crate::walk::GuardName;
use crate::walk::Reply;
use crate::walk::Walk;
use crate::walk::page::Page;
use crate::walk::page::PageEntry;
use crate::walk::page::PageSpot;
use crate::walk::pending::How;
use crate::walk::unit::Bare;
use crate::walk::unit::unit_named;
use crate::walk::view::View;

impl<'r> Walk<'r> {
    /// Mends the unit of numbers without one. Those that are written get their old unit,
    /// so that none changes its meaning before somebody has looked at it, and are asked
    /// about one by one.
    pub(super) fn mend_unit(&mut self, new: LengthUnit, said: &mut Vec<Reply<'r>>) {
        let old = self.unit_in_force();
        if old == Some(new) {
            let text = format!("A number alone is {} here already.", new.plural());
            said.push(Reply::Remark(text));
            return;
        }
        if !self.page.is_notebook() || (old.is_none() && self.view.errors() > 0) {
            self.unit = Some(new);
            let text = format!("From now on a number alone is {}.", new.plural());
            said.push(Reply::Remark(text));
            return;
        }
        match self.page_in_unit(old, new) {
            Ok((page, view, bare)) => {
                self.page = page;
                self.view = view;
                self.unit = None;
                self.judge_anew();
                let count = bare.len();
                self.bare = bare;
                let mut text = format!("Noted. From now on a number alone is {}.", new.plural());
                if count > 0 {
                    text.push_str(" Written alone before:");
                }
                said.push(Reply::Remark(text));
            }
            Err(why) => said.push(Reply::Refused(why, None)),
        }
    }

    fn page_in_unit(
        &self,
        old: Option<LengthUnit>,
        new: LengthUnit,
    ) -> Result<(Page, View, Vec<Bare>), String> {
        let mut page = self.page.clone();
        let bare = old.map_or_else(Vec::new, |old| self.written_alone(old, new));
        for one in &bare {
            let before = PageSpot {
                line: one.spot.line,
                written: one.number.clone(),
            };
            let entry = PageEntry {
                place: one.place.clone(),
                item: one.item,
                reading: one.spot.written.clone(),
                note: String::new(),
            };
            page = page
                .corrected(&before, &entry)
                .map_err(|error| error.to_string())?;
        }
        let entry = PageEntry {
            place: GuardName::default(),
            item: Item::DefaultUnit,
            reading: new.symbol().to_owned(),
            note: String::new(),
        };
        let page = match page.fact(Item::DefaultUnit) {
            Some(spot) => page.corrected(&spot, &entry),
            None => page.with(&entry, None),
        };
        let page = page.map_err(|error| error.to_string())?;
        let view = View::of(&page);
        match view.new_faults(&self.view, Severity::Error).first() {
            Some(fault) => Err(fault.message.clone()),
            None => Ok((page, view, bare)),
        }
    }

    /// The readings without a unit, each as it would stand with its old one.
    fn written_alone(&self, old: LengthUnit, new: LengthUnit) -> Vec<Bare> {
        let mut found: Vec<Bare> = Vec::new();
        for guard in &self.view.guards {
            for o in &guard.observations {
                let alone =
                    o.item.info().kind.holds_a_length() && parse(o.item, &o.written, None).is_err();
                let Ok(parsed) = parse(o.item, &o.written, Some(old)) else {
                    continue;
                };
                if !alone || found.iter().any(|one| one.spot.line == o.row.line) {
                    continue;
                }
                let with_unit = format!("{} {}", o.written, old.symbol());
                let same = parse(o.item, &with_unit, None)
                    .is_ok_and(|other| other.readings == parsed.readings);
                let written = if same {
                    with_unit
                } else {
                    let each: Vec<String> = parsed.readings.iter().map(print).collect();
                    each.join("; ")
                };
                found.push(Bare {
                    place: GuardName::of(guard),
                    item: o.item,
                    spot: PageSpot {
                        line: o.row.line,
                        written,
                    },
                    number: o.written.to_string(),
                    old,
                    new,
                });
            }
        }
        found
    }

    /// What a number that was written alone is.
    pub(super) fn answer_about_bare(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        if self.bare.is_empty() {
            return;
        }
        let bare = self.bare.remove(0);
        let unit = unit_named(text);
        let reading = if text.is_empty() || unit == Some(bare.new) {
            bare.in_new()
        } else if unit == Some(bare.old) {
            let text = format!("{} stays {}.", bare.item, bare.spot.written);
            said.push(Reply::Remark(text));
            return;
        } else {
            text.to_owned()
        };
        let how = How::Replace(bare.spot.clone(), bare.place.clone());
        let before = self.page.text.clone();
        self.read(bare.item, &reading, how, said);
        let refused = matches!(said.last(), Some(Reply::Refused(..)));
        if refused && self.page.text == before {
            self.bare.insert(0, bare);
        }
    }
}
