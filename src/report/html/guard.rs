//! One guard's page.

use maud::Markup;
use maud::html;

use crate::items::Verdict;
use crate::judge::Authority;
use crate::report::PageFor;
use crate::report::guard_drawing::front;
use crate::report::guard_drawing::hole;
use crate::report::html::headings::HeadingDepth;
use crate::report::html::marks;
use crate::report::html::photos;
use crate::report::html::sheet::PageSheet;
use crate::report::html::sheet::running;
use crate::report::reader;
use crate::report::told::GuardTold;
use crate::report::told::HazardTold;
use crate::report::told::MORE;
use crate::report::told::Paragraph;
use crate::report::told::RuleTold;
use crate::report::told::Sentence;
use crate::report::told::written;
use crate::report::told::written::SaidOfItem;
use crate::report::wrap::quantities_tied;

/// One guard and its place among the others.
pub(super) struct OnePage<'t> {
    pub(super) told: &'t GuardTold,
    /// Its number in the order of the report, from 1.
    pub(super) number: usize,
    pub(super) depth: HeadingDepth,
    /// What is said once for all guards.
    pub(super) for_all: &'t [SaidOfItem],
    /// A record holds every rule on paper as well.
    pub(super) page_for: PageFor,
    /// What a reader must know of what was judged at all, where nothing stands above.
    pub(super) above: Option<&'t Markup>,
}

