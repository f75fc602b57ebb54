//! The first reading: facts of survey, building, unit and file, and which
//! guards there are with how many rows.

use std::collections::BTreeSet;
use std::collections::HashMap;
use std::sync::Arc;

use crate::items::Item;
use crate::measure::Length;
use crate::measure::LengthUnit;
use crate::reading::Graduation;
use crate::reading::Value;
use crate::source::Diagnostic;
use crate::source::Excerpt;
use crate::survey::FileError;
use crate::survey::FileFacts;
use crate::survey::Observation;
use crate::survey::SurveyFacts;
use crate::survey::SurveyFile;
use crate::survey::TapeClass;
use crate::survey::clash;
use crate::survey::codes;
use crate::survey::complaints::Complaints;
use crate::survey::complaints::Mark;
use crate::survey::complaints::Spot;
use crate::survey::complaints::Unplaced;
use crate::survey::entries::Entries;
use crate::survey::entries::Entry;
use crate::survey::entries::Subject;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::header::length_unit;
use crate::survey::names::Entered;
use crate::survey::names::NameId;
use crate::survey::names::Names;
use crate::survey::names::SURVEY;
use crate::survey::observe::Level;
use crate::survey::observe::Observer;
use crate::survey::observe::guard_missing;
use crate::survey::observe::lost;
use crate::survey::observe::misplaced;
use crate::survey::observe::wrong_level;
use crate::survey::place::Locator;
use crate::survey::place::Place;
use crate::survey::reader::RowReader;
use crate::survey::row::Row;

/// How many different dates and names of people are listed.
const LISTED: usize = 100;

/// What the first reading found.
pub(super) struct Scanned {
    pub(super) facts: SurveyFacts,
    pub(super) names: Names,
    /// Rows of each guard, by the place of its name among all names.
    pub(super) rows: Vec<u32>,
    /// Facts by unit; the survey's own stand at the unit without a name.
    pub(super) levels: HashMap<NameId, Vec<Observation>>,
    /// The default unit of each file.
    pub(super) units: Vec<Option<LengthUnit>>,
    pub(super) complaints: Complaints,
}

/// Reads all files once.
pub(super) fn scan(files: &[Box<dyn SurveyFile>]) -> Result<Scanned, FileError> {
    let mut scan = Scan::new();
    for (index, file) in (0..).zip(files) {
        scan.file(&**file, index)?;
    }
    Ok(scan.finish(files))
}

struct Scan {
    scanned: Scanned,
    observer: Observer,
    entries: Entries,
    locator: Locator,
    /// What is wrong with marks and cells is said by the second reading.
    unsaid: Complaints,
    /// Facts that need a default unit that may come later in the file.
    waiting: Vec<Waiting>,
    /// The last guard named, for who took a blank cell for "the same".
    above: Option<NameId>,
    any_unusable: bool,
}

/// A fact that could not be read without a default unit: its row, to be read again.
struct Waiting {
    row: String,
    line: u64,
}

impl Scan {
    fn new() -> Scan {
        Scan {
            scanned: Scanned {
                facts: SurveyFacts::default(),
                names: Names::new(),
                rows: Vec::new(),
                levels: HashMap::new(),
                units: Vec::new(),
                complaints: Complaints::default(),
            },
            observer: Observer::new(),
            entries: Entries::new(),
            locator: Locator::default(),
            unsaid: Complaints::default(),
            waiting: Vec::new(),
            above: None,
            any_unusable: false,
        }
    }
}
