//! From plain words to the rulesets that hold there: `flat in Florida`, `deck,
//! Ontario`, `rented house in England`.

use crate::items::Item;
use crate::rules::demand::Bounds;
use crate::rules::gazetteer;
use crate::rules::gazetteer::Region;
use crate::rules::model::Condition;
use crate::rules::model::LeaveOut;
use crate::rules::model::Ruleset;
use crate::rules::model::Test;
use crate::rules::sought::Home;
use crate::rules::sought::Sought;
use crate::rules::sought::usage;

/// A ruleset that may hold.
#[derive(Clone, Debug)]
pub struct Offer<'r> {
    /// The ruleset.
    pub ruleset: &'r Ruleset,
    /// What must be so for it to hold, where that was not said: `in Chicago`.
    pub only: Option<String>,
    /// Whether the part of the country that was asked about has taken this edition up:
    /// its own print was read, and has these rules unchanged.
    pub read_there: bool,
    /// The ids of its other editions, newest first.
    pub editions: Vec<&'r str>,
    /// The year in which it ended, where no later edition of it is here.
    pub ended: Option<i32>,
}

impl<'r> Offer<'r> {
    /// What it leaves out that may bear on what was asked for.
    pub fn leaves_out<'s>(&'s self, sought: &'s Sought) -> impl Iterator<Item = &'r LeaveOut> + 's {
        let at_the_place =
            |condition: &Condition| condition.item == Item::Place && may_hold(condition, sought);
        let all = self.ruleset.leaves_out.iter();
        all.filter(move |left| left.when.iter().all(at_the_place))
    }
}

/// The rulesets that hold where somebody asked about.
#[derive(Clone, Debug, Default)]
pub struct FoundRules<'r> {
    /// What was asked for.
    pub sought: Sought,
    /// Building rules, those of the nearest place first.
    pub law: Vec<Offer<'r>>,
    /// Advice.
    pub advice: Vec<Offer<'r>>,
    /// Building rules and advice that hold there only where something more is so.
    pub only_where: Vec<Offer<'r>>,
    /// What is not here, in sentences.
    pub not_here: Vec<String>,
    /// What to say as well, since the answer hangs on it.
    pub ask: Vec<&'static str>,
}

/// The rulesets that hold where plain words say, among those that are there.
///
/// ```
/// use guardrule::rules::{embedded_ids, find, load};
/// let all = embedded_ids().filter_map(|id| load(id, &|_| None).ruleset).collect::<Vec<_>>();
/// let found = find("a deck in Ontario", &all);
/// assert_eq!(found.sought.region, Some("Ontario"));
/// assert!(found.law.iter().any(|offer| offer.ruleset.id == "ontario-2012"));
/// assert!(found.law.iter().all(|offer| !offer.ruleset.id.starts_with("us-")));
/// ```
#[must_use]
pub fn find<'r>(text: &str, rulesets: &'r [Ruleset]) -> FoundRules<'r> {
    let sought = Sought::read(text);
    let mut found = FoundRules::default();
    let mut fits: Vec<Offer<'r>> = Vec::new();
    for ruleset in rulesets {
        let only = match fit(ruleset, &sought) {
            Holding::No => continue,
            Holding::Holds => None,
            Holding::OnlyWhere(what) => Some(what),
        };
        fits.push(Offer {
            ruleset,
            only,
            read_there: sought
                .region
                .is_some_and(|region| taken_up(ruleset, region)),
            editions: Vec::new(),
            ended: None,
        });
    }
    for offer in without_what_was_changed(newest_of_each(fits, sought.built), &sought) {
        let group = match (&offer.only, offer.ruleset.advisory) {
            (Some(_), _) => &mut found.only_where,
            (None, true) => &mut found.advice,
            (None, false) => &mut found.law,
        };
        group.push(offer);
    }
    // a code of houses before one of all other buildings, where it is a house
    let of_homes = |ruleset: &Ruleset| sought.home.is_some() && counts_homes(ruleset);
    found
        .law
        .sort_by_key(|offer| (nearness(offer.ruleset), !of_homes(offer.ruleset)));
    found.advice.sort_by_key(|offer| nearness(offer.ruleset));
    found.not_here = not_here(&sought, &found);
    found.ask = ask(&sought, &found);
    found.sought = sought;
    found
}

