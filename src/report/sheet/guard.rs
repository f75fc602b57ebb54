//! The page of one guard.

use std::collections::BTreeSet;

use maud::Markup;
use maud::html;

use crate::items::Group;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Pictured;
use crate::report::sheet::Sheet;
use crate::report::sheet::boxes::answer;
use crate::report::sheet::boxes::measured;
use crate::report::sheet::boxes::openings;

/// How many boxes stand beside each other, as in the style sheet.
const COLUMNS: usize = 3;

pub(super) fn guard(sheet: &Sheet<'_>, items: &BTreeSet<Item>, number: u32) -> Markup {
    let asked = |group| of_group(items, group);
    let drawn = drawn(items);
    let room = COLUMNS - drawn.len() % COLUMNS;
    // the name again: a longer choice of rules may run on to a second page
    let notes = html! { b { "Notes" } " to guard " (number) " of " (sheet.guards) };
    html! {
        section class="guard" {
            div class="name" {
                p { b { "Unit" } span class="line" {} }
                p { b { "Guard" } span class="line" {} }
                p class="number" { (number) " of " (sheet.guards) }
            }
            div class="row" {
                @if items.contains(&Item::Guard) { (answer(Item::Guard)) }
                @for item in asked(Group::Circumstance).filter(is_told) { (answer(item)) }
            }
            @if items.contains(&Item::Opening) || items.contains(&Item::OpeningsChecked) {
                (openings(sheet.rulesets))
            }
            div class="boxes" {
                @for item in drawn { (measured(item, sheet.rulesets)) }
                @if room < COLUMNS { p class={ "notes columns-" (room) } { (notes) } }
            }
            (words(items))
            @if room == COLUMNS { p class="notes" { (notes) } }
        }
    }
}

/// What only strength wants to know, on a page of its own: most people leave it empty.
pub(super) fn strength(sheet: &Sheet<'_>, items: &BTreeSet<Item>, number: u32) -> Markup {
    html! {
        section class="guard" {
            h2 { "What holds up guard " (number) " of " (sheet.guards) }
            p {
                "Only where its strength is to be looked into as well; leave the page out otherwise. "
                "Write what can be seen without taking anything apart, and leave the rest empty. "
                "Nothing is tried out on the guard: what was seen is compared with "
                "published values, and a licensed engineer decides."
            }
            div class="row" {
                @for item in of_group(items, Group::Circumstance).filter(is_told) { (answer(item)) }
            }
            div class="boxes" {
                @for item in drawn(items) { (measured(item, sheet.rulesets)) }
            }
            (words(items))
        }
    }
}

/// The items of a group that have their place in the order of the table.
fn of_group(items: &BTreeSet<Item>, group: Group) -> impl Iterator<Item = Item> {
    items.iter().copied().filter(move |item| {
        let elsewhere = [Item::Guard, Item::Opening, Item::OpeningsChecked];
        item.info().group == group && !item.is_asked_once() && !elsewhere.contains(item)
    })
}

/// The items with a box and a drawing.
fn drawn(items: &BTreeSet<Item>) -> Vec<Item> {
    [Group::Circumstance, Group::Measured]
        .into_iter()
        .flat_map(|group| of_group(items, group))
        .filter(|item| is_drawn(*item))
        .collect()
}

/// What is told in words, behind the boxes.
fn words(items: &BTreeSet<Item>) -> Markup {
    let asked = |group| of_group(items, group);
    html! {
        div class="row" {
            @for item in asked(Group::Measured).filter(is_told) { (answer(item)) }
            @for item in asked(Group::Seen) { (answer(item)) }
        }
    }
}

fn is_told(item: &Item) -> bool {
    !is_drawn(*item)
}

/// Whether a tape is laid: such an item has a box with a drawing.
fn is_drawn(item: Item) -> bool {
    matches!(item.info().pictured, Pictured::By(_)) && !matches!(item.info().kind, Kind::Words(_))
}
