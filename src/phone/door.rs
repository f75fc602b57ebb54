//! The door: one request in, one answer out.

use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::items::Item;
use crate::judge::Authority;
use crate::judge::DangerSeen;
use crate::judge::HazardVerdict;
use crate::judge::Judged;
use crate::phone::answer::DangerAct;
use crate::phone::answer::DoorAnswer;
use crate::phone::answer::GuardSoFar;
use crate::phone::answer::HalfTyped;
use crate::phone::answer::HazardSoFar;
use crate::phone::answer::PageSaid;
use crate::phone::answer::SaidKind;
use crate::phone::answer::Searched;
use crate::phone::answer::State;
use crate::phone::check::checked;
use crate::phone::check::told;
use crate::phone::plain::UNBROKEN;
use crate::phone::plain::paragraphs;
use crate::phone::request::Request;
use crate::phone::screen::Screen;
use crate::report;
use crate::rules::Guidance;
use crate::rules::Ruleset;
use crate::rules::chosen;
use crate::rules::embedded_ids;
use crate::rules::load_head;
use crate::survey::Guard;
use crate::survey::Observation;
use crate::walk::Prompt;
use crate::walk::Reply;
use crate::walk::RulesSearch;
use crate::walk::RulesSought;
use crate::walk::Settings;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::rules_of;

/// A walk that a page holds, and what it needs beside it.
#[derive(Debug, Default)]
pub struct Door {
    walk: Option<OpenWalk>,
    /// Rulesets that some walk was begun with, by what was asked for. A walk borrows
    /// its rulesets for as long as it lasts, and it lasts as long as the door: so each
    /// choice of them is read once and never given back. A person makes a handful of
    /// choices, of a hundred kilobytes each.
    read: Vec<(Vec<String>, &'static [Ruleset])>,
    /// The heads of all shipped rulesets, as far as they were read: enough to find those
    /// that hold.
    library: Vec<Ruleset>,
}

#[derive(Debug)]
struct OpenWalk {
    walk: Walk<'static>,
    rulesets: &'static [Ruleset],
    /// What a half-typed answer led to: mostly it is the one that is then given.
    tried: Option<Tried>,
}

/// An answer that was given to a copy of the walk.
#[derive(Debug)]
struct Tried {
    typed: String,
    walk: Walk<'static>,
    told: Vec<Reply<'static>>,
}

impl Door {
    /// Answers one request; a request that is none, or that comes at a wrong time, is
    /// answered by `{"error": …}`.
    #[must_use]
    pub fn call(&mut self, request: &[u8]) -> Vec<u8> {
        let answer = serde_json::from_slice(request)
            .map_err(|error| error.to_string())
            .and_then(|request| self.answer(request))
            .unwrap_or_else(|error| DoorAnswer::Error { error });
        // plain data, and no map with keys that are no text
        serde_json::to_vec(&answer).unwrap_or_default()
    }

    fn answer(&mut self, request: Request) -> Result<DoorAnswer, String> {
        match request {
            Request::Answer { typed } => {
                let open = self.walk.as_mut().ok_or(NO_WALK)?;
                let ask = open.walk.step();
                let told = match open.tried.take() {
                    Some(tried) if tried.typed == typed => {
                        open.walk = tried.walk;
                        tried.told
                    }
                    Some(_) | None => open.walk.answer(&typed),
                };
                Ok(open.state(said(&told, &ask)))
            }
            Request::Begin {
                name,
                survey,
                today,
                rules,
            } => self.begin(name, &survey, today, rules),
            Request::Check {
                files,
                rules,
                form,
                today,
                only,
                photos,
            } => checked(files, &rules, form, today, only.as_ref(), photos)
                .map(DoorAnswer::Checked)
                .map_err(|error| error.to_string()),
            Request::Guards => {
                let open = self.walk.as_ref().ok_or(NO_WALK)?;
                Ok(DoorAnswer::Guards {
                    guards: open.guards(),
                })
            }
            Request::Search { lines } => Ok(DoorAnswer::Searched(Box::new(self.search(&lines)))),
            Request::State => {
                let open = self.walk.as_ref().ok_or(NO_WALK)?;
                Ok(open.state(Vec::new()))
            }
            Request::Understand { typed } => {
                let open = self.walk.as_mut().ok_or(NO_WALK)?;
                Ok(DoorAnswer::HalfTyped(open.understand(typed)))
            }
            Request::Warm => Ok(DoorAnswer::Warm { left: self.warm() }),
        }
    }

