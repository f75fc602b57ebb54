//! What a ruleset looks at: the items it asks for, and the balls it tries them with.

use std::collections::BTreeSet;

use crate::items::AskedWhen;
use crate::items::Hole;
use crate::items::Item;
use crate::rules::Condition;
use crate::rules::Demand;
use crate::rules::Limit;
use crate::rules::LoadDemand;
use crate::rules::OpeningDemand;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Subject;

impl Ruleset {
    /// Every item that a rule's conditions or checks look at, and those that say
    /// whether the ruleset covers a guard at all. When it was built is among
    /// them where the ruleset states its years.
    #[must_use]
    pub fn items(&self) -> BTreeSet<Item> {
        let mut items = self.items_beyond_strength();
        if self.rules.iter().any(|rule| rule.loads().next().is_some()) {
            items.extend(Subject::LoadPath.items());
        }
        items
    }

    /// Whether it is advice about small children: every such file is called so.
    #[must_use]
    pub fn is_about_small_children(&self) -> bool {
        self.id.starts_with("small-child")
    }

    /// As [`Ruleset::items`], without what the load path alone looks at.
    #[must_use]
    pub fn items_beyond_strength(&self) -> BTreeSet<Item> {
        let covers = self.covers.conditions.iter();
        let mut items: BTreeSet<Item> = covers.map(|condition| condition.item).collect();
        let silent = self.asks_nothing.iter().flat_map(|silence| &silence.when);
        items.extend(silent.map(|condition| condition.item));
        for rule in &self.rules {
            items.extend(rule.conditions().map(|condition| condition.item));
            let subjects = rule.checks.iter().map(|check| check.subject);
            for subject in subjects.filter(|subject| *subject != Subject::LoadPath) {
                items.extend(subject.items());
            }
        }
        if self.in_force.is_some() {
            items.insert(Item::Built);
        }
        items
    }

    /// The sizes of the balls that would settle what is asked of an opening.
    pub fn balls(&self, item: Item) -> impl Iterator<Item = &Limit> {
        self.rules
            .iter()
            .flat_map(move |rule| rule.openings(item))
            .flat_map(|demand| {
                let band = demand.not_within.as_ref().map(|(above, _)| above);
                let probe = demand.entraps.as_ref().map(|entraps| &entraps.short);
                let bounds = [
                    demand.stops_ball.as_ref(),
                    demand.at_most.as_ref(),
                    band,
                    probe,
                ];
                bounds.into_iter().flatten()
            })
    }
}

impl Demand {
    /// What it asks a length to be at least, or above.
    #[must_use]
    pub fn least_length(&self) -> Option<&Limit> {
        match self {
            Demand::Length(bounds) => bounds.at_least.as_ref().or(bounds.above.as_ref()),
            Demand::Count(_)
            | Demand::Foothold(_)
            | Demand::Load(_)
            | Demand::Opening(_)
            | Demand::VOpening(_)
            | Demand::Words { .. } => None,
        }
    }
}

impl Rule {
    /// The loads that it states.
    pub fn loads(&self) -> impl Iterator<Item = &LoadDemand> {
        self.checks.iter().filter_map(|check| match &check.demand {
            Demand::Load(demand) => Some(demand),
            Demand::Count(_)
            | Demand::Foothold(_)
            | Demand::Length(_)
            | Demand::Opening(_)
            | Demand::VOpening(_)
            | Demand::Words { .. } => None,
        })
    }

    /// What it asks of the openings of an item.
    pub fn openings(&self, item: Item) -> impl Iterator<Item = &OpeningDemand> {
        let checks = self.checks.iter();
        checks
            .filter(move |check| check.items().contains(&item))
            .filter_map(|check| match &check.demand {
                Demand::Opening(demand) => Some(demand),
                Demand::Count(_)
                | Demand::Foothold(_)
                | Demand::Length(_)
                | Demand::Load(_)
                | Demand::VOpening(_)
                | Demand::Words { .. } => None,
            })
    }

    /// The conditions of `when`, `when-any` and `unless`.
    pub fn conditions(&self) -> impl Iterator<Item = &Condition> {
        let groups = self.when_any.iter().chain(&self.unless);
        self.when.iter().chain(groups.flatten())
    }
}

impl Subject {
    /// The items that it asks for.
    #[must_use]
    pub fn items(self) -> Vec<Item> {
        // a hole that a guard need not have, beside the edge of the floor or above a solid
        // part: rules on any opening judge it where it is written
        let is_apart =
            |item: &&Item| self == Subject::AnyOpening && item.info().hole == Hole::AnyForItself;
        let asked = |item: &&Item| item.info().asked == AskedWhen::ByRules && !is_apart(item);
        self.looks_at().iter().filter(asked).copied().collect()
    }
}
