//! Which rulesets hold here, by two or three plain questions, before a walk begins.

use crate::rules::Ruleset;
use crate::rules::find;
use crate::walk::Prompt;
use crate::walk::PromptChoice;
use crate::walk::Reply;
use crate::walk::RulesTopic;
use crate::walk::Taking;
use crate::walk::Topic;
use crate::walk::words::yes_or_no;

/// No more rulesets are offered at once. (common practice, no source)
const OFFERED: usize = 9;

/// What has come out of the questions.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RulesSought {
    /// These rulesets, by their ids; none where advice alone is wanted.
    Chosen(Vec<String>),
    /// There is something to ask still.
    Open,
}

/// The questions where no ruleset was named: where, what kind of home, which of several.
#[derive(Clone, Debug)]
pub struct RulesSearch<'r> {
    all: &'r [Ruleset],
    words: String,
    topic: RulesTopic,
    sought: RulesSought,
    /// What is offered: id and title.
    offered: Vec<(String, String)>,
    /// The place that was likely meant by one that is unknown, and what was written.
    meant: Option<(&'static str, String)>,
}

impl<'r> RulesSearch<'r> {
    /// Among these rulesets.
    #[must_use]
    pub fn new(all: &'r [Ruleset]) -> RulesSearch<'r> {
        RulesSearch {
            all,
            words: String::new(),
            topic: RulesTopic::Country,
            sought: RulesSought::Open,
            offered: Vec::new(),
            meant: None,
        }
    }

    /// What has come out so far.
    #[must_use]
    pub fn sought(&self) -> &RulesSought {
        &self.sought
    }

    /// What to ask now.
    #[must_use]
    pub fn step(&self) -> Prompt {
        let topic = Topic::Rules(self.topic);
        match self.topic {
            RulesTopic::Country => {
                let mut ask = Prompt::bare(
                    topic,
                    "Where is it: which country, and which state or province?",
                    "advice alone, no building rules",
                );
                ask.examples = vec![
                    "Florida".to_owned(),
                    "Ontario".to_owned(),
                    "England".to_owned(),
                ];
                if let Some((near, written)) = &self.meant {
                    ask.question = format!(
                        "{written} is no country or state that is known here. Was {near} meant?"
                    );
                    ask.short.clone_from(&ask.question);
                    ask.examples = Vec::new();
                    ask.how = vec!["Or write it anew.".to_owned()];
                    ask.enter = format!("yes, {near}");
                }
                ask.more = vec!["It finds the building rules that hold there, among those that are in this program. Nothing is sent anywhere.".to_owned()];
                ask
            }
            RulesTopic::Home => Prompt::bare(topic, "Is it a house, or a flat?", "not known")
                .choosing(
                    Taking::ByLetters,
                    &[
                        ("house", "for one household or two"),
                        ("flat", "in a building with three homes or more"),
                        ("work", "no home at all: shop, school, workplace"),
                    ],
                )
                .with_how("Words more where they hold: rented flat"),
            RulesTopic::Which => {
                let first = self.offered.first().map_or("", |(id, _)| id.as_str());
                let mut ask = Prompt::bare(
                    topic,
                    "Which of these hold? Those of the nearest place come first.",
                    first,
                );
                ask.taking = Taking::Several;
                ask.choices = (1..)
                    .zip(&self.offered)
                    .map(|(number, (id, title)): (usize, _)| {
                        PromptChoice::new(number.to_string(), format!("{id}: {title}"))
                    })
                    .collect();
                ask.how = vec!["Several: 1 2. None of them: n".to_owned()];
                ask
            }
        }
    }

    /// Takes an answer.
    pub fn answer(&mut self, typed: &str) -> Vec<Reply<'r>> {
        let shown = typed.chars().map(|c| if c.is_control() { ' ' } else { c });
        let text: String = shown.take(200).collect();
        let text = text.trim();
        let mut said = Vec::new();
        match (text, self.topic) {
            ("?", _) => said.push(Reply::More),
            ("help", _) => said.push(Reply::Help),
            (text, RulesTopic::Country) => match (self.meant.take(), yes_or_no(text)) {
                (Some((near, _)), Some(true)) => self.somewhere(near, &mut said),
                (Some((near, _)), None) if text.is_empty() => self.somewhere(near, &mut said),
                // asked anew
                (Some(_), Some(false)) => {}
                (None, _) if text.is_empty() || text == "skip" => {
                    self.choose(Vec::new(), &mut said);
                }
                (_, _) => self.somewhere(text, &mut said),
            },
            (text, RulesTopic::Home) => self.home(text, &mut said),
            (text, RulesTopic::Which) => self.which(text, &mut said),
        }
        said
    }

