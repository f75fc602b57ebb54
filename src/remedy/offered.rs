//! A remedy that is offered for one guard, in its numbers.

use crate::geometry::BayPlan;
use crate::items::Item;
use crate::quantities::Length;
use crate::remedy::change::GuardChange;
use crate::remedy::kind::RemedyKind;
use crate::remedy::quantity::Labour;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::PaintedArea;

/// A bay that is to be drawn with its marks.
#[derive(Clone, Debug)]
pub struct Bay {
    /// How it is filled.
    pub plan: BayPlan,
    /// Gaps that are there, where balusters are put between others; else the whole bay
    /// is laid out.
    pub between: Vec<Length>,
}

/// What a step waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WaitsFor {
    /// It can be done.
    Nothing,
    /// What adds height, weight or wind waits until somebody has pushed the guard and
    /// seen what holds its posts.
    ALook,
    /// Nothing is fixed to a guard that moves or is not held well.
    AFirmGuard,
}

/// A remedy in its numbers.
#[derive(Clone, Debug)]
pub struct Offered {
    /// Its kind; who, leave, holes and cautions stand in its row.
    pub kind: RemedyKind,
    /// What is to be done, in one or two sentences.
    pub says: String,
    /// The act alone, a sentence: guards alike in their faults share it.
    pub act: String,
    /// What it aims at: `3 3/4 in or less`; `None` where that is no number.
    pub aims_at: Option<String>,
    /// What it changes of the readings; nothing where no reading can show it.
    pub change: GuardChange,
    /// What it takes.
    pub parts: Vec<MaterialPart>,
    /// How long it takes.
    pub labour: Option<Labour>,
    /// A drawing, where one can be made.
    pub bay: Option<Bay>,
    /// Painted surface of parts that are taken out, at most, where that can be counted.
    pub paint: Option<PaintedArea>,
    /// What to write down so that it can be worked out further.
    pub asks: Vec<Item>,
}

impl Offered {
    pub(super) fn new(kind: RemedyKind, says: String, change: GuardChange) -> Offered {
        Offered {
            kind,
            act: act(&says),
            says,
            aims_at: None,
            change,
            parts: Vec::new(),
            labour: None,
            bay: None,
            paint: None,
            asks: Vec::new(),
        }
    }

    pub(super) fn aiming(mut self, aims_at: String) -> Offered {
        self.aims_at = Some(aims_at);
        self
    }

    pub(super) fn of(mut self, part: MaterialPart) -> Offered {
        self.parts.push(part);
        self
    }

    pub(super) fn taking(mut self, from: u32, to: u32, per: LabourPer) -> Offered {
        self.labour = Some(Labour {
            minutes: [from, to],
            per,
        });
        self
    }
}

/// What stands before the first semicolon, or the first sentence: what follows are sizes
/// and manners of this guard.
fn act(says: &str) -> String {
    let end = says.find("; ").into_iter().chain(says.find(". ")).min();
    match end {
        Some(end) => format!("{}.", &says[..end]),
        None => says.to_owned(),
    }
}