impl OnePage<'_> {
    /// The whole article.
    pub(super) fn article(&self, sheet: &PageSheet<'_>) -> Markup {
        let told = self.told;
        let (id, name_id) = (
            format!("railing-{}", self.number),
            format!("name-{}", self.number),
        );
        let name = html! { (marks::big(told.verdict)) " " (told.name) };
        let far = match self.depth {
            HeadingDepth::Alone => "sheet",
            HeadingDepth::OfSeveral => "sheet far",
        };
        html! {
            article class=(far) id=(id) aria-labelledby=(name_id) {
                (running(&sheet.running_head(self.number, &told.name)))
                div class="matter" {
                    (self.depth.name(&name_id, &name))
                    p { (reader::capital(&told.comes_out)) "." }
                    @if let Some(above) = self.above { (above) }
                    (self.not_entered())
                    (self.tonight())
                    (self.drawing())
                    (self.hazards(sheet.authority))
                    (self.cards())
                    (self.photos())
                    (self.holds())
                    (self.open())
                    (self.as_written())
                    (self.rules())
                }
                (sheet.foot())
            }
        }
    }

    fn not_entered(&self) -> Markup {
        let Some(why) = &self.told.not_entered else {
            return html! {};
        };
        html! {
            p class="law" { b { "Not entered." } @if !why.is_empty() { " “" (why) "”" } }
        }
    }

    /// What comes before every rule.
    fn tonight(&self) -> Markup {
        if self.told.tonight.is_empty() {
            return html! {};
        }
        html! {
            section class="say" {
                @for (at, act) in self.told.tonight.iter().enumerate() {
                    @let said = at > 0 && self.told.tonight[at - 1].call == act.call;
                    @if !said {
                        (self.depth.part(if act.call.is_empty() { "Tonight" } else { act.call }))
                    }
                    p { (quantities_tied(&act.why)) " " (act.does) }
                }
            }
        }
    }

    /// To scale where that is known, and silent where it is not.
    fn drawing(&self) -> Markup {
        let drawn = self.told.page.as_ref().and_then(|page| page.drawn.as_ref());
        let Some(drawn) = drawn else {
            return html! {};
        };
        let front = front(drawn, &format!("front-{}", self.number));
        if front.is_none() && drawn.hole.is_none() {
            return html! {};
        }
        html! {
            div class="left" {
                @if let Some(front) = front { (front) }
                @if let Some(drawn) = &drawn.hole { (hole(drawn, &format!("hole-{}", self.number))) }
            }
        }
    }

    fn hazards(&self, authority: Authority) -> Markup {
        let columns = match authority {
            Authority::Law => vec!["the rules", "the advice"],
            Authority::Guidance => vec!["the advice"],
        };
        let cells = |of: &HazardTold| match authority {
            Authority::Law => vec![of.rules, of.advice],
            Authority::Guidance => vec![of.advice],
        };
        html! {
            section class="beside" {
                (self.depth.part("Can a child come to harm …"))
                table class="hazards" {
                    thead { tr {
                        th scope="col" { "how" }
                        @for column in columns { th scope="col" { (column) } }
                    } }
                    tbody {
                        @for of in &self.told.each_hazard {
                            tr {
                                th scope="row" { (reader::hazard(of.hazard)) }
                                @for verdict in cells(of) { td { (self.hazard(verdict)) } }
                            }
                        }
                    }
                }
            }
        }
    }

    fn hazard(&self, verdict: Option<Verdict>) -> Markup {
        if self.told.open_edge {
            return marks::with(Verdict::FallsShort, "open edge");
        }
        marks::said(verdict.unwrap_or(Verdict::DoesNotApply))
    }

    fn cards(&self) -> Markup {
        if self.told.paragraphs.is_empty() {
            return html! {};
        }
        html! {
            section {
                (self.depth.part("What is wrong, worst first"))
                ol class="cards" {
                    @for (number, paragraph) in (1..).zip(&self.told.paragraphs) {
                        li class="card" { (self.card(number, paragraph)) }
                    }
                }
            }
        }
    }

    fn card(&self, number: usize, paragraph: &Paragraph) -> Markup {
        let name = format!("{} {}", reader::tie(number), paragraph.title);
        let readings = quantities_tied(&paragraph.readings);
        let beside = (1..=SHORT_READINGS).contains(&readings.chars().count());
        html! {
            @if beside {
                (self.depth.card(&format!("{name}: {readings}")))
            } @else {
                (self.depth.card(&name))
                @if !readings.is_empty() { p { (readings) "." } }
            }
            p class="outcome" { (marks::said(paragraph.verdict)) " · " b { (quantities_tied(&paragraph.shortly)) } }
            p { (sentences(&paragraph.sentences)) }
            @for does in &paragraph.does {
                p { (act(&format!("{}{}{}", does.before, does.amount, does.after))) }
            }
            @if !paragraph.sources.is_empty() { p class="source" { (paragraph.sources.join("; ")) "." } }
        }
    }

    fn photos(&self) -> Markup {
        let photos = self.told.page.as_ref().map_or(&[][..], |page| &page.photos);
        photos::section(photos, &self.depth.part("Photographs"))
    }

    fn holds(&self) -> Markup {
        let mut said = self
            .told
            .holds
            .iter()
            .filter(|said| !said.is_empty())
            .peekable();
        if said.peek().is_none() {
            return html! {};
        }
        html! {
            section {
                (self.depth.part("What holds it"))
                p { "Worked out from what was seen and not tested: an engineer decides." }
                @for sentences in said { p { (sentences.join(" ")) } }
            }
        }
    }

    /// What is not settled, and what would settle it.
    fn open(&self) -> Markup {
        let told = self.told;
        let nothing = told.unclear.is_empty()
            && told.could_not_look.is_empty()
            && told.next.is_empty()
            && !told.waits_for_the_posts;
        if nothing {
            return html! {};
        }
        html! {
            section {
                (self.depth.part("Look at and write down next"))
                ul class="next" {
                    @for why in &told.unclear { li { (marks::mark(Verdict::NotSettled)) " " (why) } }
                    @for what in &told.could_not_look {
                        li { (marks::with(Verdict::NotMeasured, "not looked at")) ": " (what) "." }
                    }
                    @if told.waits_for_the_posts {
                        li { "Nothing more is looked at by hand here; the rest waits for the posts." }
                    } @else {
                        @for next in &told.next {
                            li { (marks::mark(Verdict::NotMeasured)) " " b { (next.asks) } " " (next.how) }
                        }
                    }
                }
            }
        }
    }

    /// Every reading and note that nothing above has said.
    fn as_written(&self) -> Markup {
        let told = self.told;
        let mut others = told.written.clone();
        others.extend(written::without(&told.inherited, self.for_all));
        let parts = [("Met, as written", &told.met), ("As written", &others)];
        let parts = parts.iter().filter(|(_, parts)| !parts.is_empty());
        html! {
            details open[self.is_near()] {
                summary { "Met, and as written" }
                @for (what, parts) in parts {
                    p { b { (what) ":" } }
                    ul class="written" { @for part in *parts { li { (part.says) } } }
                }
                @if !told.taken.is_empty() { p { "Taken as given: " (told.taken.join("; ")) "." } }
            }
        }
    }

    /// Whether its notes stand open on a screen.
    fn is_near(&self) -> bool {
        self.depth == HeadingDepth::Alone
    }

    fn rules(&self) -> Markup {
        let rules = self.told.page.as_ref().map_or(&[][..], |page| &page.rules);
        if rules.is_empty() {
            return html! {};
        }
        let class = match self.page_for {
            PageFor::Record => "of-record",
            PageFor::Anybody | PageFor::Landlord | PageFor::Contractor | PageFor::LifeSize => {
                "every-rule"
            }
        };
        let applies = |rule: &&RuleTold| rule.verdict != Verdict::DoesNotApply;
        let elsewhere: Vec<&RuleTold> = rules.iter().filter(|rule| !applies(rule)).collect();
        html! {
            details class=(class) {
                summary { "Every rule, how it came out, and its source" }
                ul class="found" {
                    @for rule in rules.iter().filter(applies) {
                        li {
                            (marks::said(rule.verdict)) " (" (rule.by) ") " (rule.compared) ". "
                            (rule.says) " "
                            @for why in &rule.why { (why) " " }
                            span class="source" { (rule.source) "." }
                        }
                    }
                }
                @if !elsewhere.is_empty() {
                    p { "Not asked here: "
                        (elsewhere.iter().map(|rule| rule.source.as_str()).collect::<Vec<_>>().join("; ")) "." }
                }
            }
        }
    }
}

/// Sentences one after another, their amounts standing out.
/// Readings longer than this stand below a card's name and not beside it.
const SHORT_READINGS: usize = 90;

fn sentences(sentences: &[Sentence]) -> Markup {
    html! {
        @for sentence in sentences {
            (quantities_tied(&sentence.before))
            @if !sentence.amount.is_empty() { b { (quantities_tied(&sentence.amount)) } }
            @if sentence.after == MORE { ", said below." } @else { (quantities_tied(&sentence.after)) } " "
        }
    }
}

/// `Do: …` with its first word standing out.
fn act(text: &str) -> Markup {
    let text = quantities_tied(text);
    match text.split_once(": ") {
        Some((lead, rest)) => html! { b { (lead) ":" } " " (rest) },
        None => html! { (text) },
    }
}