/// Those of a city first, then of a state, a country, a continent, and of anywhere.
fn nearness(ruleset: &Ruleset) -> u8 {
    let region = ruleset.regions.first();
    let region = region.and_then(|name| gazetteer::region(name));
    match (region, ruleset.country.as_deref()) {
        (
            Some(Region {
                within: Some(_), ..
            }),
            _,
        ) => 0,
        (Some(_), _) => 1,
        (None, Some(gazetteer::EUROPE)) => 3,
        (None, Some(gazetteer::ANYWHERE) | None) => 4,
        (None, Some(_)) => 2,
    }
}

/// Whether how many homes are in the building decides what it covers.
fn counts_homes(ruleset: &Ruleset) -> bool {
    let mut covered = ruleset.covers.conditions.iter();
    covered.any(|condition| condition.item == Item::DwellingsInBuilding)
}

/// Whether a ruleset holds for what was asked.
enum Holding {
    No,
    Holds,
    OnlyWhere(String),
}

fn fit(ruleset: &Ruleset, sought: &Sought) -> Holding {
    let country = match ruleset.country.as_deref() {
        None | Some(gazetteer::ANYWHERE) => true,
        Some(gazetteer::EUROPE) => sought.countries.iter().any(|c| gazetteer::in_europe(c)),
        Some(country) => sought.countries.contains(&country),
    };
    let mut covered = ruleset.covers.conditions.iter();
    if !country || !covered.all(|condition| may_hold(condition, sought)) {
        return Holding::No;
    }
    if sought
        .region
        .is_some_and(|region| named(&ruleset.not_in, region))
        || (ruleset.not_for_houses && sought.home == Some(Home::House))
    {
        return Holding::No;
    }
    let mut only = Vec::new();
    match there(&ruleset.regions, sought.region) {
        There::Yes => {}
        There::No => return Holding::No,
        There::Perhaps => only.push(format!("in {}", ruleset.regions.join(" or "))),
    }
    let asked = ruleset
        .matters
        .iter()
        .any(|matter| sought.matters.contains(matter));
    if !ruleset.matters.is_empty() && !asked {
        let matters: Vec<&str> = ruleset.matters.iter().map(|matter| matter.name()).collect();
        only.push(format!("for {}", matters.join(" or ")));
    }
    if only.is_empty() {
        Holding::Holds
    } else {
        Holding::OnlyWhere(only.join(", "))
    }
}

/// Whether somebody is in a region.
enum There {
    Yes,
    No,
    Perhaps,
}

/// A state's rules hold in its cities; a city's may hold where only the state is
/// known. A ruleset that names no region holds in the whole country.
fn there(own: &[String], asked: Option<&str>) -> There {
    let within = |name: &str| gazetteer::region(name).and_then(|region| region.within);
    let Some(asked) = asked.filter(|_| !own.is_empty()) else {
        return if own.is_empty() {
            There::Yes
        } else {
            There::Perhaps
        };
    };
    let state = within(asked);
    if own
        .iter()
        .any(|own| own == asked || Some(own.as_str()) == state)
    {
        There::Yes
    } else if own.iter().any(|own| within(own) == Some(asked)) {
        There::Perhaps
    } else {
        There::No
    }
}

/// Whether a circumstance that a ruleset covers may hold; what was not said may.
fn may_hold(condition: &Condition, sought: &Sought) -> bool {
    let word = if condition.item == Item::Place {
        sought.place
    } else if condition.item == Item::Use {
        sought.purpose
    } else {
        None
    };
    match &condition.test {
        Test::OneOf(list) => word.is_none_or(|word| list.contains(&word)),
        Test::NoneOf(list) => word.is_none_or(|word| !list.contains(&word)),
        Test::Count(bounds) if condition.item == Item::DwellingsInBuilding => {
            sought.home.is_none_or(|home| may_count(home, bounds))
        }
        Test::Age(_) | Test::Count(_) | Test::Length(_) | Test::Years(_) => true,
    }
}

/// Whether a building with such a home may have that many: a house one or two, one
/// with flats three or more.
fn may_count(home: Home, bounds: &Bounds<u32>) -> bool {
    let (least, most) = match home {
        Home::House => (1, 2),
        Home::Flat => (3, u32::MAX),
    };
    bounds.at_least.is_none_or(|limit| most >= limit)
        && bounds.above.is_none_or(|limit| most > limit)
        && bounds.at_most.is_none_or(|limit| least <= limit)
        && bounds.below.is_none_or(|limit| least < limit)
}