    /// The questions that find the rulesets, answered so far. The first one needs no
    /// ruleset, so that it can stand before any was read.
    fn search(&mut self, lines: &[String]) -> Searched {
        if !lines.is_empty() {
            while self.warm() > 0 {}
        }
        let mut search = RulesSearch::new(&self.library);
        let mut told = Vec::new();
        for line in lines {
            let ask = search.step();
            told = said(&search.answer(line), &ask);
        }
        Searched {
            question: Screen::of(&search.step(), 0),
            said: told,
            chosen: match search.sought() {
                RulesSought::Chosen(ids) => Some(ids.clone()),
                RulesSought::Open => None,
            },
        }
    }

    /// Reads the head of one more of the shipped rulesets; how many are left.
    fn warm(&mut self) -> usize {
        let mut unread = embedded_ids().skip(self.library.len());
        if let Some(id) = unread.next() {
            let ruleset = load_head(id).unwrap_or_else(|| Ruleset::unreadable(id));
            self.library.push(ruleset);
        }
        unread.count()
    }

    fn begin(
        &mut self,
        name: String,
        survey: &str,
        today: Option<String>,
        rules: Vec<String>,
    ) -> Result<DoorAnswer, String> {
        let rulesets = self.rulesets(&name, survey, &rules)?;
        let settings = Settings {
            today,
            rules,
            ..Settings::default()
        };
        let walk = Walk::new(&name, survey, rulesets, settings).map_err(|e| e.to_string())?;
        let lines = report::before_a_walk(rulesets, walk.unit_in_force());
        let open = OpenWalk {
            walk,
            rulesets,
            tried: None,
        };
        let answer = open.state(vec![PageSaid {
            kind: SaidKind::Told,
            lines,
            acts: Vec::new(),
        }]);
        self.walk = Some(open);
        Ok(answer)
    }

    /// The rulesets of a walk: those that were asked for, else the survey's own.
    fn rulesets(
        &mut self,
        name: &str,
        survey: &str,
        rules: &[String],
    ) -> Result<&'static [Ruleset], String> {
        let of_survey = rules_of(name, survey);
        let mut named: Vec<(&str, Option<&Excerpt>)> = Vec::new();
        if of_survey.is_empty() {
            named.extend(rules.iter().map(|name| (name.as_str(), None)));
        }
        let rows = of_survey.iter();
        named.extend(rows.map(|row| (row.name.as_str(), Some(&row.at))));
        let asked: Vec<String> = named.iter().map(|(name, _)| (*name).to_owned()).collect();
        if let Some((_, known)) = self.read.iter().find(|(other, _)| *other == asked) {
            return Ok(known);
        }
        let mut diagnostics = Diagnostics::new();
        let rulesets = chosen(named, Guidance::Beside, &|_| None, &mut diagnostics);
        if diagnostics.any_error() {
            return Err(told(&diagnostics).map_err(|error| error.to_string())?);
        }
        let rulesets: &'static [Ruleset] = rulesets.leak();
        self.read.push((asked, rulesets));
        Ok(rulesets)
    }
}

const NO_WALK: &str = "no walk has begun";

impl OpenWalk {
    fn state(&self, said: Vec<PageSaid>) -> DoorAnswer {
        let ask = self.walk.step();
        let judged = self.walk.judged().map(|(_, judged)| judged);
        DoorAnswer::State(Box::new(State {
            survey: self.walk.text().to_owned(),
            guards: self.walk.guard_count(),
            errors: self.walk.errors(),
            question: Screen::of(&ask, self.walk.questions_left()),
            said,
            so_far: judged.map(so_far).unwrap_or_default(),
            written: self.written(),
            law: Authority::of(self.rulesets) == Authority::Law,
        }))
    }

