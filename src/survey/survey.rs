//! A survey: several files, read twice.

use std::ops::ControlFlow;

use crate::input::Diagnostics;
use crate::survey::FileError;
use crate::survey::Guard;
use crate::survey::SurveyFacts;
use crate::survey::SurveyFile;
use crate::survey::assembly::Assembly;
use crate::survey::complaints::Complaints;
use crate::survey::lookup::look_up;
use crate::survey::scan;
use crate::survey::scan::Scanned;
use crate::survey::stream::Saved;

/// A survey whose facts are known and whose guards can be read.
///
/// ```
/// use std::ops::ControlFlow;
/// use guardrule::items::Item;
/// use guardrule::survey::{InMemory, Survey, SurveyFile};
///
/// let text = "unit,guard,item,reading\n2A,balcony,height,34 5/8 in\n2A,,built,1994\n";
/// let page = InMemory::new("page.csv", text.as_bytes());
/// let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(page)];
/// let survey = Survey::scan(&files)?;
/// assert_eq!(survey.guard_count(), 1);
/// let diagnostics = survey.guards(&mut |guard| {
///     assert_eq!(&*guard.of(Item::Height).next().unwrap().1.written, "34 5/8 in");
///     assert_eq!(&*guard.of(Item::Built).next().unwrap().1.written, "1994");
///     ControlFlow::Continue(())
/// })?;
/// assert!(!diagnostics.any_error());
/// # Ok::<(), guardrule::survey::FileError>(())
/// ```
pub struct Survey<'f> {
    files: Vec<Saved<'f>>,
    scanned: Scanned,
    guard_count: usize,
}

impl<'f> Survey<'f> {
    /// The first reading: facts of survey, building, unit and file, and which
    /// guards there are with how many rows.
    ///
    /// # Errors
    /// A file that cannot be opened or read. What is wrong with what stands in
    /// the files is among the diagnostics of [`Survey::guards`].
    pub fn scan(files: &'f [Box<dyn SurveyFile>]) -> Result<Survey<'f>, FileError> {
        let look = |file: &'f dyn SurveyFile| Saved::look(file).map_err(FileError::of(file));
        let files = files.iter().map(|file| look(&**file));
        let files: Vec<Saved<'f>> = files.collect::<Result<_, _>>()?;
        let scanned = scan::scan(&files)?;
        let guard_count = scanned.rows.iter().filter(|rows| **rows > 0).count();
        Ok(Survey {
            files,
            scanned,
            guard_count,
        })
    }

    /// What holds for the survey as a whole and for each file.
    #[must_use]
    pub fn facts(&self) -> &SurveyFacts {
        &self.scanned.facts
    }

    /// How many guards there are.
    #[must_use]
    pub fn guard_count(&self) -> usize {
        self.guard_count
    }

    /// Why the files are not judged together, where they are two rounds of one
    /// survey: the same guard under different dates.
    ///
    /// # Errors
    /// A file that cannot be opened or read.
    pub fn two_rounds(&self) -> Result<Option<Diagnostics>, FileError> {
        if !self.scanned.is_two_rounds {
            return Ok(None);
        }
        self.placed(self.scanned.complaints.clone()).map(Some)
    }

    /// The second reading: hands over complete guards, in the order of first
    /// appearance, until `each` breaks off. Gives back everything that is wrong
    /// with the files, as far as they were read.
    ///
    /// # Errors
    /// A file that cannot be opened or read, or that is not the same as at the
    /// first reading.
    pub fn guards(
        &self,
        each: &mut dyn FnMut(Guard) -> ControlFlow<()>,
    ) -> Result<Diagnostics, FileError> {
        let mut assembly = Assembly::new(&self.scanned, &self.files);
        assembly.run(each)?;
        self.placed(assembly.complaints)
    }

    /// What is wrong, with the places that lie far behind looked up.
    fn placed(&self, complaints: Complaints) -> Result<Diagnostics, FileError> {
        let places = look_up(&self.files, &complaints.spots_wanted())?;
        Ok(complaints.finish(|spot| places.get(&(spot.row, spot.mark)).cloned()))
    }
}