/// Where a state has changed a model edition, the model itself holds there no more; for
/// the year of building it may have.
fn without_what_was_changed<'r>(offers: Vec<Offer<'r>>, sought: &Sought) -> Vec<Offer<'r>> {
    if sought.built.is_some() || sought.region.is_none() {
        return offers;
    }
    let own = offers
        .iter()
        .filter(|offer| !offer.ruleset.regions.is_empty());
    let changed: Vec<String> = own
        .filter(|offer| offer.only.is_none())
        .filter_map(|offer| Some(stem(offer.ruleset.extends.as_deref()?).to_owned()))
        .collect();
    let model = |offer: &Offer<'_>| offer.ruleset.regions.is_empty();
    let is_changed = |offer: &Offer<'_>| changed.iter().any(|of| of == stem(&offer.ruleset.id));
    let mut offers = offers;
    offers.retain(|offer| !(model(offer) && is_changed(offer)));
    offers
}

/// Whether a state, or that of a city, has taken an edition up.
fn taken_up(ruleset: &Ruleset, region: &str) -> bool {
    named(&ruleset.taken_up, region)
}

/// Whether some states name a region, or the state that it lies in.
fn named(states: &[String], region: &str) -> bool {
    let state = gazetteer::region(region).and_then(|region| region.within);
    let mut names = states.iter();
    names.any(|name| name == region || Some(name.as_str()) == state)
}

/// Of several editions one: that of the year where one was said, else the one that is
/// known to have been taken up there, else the newest.
fn newest_of_each(offers: Vec<Offer<'_>>, built: Option<i32>) -> Vec<Offer<'_>> {
    let mut kept: Vec<Offer<'_>> = Vec::new();
    let mut offers = offers;
    offers.sort_by_key(|offer| std::cmp::Reverse(edition(offer.ruleset)));
    for offer in offers {
        let same = |other: &&mut Offer<'_>| stem(&other.ruleset.id) == stem(&offer.ruleset.id);
        let Some(first) = kept.iter_mut().find(same) else {
            kept.push(offer);
            continue;
        };
        let of_its_time = |ruleset: &Ruleset| {
            let years = ruleset.in_force;
            built.zip(years).is_some_and(|(built, years)| {
                years.from <= built && years.until.is_none_or(|until| built < until)
            })
        };
        let better = match built {
            Some(_) => of_its_time(offer.ruleset) && !of_its_time(first.ruleset),
            None => offer.read_there && !first.read_there,
        };
        if better {
            first.editions.insert(0, &first.ruleset.id);
            first.ruleset = offer.ruleset;
            first.read_there = offer.read_there;
        } else {
            first.editions.push(&offer.ruleset.id);
        }
    }
    for offer in &mut kept {
        let until = offer.ruleset.in_force.and_then(|years| years.until);
        let later = |id: &&str| number_of(id) > number_of(&offer.ruleset.id);
        offer.ended = until.filter(|_| !offer.editions.iter().any(later));
    }
    kept.sort_by(|a, b| a.ruleset.id.cmp(&b.ruleset.id));
    kept
}

/// The year from which an edition was current, else the number at the end of its id.
fn edition(ruleset: &Ruleset) -> i32 {
    let number = number_of(&ruleset.id);
    ruleset.in_force.map_or(number, |years| years.from)
}

/// The number at the end of an id, 0 where there is none.
fn number_of(id: &str) -> i32 {
    id[stem(id).len()..].parse().unwrap_or(0)
}

/// An id without the number of its edition.
fn stem(id: &str) -> &str {
    id.trim_end_matches(|c: char| c.is_ascii_digit())
}

fn not_here(sought: &Sought, found: &FoundRules<'_>) -> Vec<String> {
    let mut not_here = Vec::new();
    let place = sought.region.or(sought.countries.first().copied());
    let Some(place) = place else {
        return not_here;
    };
    let of_country = |offer: &&Offer<'_>| !offer.ruleset.advisory;
    if found.law.is_empty() {
        let for_what = match (sought.home, sought.purpose, sought.place) {
            (Some(Home::Flat), ..) => " for flats",
            (Some(Home::House), ..) => " for houses",
            (None, Some(usage::WORKPLACE), _) => " for workplaces",
            (None, Some(_), _) => " for this",
            (None, None, Some(_)) => " for this place",
            (None, None, None) => "",
        };
        not_here.push(format!(
            "No building rules{for_what} in {place} are here. Ask the building office which hold."
        ));
    } else if let Some(region) = sought.region {
        let own = |offer: &Offer<'_>| {
            let own = &offer.ruleset.regions;
            let its = !own.is_empty() && matches!(there(own, Some(region)), There::Yes);
            its || offer.read_there
        };
        if !found.law.iter().filter(of_country).any(own) {
            not_here.push(format!(
                "Nothing that {region} itself says about this is here. What is named holds there only \
as far as it was taken up, and may have been changed: ask the building office."
            ));
        }
    }
    for country in &sought.countries {
        let mut all = found.law.iter().chain(&found.only_where);
        let named = |offer: &Offer<'_>| offer.ruleset.country.as_deref() == Some(country);
        if sought.countries.len() > 1 && !all.any(named) {
            not_here.push(format!("No building rules of {country} are here."));
        }
    }
    for matter in &sought.matters {
        let about = |offer: &Offer<'_>| offer.ruleset.matters.contains(matter);
        if !found.law.iter().chain(&found.advice).any(about) {
            let matter = matter.name();
            not_here.push(format!(
                "No rules about {matter} alone in {place} are here."
            ));
        }
    }
    if let Some(built) = sought.built {
        let then = |offer: &Offer<'_>| {
            offer.ruleset.in_force.is_some_and(|years| {
                years.from <= built && years.until.is_none_or(|until| built < until)
            })
        };
        if !found.law.iter().any(then) {
            not_here.push(format!(
                "No building rules here say that they were in force in {built}."
            ));
        }
    }
    not_here
}