    fn written(&self) -> Vec<(&'static str, String, String)> {
        let guard = self.walk.judged().map(|(guard, _)| guard);
        let all = guard.iter().flat_map(|guard| &guard.observations);
        let row = |o: &Observation| (o.item.name(), o.written.to_string(), o.note.to_string());
        all.map(row).collect()
    }

    /// What an answer would be understood as: it is given to a copy of the walk.
    fn understand(&mut self, typed: String) -> HalfTyped {
        let ask = self.walk.step();
        let mut walk = self.walk.clone();
        let told = walk.answer(&typed);
        let understood = half_typed(&walk, &told, &ask);
        self.tried = Some(Tried { typed, walk, told });
        understood
    }

    /// All railings, judged as `check` would.
    fn guards(&self) -> Vec<GuardSoFar> {
        let all = self.walk.all_judged();
        all.iter()
            .map(|(guard, judged)| railing(guard, judged))
            .collect()
    }
}

/// What became of an answer to this question: what was noted or refused, else what it
/// makes the walk ask back.
fn half_typed(walk: &Walk<'_>, told: &[Reply<'_>], ask: &Prompt) -> HalfTyped {
    let first = told
        .iter()
        .map(|reply| said_of(reply, ask))
        .find(|said| matches!(said.kind, SaidKind::Noted | SaidKind::Refused));
    if let Some(first) = first {
        return HalfTyped {
            taken: first.kind == SaidKind::Noted,
            lines: first.lines,
        };
    }
    let next = walk.step();
    let asks_back = matches!(next.topic, Topic::Answer(_));
    HalfTyped {
        taken: false,
        lines: if asks_back && next.topic != ask.topic {
            vec![next.question]
        } else {
            Vec::new()
        },
    }
}

fn railing(guard: &Guard, judged: &Judged<'_>) -> GuardSoFar {
    let photos = guard.of(Item::Photo).map(|(_, o)| o.written.to_string());
    GuardSoFar {
        place: report::guard_name(guard),
        building: guard.building.to_string(),
        unit: guard.unit.to_string(),
        guard: guard.name.to_string(),
        verdict: judged.verdict.name(),
        says: report::verdict(judged.verdict),
        acts: acts(&judged.dangers),
        photos: photos.collect(),
    }
}

fn so_far(judged: &Judged<'_>) -> Vec<HazardSoFar> {
    let one = |of: &HazardVerdict| HazardSoFar {
        hazard: report::hazard(of.hazard),
        verdict: of.verdict.map(|verdict| verdict.name()),
        says: of.verdict.map_or("no rule asks", report::verdict),
        advice: of.guidance.map(|verdict| verdict.name()),
        advice_says: of.guidance.map_or("", report::verdict),
    };
    judged.hazards.iter().map(one).collect()
}

fn acts(dangers: &[DangerSeen]) -> Vec<DangerAct> {
    let act = |seen: &DangerSeen| DangerAct {
        act: seen.danger.act,
        says: seen.danger.says,
    };
    dangers.iter().map(act).collect()
}

fn said(told: &[Reply<'_>], ask: &Prompt) -> Vec<PageSaid> {
    told.iter().map(|reply| said_of(reply, ask)).collect()
}

/// A reply in the words of the walk on a terminal.
fn said_of(reply: &Reply<'_>, ask: &Prompt) -> PageSaid {
    let (kind, acts) = match reply {
        Reply::Noted(..) | Reply::Understood { .. } => (SaidKind::Noted, Vec::new()),
        Reply::Refused(..) => (SaidKind::Refused, Vec::new()),
        Reply::Settled(_) | Reply::UntilMended => (SaidKind::Settled, Vec::new()),
        Reply::Done(..) => (SaidKind::Done, Vec::new()),
        Reply::Stop(_, dangers) => (SaidKind::Stop, acts(dangers)),
        Reply::Copied { .. } | Reply::Help | Reply::Listing(_) | Reply::More | Reply::Remark(_) => {
            (SaidKind::Told, Vec::new())
        }
    };
    PageSaid {
        kind,
        lines: paragraphs(&report::answered(reply, ask, UNBROKEN)),
        acts,
    }
}