    fn somewhere(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let found = find(text, self.all);
        if found.sought.countries.is_empty() {
            let nearest = found.sought.unknown.iter().find_map(|(_, near)| *near);
            if let Some(near) = nearest {
                self.meant = Some((near, text.to_owned()));
                return;
            }
            let message = format!("{text} is no country or state that is known here");
            let help = "write the country, or the state or province; Enter for advice alone";
            said.push(Reply::Refused(message, Some(help.to_owned())));
            return;
        }
        text.clone_into(&mut self.words);
        let home = found.ask.iter().any(|ask| ask.contains("house"));
        if home {
            self.topic = RulesTopic::Home;
        } else {
            self.offer(said);
        }
    }

    fn home(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        let words = ["house", "flat", "workplace", "work"];
        let lower = text.to_lowercase();
        let meant = words
            .iter()
            .find(|word| !lower.is_empty() && word.starts_with(&lower));
        let said_of_it = |text: &str| {
            let mut each = text.split(|c: char| !c.is_alphabetic());
            each.any(|one| words.contains(&one))
        };
        match (meant, text.is_empty()) {
            (_, true) => {}
            (None, false) if said_of_it(&lower) => {
                self.words.push(' ');
                self.words.push_str(&lower);
            }
            (Some(word), false) => {
                self.words.push(' ');
                self.words
                    .push_str(if *word == "work" { "workplace" } else { word });
            }
            (None, false) => {
                let help = "write house, flat or work".to_owned();
                said.push(Reply::Refused(
                    format!("{text} was not understood"),
                    Some(help),
                ));
                return;
            }
        }
        self.offer(said);
    }

    fn offer(&mut self, said: &mut Vec<Reply<'r>>) {
        let found = find(&self.words, self.all);
        let law = found
            .law
            .iter()
            .chain(found.only_where.iter().filter(|offer| {
                !offer.ruleset.advisory
                    && offer
                        .only
                        .as_ref()
                        .is_some_and(|only| only.starts_with("in "))
            }));
        self.offered = law
            .take(OFFERED)
            .map(|offer| {
                let only = offer
                    .only
                    .as_ref()
                    .map_or_else(String::new, |only| format!("{only}: "));
                (
                    offer.ruleset.id.clone(),
                    format!("{only}{}", offer.ruleset.title),
                )
            })
            .collect();
        said.extend(
            found
                .not_here
                .iter()
                .map(|says| Reply::Remark(says.clone())),
        );
        match self.offered.as_slice() {
            [] => self.choose(Vec::new(), said),
            [(id, _)] if found.law.len() == 1 => {
                let only = id.clone();
                self.choose(vec![only], said);
            }
            [_, ..] => self.topic = RulesTopic::Which,
        }
    }

    fn which(&mut self, text: &str, said: &mut Vec<Reply<'r>>) {
        if text.is_empty() {
            let first = self.offered.first().map(|(id, _)| id.clone());
            self.choose(first.into_iter().collect(), said);
            return;
        }
        if yes_or_no(text) == Some(false) || text == "none" {
            self.choose(Vec::new(), said);
            return;
        }
        let mut chosen: Vec<String> = Vec::new();
        for part in text.split([' ', ',', ';']).filter(|part| !part.is_empty()) {
            let by_number = part
                .parse::<usize>()
                .ok()
                .and_then(|number| self.offered.get(number.wrapping_sub(1)));
            let by_id = self.offered.iter().find(|(id, _)| id == part);
            let Some((id, _)) = by_number.or(by_id) else {
                let help = "write the numbers in front of them, or n for none".to_owned();
                said.push(Reply::Refused(
                    format!("{part} is not in the list"),
                    Some(help),
                ));
                return;
            };
            if !chosen.contains(id) {
                chosen.push(id.clone());
            }
        }
        self.choose(chosen, said);
    }

    fn choose(&mut self, chosen: Vec<String>, said: &mut Vec<Reply<'r>>) {
        let text = if chosen.is_empty() {
            "No building rules are checked then, only advice.".to_owned()
        } else {
            format!("Noted. Building rules: {}.", chosen.join(", "))
        };
        said.push(Reply::Remark(text));
        self.sought = RulesSought::Chosen(chosen);
    }
}