fn ask(sought: &Sought, found: &FoundRules<'_>) -> Vec<&'static str> {
    let mut ask = Vec::new();
    let in_a_part = |offer: &Offer<'_>| !offer.ruleset.regions.is_empty();
    match sought.countries.len() {
        0 => ask.push("the country, and the state or province"),
        1 if sought.region.is_none() && found.only_where.iter().any(in_a_part) => {
            ask.push("the state, province or city");
        }
        1 => {}
        _ => ask.push("which of the countries"),
    }
    let home = matches!(sought.purpose, None | Some(usage::DWELLING));
    let tells_homes_apart = |ruleset: &Ruleset| counts_homes(ruleset) || ruleset.not_for_houses;
    let mut law = found.law.iter();
    if home && sought.home.is_none() && law.any(|offer| tells_homes_apart(offer.ruleset)) {
        ask.push("a house, or a flat in a building with three homes or more");
    }
    let in_years = |offer: &Offer<'_>| offer.ruleset.in_force.is_some();
    let mut law = found.law.iter();
    if sought.built.is_none() && law.any(|offer| in_years(offer) && !offer.editions.is_empty()) {
        ask.push("the year in which it was built, since an older edition may count");
    }
    ask
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::embedded_ids;
    use crate::rules::load;

    #[test]
    fn every_country_and_region_of_a_ruleset_is_on_the_map() {
        for id in embedded_ids() {
            let ruleset = load(id, &|_| None).ruleset.expect("a shipped one");
            let known = |name: &str| gazetteer::names().any(|known| known == name);
            let country = ruleset.country.as_deref().expect("a country, or any");
            let wide = [gazetteer::EUROPE, gazetteer::ANYWHERE].contains(&country);
            assert!(wide || known(country), "{id}: {country}");
            for region in &ruleset.regions {
                let on_map = gazetteer::region(region).expect("a region of the map");
                assert_eq!(on_map.country, country, "{id}: {region}");
            }
        }
    }

    #[test]
    fn a_house_has_one_home_or_two_and_a_flat_two_neighbours_or_more() {
        let bounds = |key: &str, count: u32| {
            let mut bounds = Bounds::default();
            let bound = match key {
                "at least" => &mut bounds.at_least,
                "above" => &mut bounds.above,
                "at most" => &mut bounds.at_most,
                _ => &mut bounds.below,
            };
            *bound = Some(count);
            bounds
        };
        for (home, key, last, next) in [
            (Home::House, "at least", 2, 3),
            (Home::House, "above", 1, 2),
            (Home::House, "at most", 1, 0),
            (Home::House, "below", 2, 1),
            (Home::Flat, "at most", 3, 2),
            (Home::Flat, "below", 4, 3),
        ] {
            assert!(may_count(home, &bounds(key, last)), "{key} {last}");
            assert!(!may_count(home, &bounds(key, next)), "{key} {next}");
        }
    }
}
